import { fourierOf } from '../fourier';
import type { LoopSurroundings } from './loopSurroundings';

/** How far from the present end a better one is looked for (our choice). */
export const searchSeconds = 0.025;
/** How long the stretches are, before and after an end, that are compared (our choice). */
export const matchSeconds = 0.02;

/** Other points for a loop, with how alike the sound is around both. */
export interface LoopPoints {
  start: number;
  end: number;
  /** 2·Σxy ÷ Σ(x² + y²) around the start and the end: 1 where both are the same. */
  likeness: number;
}

/** Points that come this close to the best are as good; the nearest to the present ones are taken (our choice). */
const asGood = 0.005;
/** So many starts are tried on each side of the present one (our choice). */
const startsOnSide = 6;

/** How alike the sound is around the present points of a loop; `undefined` where there is nothing to compare. */
export function likenessNow(around: LoopSurroundings): number | undefined {
  const compared = comparedAt(around, around.start);
  return compared?.likenesses[around.end - compared.first];
}

/**
 * The end nearest to the present one at which the sound is most like what it is around a start, so that whole periods
 * lie between, with that start; `undefined` where there is nothing to compare.
 */
export function nearerEnd(around: LoopSurroundings, start: number): LoopPoints | undefined {
  const compared = comparedAt(around, start);
  if (!compared) return undefined;
  const { likenesses, first } = compared;
  const { end } = around;
  let best = -1;
  for (const likeness of likenesses) best = Math.max(best, likeness);
  let nearest = -1;
  for (let at = 0; at < likenesses.length; at++) {
    const here = likenesses[at];
    const isPeak = here >= (likenesses[at - 1] ?? -1) && here >= (likenesses[at + 1] ?? -1);
    if (!isPeak || here < best - asGood) continue;
    if (nearest < 0 || Math.abs(first + at - end) < Math.abs(first + nearest - end)) nearest = at;
  }
  if (nearest < 0) return undefined;
  return { start, end: first + nearest, likeness: likenesses[nearest] };
}

/** Starts on both sides of the present one, the nearest first, with the best end for each. */
export function* pointsNearby(around: LoopSurroundings): Generator<LoopPoints> {
  const step = Math.floor((searchSeconds * around.sampleRate) / startsOnSide);
  for (let number = 1; number <= startsOnSide; number++) {
    for (const start of [around.start + number * step, around.start - number * step]) {
      const points = start >= 0 && start < around.end ? nearerEnd(around, start) : undefined;
      if (points) yield points;
    }
  }
}

/** How like the sound around each end near the present one is to the sound around a start. */
interface Compared {
  likenesses: Float64Array;
  /** The end that the first of them is for. */
  first: number;
}

function comparedAt(around: LoopSurroundings, start: number): Compared | undefined {
  const { end, frames, sampleRate, near } = around;
  const match = Math.round(matchSeconds * sampleRate);
  const range = Math.round(searchSeconds * sampleRate);
  const before = Math.min(match, start);
  const after = Math.min(match, frames - 1 - end);
  if (before + after < match / 2) return undefined;
  const pattern = Float64Array.from({ length: before + after }, (_, at) => near.start(start - before + at));
  const first = Math.max(end - range, start + Math.floor((end - start) / 2));
  const last = Math.min(end + range, frames - 1 - after);
  if (last < end || first > end) return undefined;
  const sound = Float64Array.from({ length: last - first + before + after }, (_, at) =>
    near.end(first + 1 - before + at),
  );
  return { likenesses: likenessesOf(pattern, sound, last - first + 1), first };
}

/** 2·Σxy ÷ Σ(x² + y²) of a pattern and as long a part of a sound, for each of the first places in the sound. */
function likenessesOf(pattern: Float64Array, sound: Float64Array, count: number): Float64Array {
  const products = slidingProducts(pattern, sound);
  let patternSquares = 0;
  for (const value of pattern) patternSquares += value * value;
  // Running sums that are only added to, so that no rounding of loud parts is left in quiet ones.
  const squares = new Float64Array(sound.length + 1);
  for (let at = 0; at < sound.length; at++) {
    squares[at + 1] = squares[at] + sound[at] ** 2;
  }
  const floor = 1e-9 * (patternSquares + squares[sound.length]);
  return Float64Array.from({ length: count }, (_, at) => {
    const both = patternSquares + squares[at + pattern.length] - squares[at];
    return both > floor ? (2 * products[at]) / both : 0;
  });
}

/** Σ x[j]·y[j+τ] for each τ, by the correlation theorem; both go through one transform as real and imaginary part. */
function slidingProducts(pattern: Float64Array, sound: Float64Array): Float64Array {
  const fourier = fourierOf(2 ** Math.ceil(Math.log2(Math.max(2, sound.length))));
  const { length } = fourier;
  const real = new Float64Array(length);
  const imaginary = new Float64Array(length);
  real.set(pattern);
  imaginary.set(sound);
  fourier.transform(real, imaginary);
  const productReal = new Float64Array(length);
  const productImaginary = new Float64Array(length);
  for (let at = 0; at < length; at++) {
    const mirror = (length - at) % length;
    const [ar, ai] = [real[at], imaginary[at]];
    const [br, bi] = [real[mirror], imaginary[mirror]];
    const [xr, xi, yr, yi] = [(ar + br) / 2, (ai - bi) / 2, (ai + bi) / 2, (br - ar) / 2];
    // The conjugate of X̄·Y, so that transforming forwards gives what transforming back would.
    productReal[at] = (xr * yr + xi * yi) / length;
    productImaginary[at] = -(xr * yi - xi * yr) / length;
  }
  fourier.transform(productReal, productImaginary);
  return productReal;
}
