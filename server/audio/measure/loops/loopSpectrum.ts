import { fourierOf } from '../fourier';
import type { LoopSurroundings } from './loopSurroundings';

/** About so long are the stretches whose spectra are compared (our choice). */
const spectrumSeconds = 0.02;
/** Bands are this share of their frequency wide, about as wide as an ear's: a third of an octave (our choice). */
const bandShare = 0.23;
/** So many stretches at each end of a loop say how the spectrum moves by itself (our choice). */
export const stretches = 3;

/** How the spectrum changes from one stretch of a sound to the next; 0 for the same, 1 for nothing in common. */
export interface SpectrumChange {
  /** From the stretch before the seam to the one after it. */
  atSeam: number;
  /** The greatest between neighbouring stretches of the loop near its ends. */
  greatest: number;
}

/** The value of a frame. */
export type Signal = (frame: number) => number;

/** Frames of a stretch whose spectrum is taken. */
export function spectrumFrames(sampleRate: number): number {
  return 2 ** Math.round(Math.log2(spectrumSeconds * sampleRate));
}

/**
 * How the short-time spectrum changes where a loop from `start` to `end` closes, and how it does by itself nearby: 0 and
 * 0 where the loop is too short to have spectra of its own at both ends.
 */
export function spectrumChange(
  { sampleRate, near }: LoopSurroundings,
  start: number,
  end: number,
): SpectrumChange {
  const length = spectrumFrames(sampleRate);
  if (end - start + 1 < 2 * length) return { atSeam: 0, greatest: 0 };
  const afterSeam = bandsOf(near.start, start, length);
  const beforeSeam = bandsOf(near.end, end + 1 - length, length);
  const most = Math.min(stretches, Math.floor((end - start + 1) / length));
  let greatest = 0;
  let [atStart, atEnd] = [afterSeam, beforeSeam];
  for (let number = 1; number < most; number++) {
    const [later, earlier] = [
      bandsOf(near.start, start + number * length, length),
      bandsOf(near.end, end + 1 - (number + 1) * length, length),
    ];
    greatest = Math.max(greatest, differenceOf(atStart, later), differenceOf(earlier, atEnd));
    [atStart, atEnd] = [later, earlier];
  }
  return { atSeam: differenceOf(beforeSeam, afterSeam), greatest };
}

/** The greatest change between neighbouring stretches of a signal, from one frame to another. */
export function greatestChange(signal: Signal, from: number, to: number, sampleRate: number): number {
  const length = spectrumFrames(sampleRate);
  let greatest = 0;
  let [first, second] = [bandsOf(signal, from, length), bandsOf(signal, from + length / 2, length)];
  for (let start = from; start + 2 * length <= to; start += length / 2) {
    const next = bandsOf(signal, start + length, length);
    greatest = Math.max(greatest, differenceOf(first, next));
    [first, second] = [second, next];
  }
  return greatest;
}

/** Levels of bands: √(Σ(a − b)² ÷ Σ(a² + b²)). */
function differenceOf(one: Float64Array, other: Float64Array): number {
  let differences = 0;
  let squares = 0;
  for (let band = 0; band < one.length; band++) {
    const [a, b] = [one[band], other[band]];
    differences += (a - b) ** 2;
    squares += a * a + b * b;
  }
  return squares > 0 ? Math.sqrt(differences / squares) : 0;
}

/** The level in each band of a stretch under a raised cosine. */
function bandsOf(signal: Signal, start: number, length: number): Float64Array {
  const real = new Float64Array(length);
  const imaginary = new Float64Array(length);
  for (let at = 0; at < length; at++) {
    real[at] = signal(start + at) * (1 - Math.cos((2 * Math.PI * (at + 0.5)) / length));
  }
  fourierOf(length).transform(real, imaginary);
  const bands: number[] = [];
  for (let first = 1; first < length / 2; ) {
    const end = Math.min(length / 2, first + Math.max(2, Math.round(bandShare * first)));
    let power = 0;
    for (let bin = first; bin < end; bin++) power += real[bin] ** 2 + imaginary[bin] ** 2;
    bands.push(Math.sqrt(power));
    first = end;
  }
  return Float64Array.from(bands);
}
