import type { RowTable } from '../interpolation/windowedSinc';
import { inputFrames } from './inputWindows';
import { blockFrames, type Channels, type Kernel, type Sound } from './kernel';
import { areNumbers, type MixGains, mixMono, mixStereo } from './mixing';

const partTaps = 8;

/** The kernel in JavaScript: for reference quality, and where compiled code is refused. */
export class PlainKernel implements Kernel {
  readonly windows = undefined;
  readonly input = { left: new Float32Array(inputFrames), right: new Float32Array(inputFrames) };
  readonly sound = { left: new Float64Array(blockFrames), right: new Float64Array(blockFrames) };
  readonly mix = { left: new Float64Array(blockFrames), right: new Float64Array(blockFrames) };
  readonly tables: readonly RowTable[];

  constructor(tables: readonly RowTable[]) {
    this.tables = tables;
  }

  readTaps(
    { taps, rows }: RowTable,
    { left, right }: Channels,
    first: number,
    fraction: number,
    step: number,
    slope: number,
    output: Sound,
    from: number,
    count: number,
  ): void {
    const end = from + count;
    for (let part = 0; part < taps; part += partTaps) {
      readPart(rows, part, taps, left, first + part, fraction, step, slope, output.left, from, end);
      if (left === right) continue;
      readPart(rows, part, taps, right, first + part, fraction, step, slope, output.right, from, end);
    }
  }

  mixSound(isMono: boolean, gains: MixGains, from: number, count: number): boolean {
    const { sound, mix } = this;
    const right = isMono ? sound.left : sound.right;
    if (!areNumbers(sound.left, right, count)) return false;
    if (isMono) mixMono(sound.left, gains, mix.left, mix.right, from, count);
    else mixStereo(sound.left, sound.right, gains, mix.left, mix.right, from, count);
    return true;
  }
}

/** Eight of the taps of each value; those from the second part on are added. Written out, numbers and all, as it runs so often. */
function readPart(
  rows: Float32Array,
  part: number,
  taps: number,
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
    const row = ((fraction + 0x4000) >> 15) * taps + part;
    const sum =
      input[at] * rows[row] +
      input[at + 1] * rows[row + 1] +
      input[at + 2] * rows[row + 2] +
      input[at + 3] * rows[row + 3] +
      (input[at + 4] * rows[row + 4] +
        input[at + 5] * rows[row + 5] +
        input[at + 6] * rows[row + 6] +
        input[at + 7] * rows[row + 7]);
    output[frame] = part === 0 ? sum : output[frame] + sum;
    fraction += step;
    step += slope;
    at += fraction >> 26;
    fraction &= 0x3ffffff;
  }
}
