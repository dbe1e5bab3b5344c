import type { PlayableInstrument } from '../playing/playable/playableInstrument';
import type { SoundProgram } from '../sound/program/program';
import type { Cause } from './cause';
import { sameData } from './sameData';
import type { SoundDifference } from './soundDifference';
import type { SpokenValues } from './spokenValues';
import { spokenCause } from './spokenValues';

/** A region with all that its sound comes from. */
export interface SoundingRegion {
  program: SoundProgram;
  playable: PlayableInstrument;
  region: number;
  /** What the texts of the instrument's regions say. */
  spoken: SpokenValues;
}

/** A pitch further apart than this is a difference of pitch (our choice). */
const heardCents = 0.5;
/** Where so little is left at equal levels, the level is all that differs. */
const sameShapeDb = -50;

/** Columns of a program with the kind of cause that they are, in the order in which they are looked at. */
const columns = [
  ['rootKey', 'root', 'Root keys differ'],
  ['tuneCents', 'tuning', 'Tunings in cents differ'],
  ['volumeDb', 'level', 'Levels in dB differ'],
  ['panPercent', 'pan', 'Pans differ'],
  ['offset', 'offset', 'First frames differ'],
  ['end', 'length', 'Last frames differ'],
  ['loopMode', 'loop', 'Loop modes differ'],
  ['loopType', 'loop', 'Kinds of loops differ'],
  ['loopStart', 'loop', 'Loop starts differ'],
  ['loopEnd', 'loop', 'Loop ends differ'],
] as const;

const recipeParts = [
  ['amplitudeEnvelope', 'envelope', 'Envelopes of the level differ'],
  ['filters', 'filter', 'Filters differ'],
  ['bands', 'filter', 'Equalizer bands differ'],
] as const;

/** Whether two regions, whose samples are known to be the same or not, sound and end alike by what their texts say. */
export function saysTheSame(a: SoundingRegion, b: SoundingRegion, hasSameSample: boolean): boolean {
  return (
    hasSameSample &&
    columns.every(([name]) => columnValue(a, name) === columnValue(b, name)) &&
    sameData(recipeOf(a), recipeOf(b)) &&
    sameData(a.program.curves, b.program.curves) &&
    sameData(lifecycleOf(a), lifecycleOf(b))
  );
}

/** The first cause in the texts of a difference between two regions that answer the same note, by what was measured where the texts do not tell. */
export function causeOf(
  a: SoundingRegion,
  b: SoundingRegion,
  hasSameSample: boolean,
  measured: SoundDifference,
): Cause {
  if (!hasSameSample) {
    const seen = measuredCause(measured);
    return seen
      ? { kind: seen.kind, message: `The samples are not the same. ${seen.message}` }
      : { kind: 'sample', message: 'The samples are not the same.' };
  }
  for (const [name, kind, words] of columns) {
    const one = columnValue(a, name);
    const other = columnValue(b, name);
    if (one !== other) return { kind, message: `${words}: ${shown(one)} and ${shown(other)}.` };
  }
  return (
    spokenCause(a.spoken.of(a.region), b.spoken.of(b.region)) ??
    recipeCause(a, b) ??
    measuredCause(measured) ?? { kind: 'other', message: 'The cause is not known.' }
  );
}

function recipeCause(a: SoundingRegion, b: SoundingRegion): Cause | undefined {
  for (const [part, kind, words] of recipeParts) {
    if (!sameData(recipeOf(a)[part], recipeOf(b)[part])) return { kind, message: `${words}.` };
  }
  return sameData(lifecycleOf(a), lifecycleOf(b))
    ? undefined
    : { kind: 'condition', message: 'The conditions under which they play or end differ.' };
}

/** What the difference looks like where a change of pitch, level, start or sides alone explains it. */
function measuredCause(measured: SoundDifference): Cause | undefined {
  const { pitchCents, levelDb, startMs, shapeDb, isSwapped } = measured;
  if (isSwapped) return { kind: 'pan', message: 'Left and right are swapped.' };
  if (Math.abs(pitchCents) > heardCents)
    return { kind: 'tuning', message: `The second is ${signed(pitchCents)} cents from the first.` };
  if ((shapeDb ?? Number.NEGATIVE_INFINITY) < sameShapeDb && levelDb !== 0)
    return { kind: 'level', message: `The second is ${signed(levelDb)} dB from the first.` };
  if (startMs !== 0)
    return { kind: 'offset', message: `The second starts ${signed(startMs)} ms from the first.` };
  return undefined;
}

function columnValue({ program, region }: SoundingRegion, name: (typeof columns)[number][0]): number {
  return program[name][region];
}

function recipeOf({ program, region }: SoundingRegion): SoundProgram['recipes'][number] {
  return program.recipes[program.recipe[region]];
}

/** What decides how a region plays on and ends once it has started. */
function lifecycleOf({ playable, region }: SoundingRegion): number[] {
  const { trigger, loopMode, offMode, group, offBy } = playable;
  return [trigger[region], loopMode[region], offMode[region], group[region], offBy[region]];
}

function shown(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

function signed(value: number): string {
  return `${value > 0 ? '+' : '−'}${Math.abs(value).toFixed(2)}`;
}
