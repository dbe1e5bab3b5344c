import type { Walk } from './readRows';
import { filterRows, nearestPhases, type Window } from './windowedSinc';

/** Taps of a windowed sinc for each of {@link nearestPhases}, in parts of eight neighbours, which are read one after the other. */
export interface NearestTable {
  /** Taps in all, a multiple of eight; the first stands `taps / 2 − 1` frames before the whole part of the position. */
  readonly taps: number;
  /** For each eight taps a row of them for each phase. Doubles, as reading them converts nothing. */
  readonly parts: readonly Float64Array[];
}

const partTaps = 8;

/** Makes a table; see `filterRows`. */
export function nearestTable(taps: number, beta: number, cutoff: number, window?: Window): NearestTable {
  const { rows } = filterRows(taps, beta, cutoff, nearestPhases, window);
  const parts = Array.from({ length: taps / partTaps }, (_, part) =>
    Float64Array.from({ length: (nearestPhases + 1) * partTaps }, (_unset, at) => {
      const [phase, tap] = [at >> 3, at & 7];
      return rows[phase * taps + part * partTaps + tap];
    }),
  );
  return { taps, parts };
}

/** Places between two frames are counted in so many parts: whole numbers, as turning others into them costs as much as four taps. */
const fractions = 0x4000000;
/** Frames that are counted on in such parts at the most: rounding of the step then adds up to 10⁻⁶ frames. */
const mostFrames = 128;
/** From this step on counting would outgrow 32 bits. */
const mostStep = 16;

/**
 * Reads `count` values at rising positions of one channel with the taps of the nearest phase. Positions count from 0 on, and
 * all taps of all of them have to lie inside of the input. Leaves the position and the step behind the last value in `walk`.
 */
export function readNearest(
  { taps, parts }: NearestTable,
  input: Float32Array,
  walk: Walk,
  output: Float64Array,
  count: number,
): void {
  for (let done = 0; done < count; ) {
    const { position, step, slope } = walk;
    const isQuick = Math.max(step, step + mostFrames * slope) < mostStep;
    const frames = isQuick ? Math.min(mostFrames, count - done) : 1;
    const whole = Math.floor(position);
    const first = whole - taps / 2 + 1;
    const fraction = ((position - whole) * fractions) | 0;
    const stepped = isQuick ? Math.round(step * fractions) | 0 : 0;
    const sloped = isQuick ? Math.round(slope * fractions) | 0 : 0;
    const end = done + frames;
    readPart(parts[0], input, first, fraction, stepped, sloped, output, done, end);
    for (let part = 1; part < parts.length; part++)
      addPart(parts[part], input, first + part * partTaps, fraction, stepped, sloped, output, done, end);
    walk.position = position + frames * step + ((frames * (frames - 1)) / 2) * slope;
    walk.step = step + frames * slope;
    done = end;
  }
}

// Both loops are written out, numbers and all: voices that play live spend most of their time in them. A fraction has 26 bits,
// of which the first 11 are the phase, rounded.

function readPart(
  rows: Float64Array,
  input: Float32Array,
  first: number,
  firstFraction: number,
  firstStep: number,
  slope: number,
  output: Float64Array,
  from: number,
  end: number,
): void {
  let at = first;
  let fraction = firstFraction;
  let step = firstStep;
  for (let frame = from; frame < end; frame++) {
    const row = ((fraction + 0x4000) >> 15) << 3;
    output[frame] =
      input[at] * rows[row] +
      input[at + 1] * rows[row + 1] +
      input[at + 2] * rows[row + 2] +
      input[at + 3] * rows[row + 3] +
      (input[at + 4] * rows[row + 4] +
        input[at + 5] * rows[row + 5] +
        input[at + 6] * rows[row + 6] +
        input[at + 7] * rows[row + 7]);
    fraction += step;
    step += slope;
    at += fraction >> 26;
    fraction &= 0x3ffffff;
  }
}

function addPart(
  rows: Float64Array,
  input: Float32Array,
  first: number,
  firstFraction: number,
  firstStep: number,
  slope: number,
  output: Float64Array,
  from: number,
  end: number,
): void {
  let at = first;
  let fraction = firstFraction;
  let step = firstStep;
  for (let frame = from; frame < end; frame++) {
    const row = ((fraction + 0x4000) >> 15) << 3;
    output[frame] +=
      input[at] * rows[row] +
      input[at + 1] * rows[row + 1] +
      input[at + 2] * rows[row + 2] +
      input[at + 3] * rows[row + 3] +
      (input[at + 4] * rows[row + 4] +
        input[at + 5] * rows[row + 5] +
        input[at + 6] * rows[row + 6] +
        input[at + 7] * rows[row + 7]);
    fraction += step;
    step += slope;
    at += fraction >> 26;
    fraction &= 0x3ffffff;
  }
}
