import { describe, expect, it } from 'vitest';
import { withoutRumble } from '../../../../../server/audio/measure/pitch/rumble';

const rate = 48000;

/** How much of a sine is left once the filter has settled: the ratio of its levels. */
function gainAt(hertz: number): number {
  const sine = Float32Array.from({ length: rate }, (_, frame) =>
    Math.sin((2 * Math.PI * hertz * frame) / rate),
  );
  const clear = withoutRumble(sine, rate);
  let [before, after] = [0, 0];
  for (let frame = rate / 2; frame < rate; frame++) {
    before += sine[frame] ** 2;
    after += clear[frame] ** 2;
  }
  return Math.sqrt(after / before);
}

describe('a sound without rumble', () => {
  // A Butterworth high-pass of the second order leaves 1 / √(1 + (f0/f)⁴) of a sine (S. Butterworth, Experimental
  // Wireless 7, 1930); there are two of them. The bilinear transform hardly bends so low frequencies.
  it.each([60, 100, 300, 600, 2000])('keeps of a sine of %i Hz what two such filters do', (hertz) => {
    expect(gainAt(hertz) * (1 + (300 / hertz) ** 4)).toBeCloseTo(1, 1);
  });

  it('stands any rate', () => {
    for (const sampleRate of [2000, 8000, 64000]) {
      const clear = withoutRumble(new Float32Array(1000).fill(1), sampleRate);
      expect(clear.every(Number.isFinite)).toBe(true);
      expect(Math.abs(clear[999])).toBeLessThan(1e-2);
    }
  });
});
