import type { Instrument } from '../../../model/instrument';
import { parameterStride } from '../../../model/instrumentParts';
import { Parameter } from '../../../model/parameterNames';
import type { SampleFacts } from '../../../model/samples';
import type { CheckContext } from '../../rule';
import { usableFactsOf } from './sampleFacts';
import type { SampleUse } from './sampleUse';
import { sampleUsesOf } from './sampleUses';

/** What is in force in a region that plays a sample file: positions of parameters, −1 where none is. */
export interface PlayedFrames {
  region: number;
  use: SampleUse;
  /** Facts of the file; `undefined` while they are not known, where it is cut short or has no frames. */
  facts: SampleFacts | undefined;
  loopStart: number;
  loopEnd: number;
  offset: number;
  end: number;
  loopMode: number;
}

/** The regions with a sample file and with a frame position in force: a column for each field of {@link PlayedFrames}. */
export class PlayedFramesTable {
  count = 0;
  readonly region: Int32Array;
  readonly loopStart: Int32Array;
  readonly loopEnd: Int32Array;
  readonly offset: Int32Array;
  readonly end: Int32Array;
  readonly loopMode: Int32Array;
  /** The last frame of the file, NaN where it is not known. */
  readonly lastFrame: Float64Array;
  readonly #use: Int32Array;
  readonly #uses: readonly SampleUse[];

  /** With room for a number of regions. */
  constructor(size: number, uses: readonly SampleUse[]) {
    const cells = new Int32Array(size * 7);
    const column = (at: number) => cells.subarray(at * size, (at + 1) * size);
    this.region = column(0);
    this.loopStart = column(1);
    this.loopEnd = column(2);
    this.offset = column(3);
    this.end = column(4);
    this.loopMode = column(5);
    this.#use = column(6);
    this.lastFrame = new Float64Array(size);
    this.#uses = uses;
  }

  /** Adds a region that plays one of the uses, with its parameters in the order of {@link framePositions}. */
  add(region: number, use: number, [loopStart, loopEnd, offset, end, loopMode]: Int32Array): void {
    const at = this.count++;
    this.region[at] = region;
    this.#use[at] = use;
    this.loopStart[at] = loopStart;
    this.loopEnd[at] = loopEnd;
    this.offset[at] = offset;
    this.end[at] = end;
    this.loopMode[at] = loopMode;
    this.lastFrame[at] = this.#uses[use].lastFrame;
  }

  /** One row of the table. */
  at(at: number): PlayedFrames {
    const use = this.#uses[this.#use[at]];
    return {
      region: this.region[at],
      use,
      facts: usableFactsOf(use.state),
      loopStart: this.loopStart[at],
      loopEnd: this.loopEnd[at],
      offset: this.offset[at],
      end: this.end[at],
      loopMode: this.loopMode[at],
    };
  }
}

const known = new WeakMap<CheckContext, PlayedFramesTable>();

/** The regions with a sample file and with a frame position in force, worked out once in a check. */
export function playedFramesOf(context: CheckContext): PlayedFramesTable {
  let played = known.get(context);
  if (!played) {
    played = collect(context);
    known.set(context, played);
  }
  return played;
}

const framePositions = [
  Parameter.loop_start,
  Parameter.loop_end,
  Parameter.offset,
  Parameter.end,
  Parameter.loop_mode,
];
const modeSlot = framePositions.length;

function collect(context: CheckContext): PlayedFramesTable {
  const { instrument } = context;
  const { uses, useOfRegion } = sampleUsesOf(context);
  const names = [...framePositions, instrument.names.canonical(instrument.names.idOf('offset_mode'))];
  const slots = slotsOf(instrument, names);
  const { cells } = instrument.parameters;
  const inherited = new Int32Array(names.length);
  const row = new Int32Array(names.length);
  const played = new PlayedFramesTable(instrument.regions.length, uses);
  let parent = -2;
  for (let number = 0; number < instrument.regions.length; number++) {
    const use = useOfRegion[number];
    if (!uses[use]?.isFile) continue;
    const region = instrument.regions[number];
    if (instrument.parent(region) !== parent) {
      parent = instrument.parent(region);
      for (let slot = 0; slot < names.length; slot++) {
        inherited[slot] = instrument.effective(parent, names[slot]);
      }
    }
    for (let slot = 0; slot < names.length; slot++) row[slot] = inherited[slot];
    const end = instrument.endParameter(region);
    for (let parameter = instrument.firstParameter(region); parameter < end; parameter++) {
      const slot = slots[cells[parameter * parameterStride]];
      if (slot >= 0) row[slot] = parameter;
    }
    const hasPosition = row[0] >= 0 || row[1] >= 0;
    if (!hasPosition && row[2] < 0 && row[3] < 0) continue;
    const mode = row[modeSlot];
    if (mode >= 0 && instrument.valueText(mode).toLowerCase() === 'percent') row[2] = -1;
    played.add(region, use, row);
  }
  return played;
}

/** By the number of a name as written: its position among some canonical names, or −1. */
function slotsOf({ names }: Instrument, canonicalNames: readonly number[]): Int8Array {
  const slots = new Int8Array(names.size).fill(-1);
  for (let name = 0; name < slots.length; name++) slots[name] = canonicalNames.indexOf(names.canonical(name));
  return slots;
}

/** Whether a parameter is the region's own, so that changing it changes no other region. */
export function isOwn(instrument: Instrument, parameter: number, region: number): boolean {
  return parameter >= instrument.firstParameter(region) && parameter < instrument.endParameter(region);
}
