import type { PlayedNote } from '../playing/sweep/playedNote';
import type { MeasuredNote, MeasureOptions } from './measureNotes';
import type { ComparedSide } from './regionLikeness';
import {
  conditionColumns,
  gatesOf,
  lifecycleColumns,
  lifecycleOf,
  sampleOf,
  soundColumns,
} from './regionLikeness';
import { regionsStarted } from './startedRegions';

/** Remembers what was measured, by a text that says all that it depends on. */
export interface MeasureMemory {
  read(content: string): MeasuredNote | undefined;
  write(content: string, measured: MeasuredNote): void;
  /** A text that changes where the audio of a sample file does. */
  stateOf(path: string): Promise<string>;
}

/** Raise it when what is measured, or how a voice sounds, changes. */
const contentVersion = 2;

/** All that measuring some notes on two sides depends on, as text: notes, options, and the regions that the notes start, wherever they stand. */
export async function heardContent(
  sides: readonly [ComparedSide, ComparedSide],
  notes: readonly PlayedNote[],
  { toleranceDb, sampleRate, seed }: MeasureOptions,
  memory: MeasureMemory,
): Promise<string> {
  const regions: unknown[] = [];
  for (const side of sides) {
    const started = notes.map((note) => regionsStarted(side.playable, note));
    const known = new Map<number, number>();
    for (const region of started.flat()) {
      if (known.has(region)) continue;
      known.set(region, known.size);
      regions.push(await regionContent(side, region, memory));
    }
    regions.push(started.map((some) => some.map((region) => known.get(region))));
    regions.push([...side.program.curves].map(([number, values]) => [number, [...values]]));
    regions.push([...side.playable.firstControllers.subarray(0, 128)]);
  }
  return JSON.stringify([contentVersion, toleranceDb, sampleRate, seed, notes, regions], plain);
}

async function regionContent(side: ComparedSide, region: number, memory: MeasureMemory): Promise<unknown> {
  const { program, playable } = side;
  const sample = sampleOf(side, region);
  return [
    typeof sample === 'string' ? await memory.stateOf(sample) : (sample ?? null),
    soundColumns.map((name) => program[name][region]),
    program.recipes[program.recipe[region]],
    lifecycleColumns.map((name) => playable[name][region]),
    lifecycleOf(playable, region),
    conditionColumns.map((name) => playable[name][region]),
    gatesOf(playable, region),
  ];
}

/** Typed arrays as lists, and numbers that JSON does not know as words. */
function plain(_: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) return String(value);
  return ArrayBuffer.isView(value) ? Array.from(value as Float64Array) : value;
}
