import type { PitchClaim } from '../../checks/facts/samples/pitchClaims';
import { sampleFactsOf } from '../../checks/facts/samples/sampleFacts';
import type { SampleUse } from '../../checks/facts/samples/sampleUse';
import { sampleUsesOf } from '../../checks/facts/samples/sampleUses';
import type { CheckContext } from '../../checks/rule';
import { keysOff } from '../../model/inForce/headerRanges';
import { Parameter } from '../../model/parameterNames';
import type { LoopSeam, MeasuredPitch, SampleFacts, SampleState, SampleSurvey } from '../../model/samples';

/** A loop that the file names or a region plays; frames count from 0, the end is played. */
export interface ReportedLoop {
  start: number;
  end: number;
  seam: LoopSeam | null;
}

/** What is known of one sample of an instrument. */
export interface SampleRow {
  /** Relative to the instrument's folder, with `/`. */
  path: string;
  state: SampleState;
  /** How many regions use it, and the keys that these answer; `undefined` where they answer none. */
  regions: number;
  keys: { low: number; high: number } | undefined;
  facts: SampleFacts | undefined;
  loops: ReportedLoop[];
  /** The root keys that regions give it. */
  rootKeys: number[];
  pitch: MeasuredPitch | null;
  /** How far above the key its regions sound when they are played at their root key; `undefined` where no pitch is claimed. */
  centsOff: number | undefined;
  survey: SampleSurvey | null;
}

/**
 * A row for each sample file that an instrument uses, in the order of its regions, with what is known by now: what the
 * lookup does not know is `null` and asked for in passing. `claims` are the pitches that regions claim.
 */
export function reportRows(context: CheckContext, claims: readonly PitchClaim[]): SampleRow[] {
  const { instrument, samples } = context;
  const { uses, useOfRegion } = sampleUsesOf(context);
  const claimOf = new Map<string, PitchClaim>();
  for (const claim of claims) {
    const known = claimOf.get(claim.use.path);
    if (!known || Math.abs(claim.deviationCents) > Math.abs(known.deviationCents))
      claimOf.set(claim.use.path, claim);
  }
  const regionsOf = new Map<string, { use: SampleUse; regions: number[] }>();
  for (let number = 0; number < instrument.regions.length; number++) {
    const use = uses[useOfRegion[number]];
    if (!use?.isFile) continue;
    const region = instrument.regions[number];
    const known = regionsOf.get(use.path);
    if (known) known.regions.push(region);
    else regionsOf.set(use.path, { use, regions: [region] });
  }
  return [...regionsOf.values()].map(({ use: { path, state }, regions }) => {
    const facts = sampleFactsOf(state);
    return {
      path,
      state,
      regions: regions.length,
      keys: keysOf(context, regions),
      facts,
      loops: facts ? loopsOf(context, path, facts, regions) : [],
      rootKeys: [...new Set(regions.map((region) => instrument.rootKey(region)))].sort((a, b) => a - b),
      pitch: samples.measures?.pitch(path) ?? null,
      centsOff: claimOf.get(path)?.deviationCents,
      survey: samples.measures?.survey?.(path) ?? null,
    };
  });
}

function keysOf(
  { instrument }: CheckContext,
  regions: readonly number[],
): { low: number; high: number } | undefined {
  let low = 128;
  let high = -1;
  for (const region of regions) {
    const [from, to] = [instrument.lowKey[region], instrument.highKey[region]];
    if (from === keysOff || to === keysOff || from > to) continue;
    low = Math.min(low, from);
    high = Math.max(high, to);
  }
  return high < 0 ? undefined : { low, high };
}

function loopsOf(
  { instrument, samples }: CheckContext,
  path: string,
  facts: SampleFacts,
  regions: readonly number[],
): ReportedLoop[] {
  const found = new Map<string, { start: number; end: number }>();
  const add = (start: number | undefined, end: number | undefined) => {
    if (start === undefined || end === undefined || !(start >= 0 && end > start && end < facts.frames))
      return;
    found.set(`${start} ${end}`, { start, end });
  };
  for (const region of regions) {
    const own = (name: number) => {
      const parameter = instrument.effective(region, name);
      return parameter >= 0 ? instrument.number(parameter) : undefined;
    };
    const [first] = facts.loops;
    add(own(Parameter.loop_start) ?? first?.start, own(Parameter.loop_end) ?? first?.end);
  }
  for (const { start, end } of facts.loops) add(start, end);
  return [...found.values()].map((loop) => ({
    ...loop,
    seam: samples.measures?.loopSeam(path, loop.start, loop.end) ?? null,
  }));
}
