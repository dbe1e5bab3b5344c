import type { Channels, Kernel, Sound } from '../kernel/kernel';
import { fractions } from '../kernel/kernel';
import type { Walk } from './readRows';
import type { RowTable } from './windowedSinc';

/** Frames that are counted on in parts of a frame at the most: rounding of the step then adds up to 10⁻⁶ frames. */
const mostFrames = 128;
/** From this step on counting would outgrow 32 bits. */
const mostStep = 16;

/**
 * Reads `count` values at rising positions with the taps of the nearest phase, of which the table has `nearestPhases`. The input
 * begins at the position `origin`, and all taps of all positions have to lie inside of it. Leaves the position and the step behind the last
 * value in `walk`. Places are counted in whole numbers, as turning others into them costs as much as four taps.
 */
export function readNearest(
  kernel: Kernel,
  table: RowTable,
  input: Channels,
  origin: number,
  walk: Walk,
  output: Sound,
  count: number,
): void {
  for (let done = 0; done < count; ) {
    const { position, step, slope } = walk;
    const isQuick = Math.max(step, step + mostFrames * slope) < mostStep;
    const frames = isQuick ? Math.min(mostFrames, count - done) : 1;
    const whole = Math.floor(position);
    const first = whole - origin - table.taps / 2 + 1;
    const fraction = ((position - whole) * fractions) | 0;
    const stepped = isQuick ? Math.round(step * fractions) | 0 : 0;
    const sloped = isQuick ? Math.round(slope * fractions) | 0 : 0;
    kernel.readTaps(table, input, first, fraction, stepped, sloped, output, done, frames);
    walk.position = position + frames * step + ((frames * (frames - 1)) / 2) * slope;
    walk.step = step + frames * slope;
    done += frames;
  }
}
