import { describe, expect, it } from 'vitest';
import { readNearestMono, readNearestStereo } from '../../../server/sound/interpolation/readNearest';
import { nearestPhases, rowTable } from '../../../server/sound/interpolation/windowedSinc';

const rate = 48000;
const count = 4000;
/** Phases so many that the nearest is the very one. */
const finePhases = 1 << 15;
const taps = [8, 12, 16];

const walkThrough = () => ({ position: 20.3, step: 0.71, slope: 1e-6 });

function sineOf(hertz: number): Float32Array {
  return Float32Array.from({ length: 4096 }, (_, at) => Math.sin((2 * Math.PI * hertz * at) / rate));
}

/** The same taps at the very phase, worked out for each position. */
function atItsPhase(input: Float32Array, width: number): number[] {
  const walk = walkThrough();
  const { rows } = rowTable(width, 5, 1, finePhases);
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
  it.each(taps)('errs by no more than half a phase moves a sine, %i taps', (width) => {
    for (const hertz of [1000, 5000, 10_000]) {
      const input = sineOf(hertz);
      const output = new Float64Array(count);
      readNearestMono(rowTable(width, 5, 1, nearestPhases), input, walkThrough(), output, count);
      const exact = atItsPhase(input, width);
      const worst = Math.max(...exact.map((value, at) => Math.abs(value - output[at]!)));
      // The slope of a sine, 2πf / rate a frame, times the half of a phase; a tenth more for the taps, which are no whole sinc.
      const most = ((2 * Math.PI * hertz) / rate / (2 * nearestPhases)) * 1.1 + 1e-6;
      expect(worst).toBeLessThan(most);
      expect(worst).toBeGreaterThan(most / 10);
    }
  });

  it.each(taps)(
    'reads two channels as it reads each, and leaves the walk where they end, %i taps',
    (width) => {
      const table = rowTable(width, 5, 0.9, nearestPhases);
      const [left, right] = [sineOf(900), sineOf(2100)];
      const both = [new Float64Array(count), new Float64Array(count)] as const;
      const walk = walkThrough();
      readNearestStereo(table, left, right, walk, both[0], both[1], count);
      for (const [at, input] of [left, right].entries()) {
        const alone = new Float64Array(count);
        const own = walkThrough();
        readNearestMono(table, input, own, alone, count);
        expect(own).toEqual(walk);
        for (let frame = 0; frame < count; frame++) expect(both[at]![frame]).toBeCloseTo(alone[frame]!, 12);
      }
    },
  );
});
