import type { Instrument } from '../../model/instrument';
import type { Steps } from '../../model/steps';
import type { Chances } from '../vocabulary';
import { readEntriesInSteps } from './sampleList';
import type { StepValue } from './steps';

/** Rounded parts of a whole, as three times 33 percent, may be so much short of it or beyond it. */
const [fewest, most] = [0.985, 1.005];

/** The part of 0..1 that an alternative sounds in. */
export interface ChanceShare {
  low: number;
  high: number;
}

/** A chance as it is written: a number, with a percent sign perhaps. */
export function chanceIn(text: string | undefined): number {
  const [, number] = /^\s*(\d+(?:[.,]\d+)?)\s*%?\s*$/.exec(text ?? '') ?? [];
  return number === undefined ? Number.NaN : Number(number.replace(',', '.'));
}

/**
 * Where in 0..1 alternatives of the same keys and velocities sound, by their chances: those that make up the whole one after another
 * share it out, and one alone leaves the rest silent. `undefined` where they do neither.
 */
export function sharesOf(chances: readonly number[], whole: number): ChanceShare[] | undefined {
  const shares: ChanceShare[] = [];
  let sum = 0;
  for (const chance of chances) {
    if (Number.isNaN(chance)) return undefined;
    if (sum + chance > whole * most) {
      const last = shares.at(-1);
      if (sum < whole * fewest || !last || chance > whole * most) return undefined;
      last.high = 1;
      sum = 0;
    }
    const low = sum / whole;
    sum += chance;
    shares.push({ low: rounded(low), high: Math.min(1, rounded(sum / whole)) });
  }
  const last = shares.at(-1);
  if (last && sum >= whole * fewest) last.high = 1;
  else if (shares.length > 1) return undefined;
  return shares;
}

/** What tells which of several regions of the same keys and velocities sounds, by region, from the chances that they give. */
export function* chanceValues(
  text: string,
  instrument: Instrument,
  { element, at, whole }: Chances,
): Steps<ReadonlyMap<number, StepValue[]>> {
  const written = new Map<number, number>();
  for (const { start, values } of yield* readEntriesInSteps(text, element)) {
    const chance = chanceIn(values.get(at)?.text);
    if (!Number.isNaN(chance)) written.set(start, chance);
  }
  const sets = new Map<string, number[]>();
  const { lowKey, highKey, lowVelocity, highVelocity } = instrument;
  for (const region of instrument.regions) {
    if (!written.has(instrument.headerSpan(region).start)) continue;
    const id = [lowKey[region], highKey[region], lowVelocity[region], highVelocity[region]].join(' ');
    const set = sets.get(id);
    if (set) set.push(region);
    else sets.set(id, [region]);
  }
  const found = new Map<number, StepValue[]>();
  for (const set of sets.values()) {
    const chances = set.map((region) => written.get(instrument.headerSpan(region).start) ?? Number.NaN);
    for (const [position, { low, high }] of (sharesOf(chances, whole) ?? []).entries())
      found.set(set[position], [
        ...(low > 0 ? [{ parameter: 'lorand' as const, value: low }] : []),
        ...(high < 1 ? [{ parameter: 'hirand' as const, value: high }] : []),
      ]);
  }
  return found;
}

function rounded(number: number): number {
  return Math.round(number * 1e6) / 1e6;
}
