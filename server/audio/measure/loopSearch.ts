import type { LoopSurroundings } from './loopSurroundings';

/** How far from the present end a better one is looked for. */
export const searchSeconds = 0.025;
/** How long the stretches are, before and after an end, that are compared. */
export const matchSeconds = 0.02;
/** At higher rates not every frame is compared: this many a second tell as much. */
const comparedRate = 50_000;

/** Another end for a loop, with how alike the sound is around it and around the start of the loop. */
export interface OtherEnd {
  end: number;
  /** 2·Σxy ÷ Σ(x² + y²): 1 where both are the same. */
  likeness: number;
  /** The likeness of the present end. */
  likenessNow: number;
}

/** Ends that come this close to the best are as good; the nearest to the present one is taken. */
const asGood = 0.005;

/**
 * The end nearest to the present one at which the sound is most like what it is around the start of the loop, so that
 * whole periods lie between; `undefined` where there is no better one, or nothing to compare.
 */
export function nearerEnd(around: LoopSurroundings): OtherEnd | undefined {
  const { start, end, frames, sampleRate, near } = around;
  const match = Math.round(matchSeconds * sampleRate);
  const range = Math.round(searchSeconds * sampleRate);
  const before = Math.min(match, start);
  const after = Math.min(match, frames - 1 - end);
  if (before + after < match / 2) return undefined;
  const pattern = Float64Array.from({ length: before + after }, (_, at) => near.start(start - before + at));
  const first = Math.max(end - range, start + before + 1, start + Math.floor((end - start) / 2));
  const last = Math.min(end + range, frames - 1 - after);
  if (last < end || first > end) return undefined;
  const sound = Float64Array.from({ length: last - first + before + after }, (_, at) =>
    near.end(first + 1 - before + at),
  );
  const stride = Math.ceil(sampleRate / comparedRate);
  const likenesses = Float64Array.from({ length: last - first + 1 }, (_, at) =>
    likenessAt(pattern, sound, at, stride),
  );
  const likenessNow = likenesses[end - first] as number;
  let best = -1;
  for (const likeness of likenesses) best = Math.max(best, likeness);
  let nearest = -1;
  for (let at = 0; at < likenesses.length; at++) {
    const here = likenesses[at] as number;
    const isPeak = here >= (likenesses[at - 1] ?? -1) && here >= (likenesses[at + 1] ?? -1);
    if (!isPeak || here < best - asGood) continue;
    if (nearest < 0 || Math.abs(first + at - end) < Math.abs(first + nearest - end)) nearest = at;
  }
  if (nearest < 0 || first + nearest === end) return undefined;
  return { end: first + nearest, likeness: likenesses[nearest] as number, likenessNow };
}

function likenessAt(pattern: Float64Array, sound: Float64Array, at: number, stride: number): number {
  let products = 0;
  let squares = 0;
  for (let position = 0; position < pattern.length; position += stride) {
    const one = pattern[position] as number;
    const other = sound[at + position] as number;
    products += one * other;
    squares += one * one + other * other;
  }
  return squares > 0 ? (2 * products) / squares : 0;
}
