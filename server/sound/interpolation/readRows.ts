import type { RowTable } from './windowedSinc';
import { phases } from './windowedSinc';

/** A stretch of input and how to walk through it. Positions count from the first frame of the arrays. */
export interface Walk {
  position: number;
  /** Frames of input a frame of output, and what is added to it after each. */
  step: number;
  slope: number;
}

/*
 * The loops of this file, of `readNearest` and of `readWide` are alike and stay apart: most of the time of a voice goes by in them.
 * One channel read by the loop for two takes 1.3 times as long with 32 taps, 1.6 times with 8; a function called for each value
 * or a choice made in the loop would be paid for in each frame of each voice.
 */

/**
 * Reads `count` values at rising positions of one channel. All taps of all positions have to lie inside of the input.
 * Leaves the position and the step behind the last value in `walk`.
 */
export function readRowsMono(
  { taps, rows }: RowTable,
  input: Float32Array,
  walk: Walk,
  output: Float64Array,
  count: number,
): void {
  let { position, step } = walk;
  const { slope } = walk;
  const before = taps / 2 - 1;
  for (let frame = 0; frame < count; frame++) {
    const whole = Math.floor(position);
    const phase = (position - whole) * phases;
    const first = phase | 0;
    const share = phase - first;
    let low = first * taps;
    let at = whole - before;
    let below = 0;
    let above = 0;
    for (const end = low + taps; low < end; low += 4, at += 4) {
      const a = input[at];
      const b = input[at + 1];
      const c = input[at + 2];
      const d = input[at + 3];
      const high = low + taps;
      below += a * rows[low] + b * rows[low + 1] + c * rows[low + 2] + d * rows[low + 3];
      above += a * rows[high] + b * rows[high + 1] + c * rows[high + 2] + d * rows[high + 3];
    }
    output[frame] = below + share * (above - below);
    position += step;
    step += slope;
  }
  walk.position = position;
  walk.step = step;
}

/** As {@link readRowsMono} for two channels that are read alike. */
export function readRowsStereo(
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
    const whole = Math.floor(position);
    const phase = (position - whole) * phases;
    const first = phase | 0;
    const share = phase - first;
    let low = first * taps;
    let at = whole - before;
    let sumLeft = 0;
    let sumRight = 0;
    for (const end = low + taps; low < end; low += 4, at += 4) {
      const high = low + taps;
      const l0 = rows[low];
      const l1 = rows[low + 1];
      const l2 = rows[low + 2];
      const l3 = rows[low + 3];
      const a = l0 + share * (rows[high] - l0);
      const b = l1 + share * (rows[high + 1] - l1);
      const c = l2 + share * (rows[high + 2] - l2);
      const d = l3 + share * (rows[high + 3] - l3);
      sumLeft += a * left[at] + b * left[at + 1] + c * left[at + 2] + d * left[at + 3];
      sumRight += a * right[at] + b * right[at + 1] + c * right[at + 2] + d * right[at + 3];
    }
    outputLeft[frame] = sumLeft;
    outputRight[frame] = sumRight;
    position += step;
    step += slope;
  }
  walk.position = position;
  walk.step = step;
}
