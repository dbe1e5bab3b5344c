import { describe, expect, it } from 'vitest';
import { readNearest } from '../../../server/sound/interpolation/readNearest';
import type { Walk } from '../../../server/sound/interpolation/readRows';
import { filterRows, nearestPhases } from '../../../server/sound/interpolation/windowedSinc';
import { blockFrames } from '../../../server/sound/kernel/kernel';
import { kernelWith } from '../../../server/sound/kernel/kernels';

const rate = 48000;
const count = 4000;
/** Phases so many that the nearest is the very one. */
const finePhases = 1 << 15;
const kinds = [
  { taps: 8, mayCompile: false },
  { taps: 16, mayCompile: false },
  { taps: 8, mayCompile: true },
  { taps: 16, mayCompile: true },
];
const nearestTable = (width: number) => filterRows(width, 5, 1, nearestPhases);

const walkThrough = () => ({ position: 20.3, step: 0.71, slope: 1e-6 });

function sineOf(hertz: number): Float32Array {
  return Float32Array.from({ length: 4096 }, (_, at) => Math.sin((2 * Math.PI * hertz * at) / rate));
}

/** Reads by the nearest phase, in JavaScript or compiled, as long a piece at a time as voices do. */
function read(input: Float32Array, walk: Walk, width: number, frames: number, mayCompile: boolean): number[] {
  const kernel = kernelWith([nearestTable(width)], mayCompile);
  const mono = kernel.windows
    ? { left: kernel.input.left, right: kernel.input.left }
    : { left: input, right: input };
  if (kernel.windows) mono.left.set(input);
  const values: number[] = [];
  while (values.length < frames) {
    const count = Math.min(blockFrames, frames - values.length);
    readNearest(kernel, kernel.tables[0], mono, 0, walk, kernel.sound, count);
    values.push(...kernel.sound.left.subarray(0, count));
  }
  return values;
}

/** The same taps at the very phase, worked out for each position. */
function atItsPhase(input: Float32Array, width: number): number[] {
  const walk = walkThrough();
  const { rows } = filterRows(width, 5, 1, finePhases);
  return Array.from({ length: count }, () => {
    const whole = Math.floor(walk.position);
    const share = walk.position - whole;
    const row = Math.round(share * finePhases) * width;
    let sum = 0;
    for (let tap = 0; tap < width; tap++) sum += input[whole - width / 2 + 1 + tap]! * rows[row + tap]!;
    walk.position += walk.step;
    walk.step += walk.slope;
    return sum;
  });
}

describe('reading by the nearest phase', () => {
  it.each(kinds)('errs by no more than half a phase moves a sine, %o', ({ taps: width, mayCompile }) => {
    for (const hertz of [1000, 5000, 10_000]) {
      const input = sineOf(hertz);
      const output = read(input, walkThrough(), width, count, mayCompile);
      const exact = atItsPhase(input, width);
      const worst = Math.max(...exact.map((value, at) => Math.abs(value - output[at]!)));
      // The slope of a sine, 2πf / rate a frame, times the half of a phase; a tenth more for the taps, which are no whole sinc.
      const most = ((2 * Math.PI * hertz) / rate / (2 * nearestPhases)) * 1.1 + 1e-6;
      expect(worst).toBeLessThan(most);
      expect(worst).toBeGreaterThan(most / 10);
    }
  });

  // From 16 frames a frame on it is counted in another way.
  it.each([
    [0.4, 3e-6, false],
    [1.9, -1e-6, false],
    [15.9, 1e-3, false],
    [40.7, 0, false],
    [0.4, 3e-6, true],
    [1.9, -1e-6, true],
    [15.9, 1e-3, true],
    [40.7, 0, true],
  ])(
    'reads at the places that a step of %f and a slope of %f lead to; compiled: %s',
    (step, slope, mayCompile) => {
      const values = Float32Array.from({ length: 1 << 16 }, (_, at) => at);
      const walk = { position: 20.3, step, slope };
      const output = read(values, walk, 8, 1000, mayCompile);
      const place = (frame: number) => 20.3 + frame * step + ((frame * (frame - 1)) / 2) * slope;
      // Taps that sum to 1 give back a straight line but for the half of a phase, and for what the window takes from it.
      for (const [frame, value] of output.entries())
        expect(Math.abs(value - place(frame))).toBeLessThan(0.03);
      expect(walk.position).toBeCloseTo(place(output.length), 6);
      expect(walk.step).toBeCloseTo(step + output.length * slope, 9);
    },
  );
});
