import type { Fundamental } from './fundamental';
import type { SoundPartial } from './soundPartial';

/** The same number of frames of a sound twice, some frames apart, both under the same window. */
export interface TwoWindows {
  before: Float64Array;
  after: Float64Array;
  /** Frames from the first to the second. */
  hop: number;
}

const windows = new Map<number, Float64Array>();
/** Numbers of all windows that are kept (our choice). */
const mostKept = 2_000_000;
let kept = 0;

/** Fills `frames` with those of a sound from `start`, under a raised-cosine window whose mean is 1. */
export function fillWindow(frames: Float64Array, samples: Float32Array, start: number): void {
  const window = windowOf(frames.length);
  for (let at = 0; at < frames.length; at++) frames[at] = samples[start + at] * window[at];
}

function windowOf(length: number): Float64Array {
  let window = windows.get(length);
  if (!window) {
    window = new Float64Array(length);
    for (let at = 0; at < length; at++) window[at] = 1 - Math.cos((2 * Math.PI * (at + 0.5)) / length);
    kept += length;
    if (kept > mostKept) {
      windows.clear();
      kept = length;
    }
    windows.set(length, window);
  }
  return window;
}

/**
 * The partials of a sound near multiples of a fundamental, stretched as it is, in a window and the same some frames
 * later: how far the phase of each has turned between the two says how high it is (the phase vocoder: Flanagan and
 * Golden, Bell System Technical Journal 45(9), 1966). Where the window is a whole number of periods long, and at least
 * two, each partial falls on zeros of the spectra of all others. The hop has to be short enough for the error of the
 * fundamental not to turn the highest partial by half a round.
 */
export function partialsNear(
  { before, after, hop }: TwoWindows,
  sampleRate: number,
  { hertz, inharmonicity }: Fundamental,
  numbers: readonly number[],
): SoundPartial[] {
  const atZero = hertz / Math.sqrt(1 + inharmonicity);
  return numbers.map((number) => {
    const near = number * atZero * Math.sqrt(1 + inharmonicity * number * number);
    const frequency = (2 * Math.PI * near) / sampleRate;
    // Both amplitudes count phase from their own start, so a partial of just this frequency turns by its whole hop.
    const { phase, power } = turnBetween(before, after, frequency);
    const turned = phase - frequency * hop;
    const excess = turned - 2 * Math.PI * Math.round(turned / (2 * Math.PI));
    return { number, hertz: near + (excess / hop) * (sampleRate / (2 * Math.PI)), power };
  });
}

/** Four amplitudes squared. */
export type FourPowers = [number, number, number, number];

/**
 * The amplitudes squared at a frequency (radians a frame) and at one, two and three steps above it, in frames under a
 * window, by four resonators (Goertzel) in one loop, since a processor waits for each step of one.
 */
export function fourPowersIn(frames: Float64Array, frequency: number, step: number): FourPowers {
  const factor0 = 2 * Math.cos(frequency);
  const factor1 = 2 * Math.cos(frequency + step);
  const factor2 = 2 * Math.cos(frequency + 2 * step);
  const factor3 = 2 * Math.cos(frequency + 3 * step);
  let [last0, last1, last2, last3] = [0, 0, 0, 0];
  let [before0, before1, before2, before3] = [0, 0, 0, 0];
  for (let at = 0; at < frames.length; at++) {
    const value = frames[at];
    const next0 = value + factor0 * last0 - before0;
    const next1 = value + factor1 * last1 - before1;
    const next2 = value + factor2 * last2 - before2;
    const next3 = value + factor3 * last3 - before3;
    before0 = last0;
    last0 = next0;
    before1 = last1;
    last1 = next1;
    before2 = last2;
    last2 = next2;
    before3 = last3;
    last3 = next3;
  }
  const scale = (2 / frames.length) ** 2;
  const power = (last: number, before: number, factor: number) =>
    scale * (last * last + before * before - factor * last * before);
  return [
    power(last0, before0, factor0),
    power(last1, before1, factor1),
    power(last2, before2, factor2),
    power(last3, before3, factor3),
  ];
}

/**
 * How far the phase at a frequency turns from one stretch to another, and its mean power, by a resonator that each
 * stretch is sent through (Goertzel, American Mathematical Monthly 65(1), 1958). Both go through one loop, since a
 * processor waits for each step of one.
 */
function turnBetween(
  one: Float64Array,
  other: Float64Array,
  frequency: number,
): { phase: number; power: number } {
  const cosine = Math.cos(frequency);
  const sine = Math.sin(frequency);
  const factor = 2 * cosine;
  let oneLast = 0;
  let oneBefore = 0;
  let otherLast = 0;
  let otherBefore = 0;
  for (let at = 0; at < one.length; at++) {
    const oneNext = one[at] - oneBefore + factor * oneLast;
    const otherNext = other[at] - otherBefore + factor * otherLast;
    oneBefore = oneLast;
    oneLast = oneNext;
    otherBefore = otherLast;
    otherLast = otherNext;
  }
  // What both phases have in common, the length of the stretch, falls out of their difference.
  const oneReal = oneLast - cosine * oneBefore;
  const oneImaginary = sine * oneBefore;
  const otherReal = otherLast - cosine * otherBefore;
  const otherImaginary = sine * otherBefore;
  const real = otherReal * oneReal + otherImaginary * oneImaginary;
  const imaginary = otherImaginary * oneReal - otherReal * oneImaginary;
  // A sine of amplitude a gives a·length/2 under a window whose mean is 1.
  const scale = (2 / one.length) ** 2;
  const power = ((oneReal ** 2 + oneImaginary ** 2 + otherReal ** 2 + otherImaginary ** 2) * scale) / 2;
  return { phase: Math.atan2(imaginary, real), power };
}
