import type { PitchClaims } from './pitchClaims';

/**
 * Semitones between the ranks of an organ, the shortest pipe of one at 5 1/3, 4, 2 2/3, 2, 1 3/5, 1 1/3 or 1 foot in place of 8, or of one
 * at 16 or 32 feet (common practice); other instruments are coupled at octaves.
 */
const betweenRanks: ReadonlySet<number> = new Set([7, 12, 19, 24, 28, 31, 36]);
/** So near to such a step, in cents (our choice). */
const nearCents = 30;
/** So many samples that play at their own pitch and at the same step from it make a rank (our choice). */
const fewest = 3;

/**
 * Whether claims are of a rank: of samples that the instrument plays at their own pitch too, and several of them at the same step
 * from it. Takes claims that are as sure as that, from 0 to 1.
 */
export function ranksIn(claims: PitchClaims, surely: number): (at: number) => boolean {
  const { count, paths, deviationCents, confidence, path } = claims;
  const atOwnPitch = new Uint8Array(paths);
  for (let at = 0; at < count; at++)
    if (confidence[at] >= surely && Math.abs(deviationCents[at]) <= nearCents) atOwnPitch[path[at]] = 1;
  const samples = new Map<number, Set<number>>();
  for (let at = 0; at < count; at++) {
    const step = stepOf(deviationCents[at]);
    if (step === 0 || atOwnPitch[path[at]] === 0) continue;
    const found = samples.get(step);
    if (found) found.add(path[at]);
    else samples.set(step, new Set([path[at]]));
  }
  return (at) => {
    const step = stepOf(deviationCents[at]);
    return step !== 0 && atOwnPitch[path[at]] === 1 && (samples.get(step)?.size ?? 0) >= fewest;
  };
}

/** The step between ranks that a deviation is, in semitones; 0 where it is none. */
function stepOf(cents: number): number {
  const step = Math.round(cents / 100);
  return betweenRanks.has(Math.abs(step)) && Math.abs(cents - 100 * step) <= nearCents ? step : 0;
}
