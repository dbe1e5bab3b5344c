import type { Walk } from './readRows';
import type { RowTable } from './windowedSinc';
import { nearestPhases } from './windowedSinc';

/**
 * Reads `count` values at rising positions of one channel with the taps of the nearest phase. Positions count from 0 on, and
 * all taps of all of them have to lie inside of the input. Leaves the position and the step behind the last value in `walk`.
 */
export function readNearestMono(
  { taps, rows }: RowTable,
  input: Float32Array,
  walk: Walk,
  output: Float64Array,
  count: number,
): void {
  if (taps === 8) {
    readEightMono(rows, input, walk, output, count);
    return;
  }
  let { position, step } = walk;
  const { slope } = walk;
  const before = taps / 2 - 1;
  for (let frame = 0; frame < count; frame++) {
    const whole = position | 0;
    let row = (((position - whole) * nearestPhases + 0.5) | 0) * taps;
    let at = whole - before;
    let sum = 0;
    for (const end = row + taps; row < end; row += 4, at += 4) {
      sum +=
        input[at] * rows[row] +
        input[at + 1] * rows[row + 1] +
        (input[at + 2] * rows[row + 2] + input[at + 3] * rows[row + 3]);
    }
    output[frame] = sum;
    position += step;
    step += slope;
  }
  walk.position = position;
  walk.step = step;
}

/** As {@link readNearestMono} for two channels that are read alike. */
export function readNearestStereo(
  { taps, rows }: RowTable,
  left: Float32Array,
  right: Float32Array,
  walk: Walk,
  outputLeft: Float64Array,
  outputRight: Float64Array,
  count: number,
): void {
  let { position, step } = walk;
  const { slope } = walk;
  const before = taps / 2 - 1;
  for (let frame = 0; frame < count; frame++) {
    const whole = position | 0;
    let row = (((position - whole) * nearestPhases + 0.5) | 0) * taps;
    let at = whole - before;
    let sumLeft = 0;
    let sumRight = 0;
    for (const end = row + taps; row < end; row += 4, at += 4) {
      const a = rows[row];
      const b = rows[row + 1];
      const c = rows[row + 2];
      const d = rows[row + 3];
      sumLeft += a * left[at] + b * left[at + 1] + (c * left[at + 2] + d * left[at + 3]);
      sumRight += a * right[at] + b * right[at + 1] + (c * right[at + 2] + d * right[at + 3]);
    }
    outputLeft[frame] = sumLeft;
    outputRight[frame] = sumRight;
    position += step;
    step += slope;
  }
  walk.position = position;
  walk.step = step;
}

/** {@link readNearestMono} for eight taps, written out: it is what most voices that play live spend their time in. */
function readEightMono(
  rows: Float32Array,
  input: Float32Array,
  walk: Walk,
  output: Float64Array,
  count: number,
): void {
  let { position, step } = walk;
  const { slope } = walk;
  for (let frame = 0; frame < count; frame++) {
    const whole = position | 0;
    const row = (((position - whole) * nearestPhases + 0.5) | 0) << 3;
    const at = whole - 3;
    output[frame] =
      input[at] * rows[row] +
      input[at + 1] * rows[row + 1] +
      input[at + 2] * rows[row + 2] +
      input[at + 3] * rows[row + 3] +
      (input[at + 4] * rows[row + 4] +
        input[at + 5] * rows[row + 5] +
        input[at + 6] * rows[row + 6] +
        input[at + 7] * rows[row + 7]);
    position += step;
    step += slope;
  }
  walk.position = position;
  walk.step = step;
}
