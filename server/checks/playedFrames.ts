import type { Instrument } from '../model/instrument';
import { Parameter } from '../model/parameterNames';
import type { SampleFacts } from '../model/samples';
import { parametersInForce } from './inForce';
import type { CheckContext } from './rule';
import type { SampleUse } from './sampleUses';
import { factsOf, sampleUsesOf } from './sampleUses';

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

const known = new WeakMap<CheckContext, readonly PlayedFrames[]>();

/** The regions with a sample file and with a frame position in force, worked out once in a check. */
export function playedFramesOf(context: CheckContext): readonly PlayedFrames[] {
  let played = known.get(context);
  if (!played) {
    played = collect(context);
    known.set(context, played);
  }
  return played;
}

function collect(context: CheckContext): PlayedFrames[] {
  const { instrument } = context;
  const offsetMode = instrument.names.canonical(instrument.names.idOf('offset_mode'));
  const names = [
    Parameter.loop_start,
    Parameter.loop_end,
    Parameter.offset,
    Parameter.end,
    Parameter.loop_mode,
    offsetMode,
  ];
  const rows = parametersInForce(instrument, names);
  if (!rows) return [];
  const { uses, useOfRegion } = sampleUsesOf(context);
  const played: PlayedFrames[] = [];
  for (let number = 0; number < instrument.regions.length; number++) {
    const use = uses[useOfRegion[number] as number];
    if (!use?.isFile) continue;
    const region = instrument.regions[number] as number;
    const row = region * names.length;
    const loopStart = rows[row] as number;
    const loopEnd = rows[row + 1] as number;
    const offset = rows[row + 2] as number;
    const end = rows[row + 3] as number;
    if (loopStart < 0 && loopEnd < 0 && offset < 0 && end < 0) continue;
    const mode = rows[row + 5] as number;
    const isPercent = mode >= 0 && instrument.valueText(mode).toLowerCase() === 'percent';
    played.push({
      region,
      use,
      facts: usableFacts(use),
      loopStart,
      loopEnd,
      offset: isPercent ? -1 : offset,
      end,
      loopMode: rows[row + 4] as number,
    });
  }
  return played;
}

/** A file that is cut short has a finding of its own; its length says nothing of the instrument. */
function usableFacts({ state }: SampleUse): SampleFacts | undefined {
  const facts = factsOf(state);
  if (!facts || !(facts.frames > 0)) return undefined;
  const isCut = facts.problems.length > 0 && facts.problems.some(({ kind }) => kind === 'cut-short');
  return isCut ? undefined : facts;
}

/** Whether a parameter is the region's own, so that changing it changes no other region. */
export function isOwn(instrument: Instrument, parameter: number, region: number): boolean {
  return parameter >= instrument.firstParameter(region) && parameter < instrument.endParameter(region);
}
