import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { measureLoopSeam } from '../../../../server/audio/measure/loopSeam';
import { readerOf } from '../byteFiles';
import { randomNumbers } from './tones';

const rate = 44100;

/** A file of frames computed one by one. */
function fileOf(frames: number, valueAt: (frame: number) => number) {
  const wav = new wavefile.WaveFile();
  wav.fromScratch(
    1,
    rate,
    '16',
    Int16Array.from({ length: frames }, (_, frame) => Math.round(20000 * valueAt(frame))),
  );
  return readerOf(wav.toBuffer());
}

/** A waveform whose period is a whole number of frames, with partials up to the 12th. */
const wave = (period: number) => (frame: number) => {
  let value = 0;
  for (let number = 1; number <= 12; number++) {
    value += Math.sin((2 * Math.PI * number * frame) / period + number) / number ** 1.5;
  }
  return value / 2;
};

describe('the seam of a loop', () => {
  it.each([50, 100, 337])(
    'is smooth over whole periods of %i frames, and found again to the frame',
    async (period) => {
      const start = 5000;
      const end = start + 40 * period - 1;
      const reader = fileOf(44100, wave(period));
      expect(await measureLoopSeam(reader, start, end)).toMatchObject({ isAudible: false });
      for (const away of [-0.35, -0.2, 0.2, 0.4]) {
        const moved = end + Math.round(away * period);
        const seam = await measureLoopSeam(reader, start, moved);
        expect(seam, `moved by ${moved - end}`).toMatchObject({ isAudible: true, betterEnd: end });
      }
    },
  );

  it('is found where the file ends with the loop', async () => {
    const start = 5000;
    const end = start + 40 * 100 - 1;
    const reader = fileOf(end + 21, wave(100));
    expect(await measureLoopSeam(reader, start, end + 20)).toMatchObject({ isAudible: true, betterEnd: end });
  });

  it('bends where a sine turns back at its zero', async () => {
    const sine = (frame: number) => Math.sin((2 * Math.PI * frame) / 100);
    // Half a period more: the value goes on, its slope turns round.
    const seam = await measureLoopSeam(fileOf(44100, sine), 5000, 5000 + 4000 - 1 + 50);
    expect(seam?.isAudible).toBe(true);
    expect(seam?.step).toBeLessThan(0.05);
    // The slope of the sine on both sides: 2 · 2π/100 · 20000/32768.
    expect(seam?.bend).toBeCloseTo(0.0767, 2);
  });

  it('is no louder than noise is anyway', async () => {
    const random = randomNumbers(9);
    const values = Float64Array.from({ length: 44100 }, () => 0.5 * random());
    const reader = fileOf(44100, (frame) => values[frame] as number);
    for (const end of [30000, 30001, 31234]) {
      expect(await measureLoopSeam(reader, 6000, end)).toMatchObject({ isAudible: false });
    }
  });

  it('is silent in silence', async () => {
    expect(
      await measureLoopSeam(
        fileOf(44100, () => 0),
        100,
        4000,
      ),
    ).toMatchObject({ isAudible: false });
  });

  it('is not measured outside the file', async () => {
    const reader = fileOf(1000, wave(50));
    for (const [start, end] of [
      [-1, 500],
      [0, 1000],
      [500, 400],
      [10, 20],
      [0.5, 200],
      [Number.NaN, 9],
    ]) {
      expect(await measureLoopSeam(reader, start as number, end as number)).toBeNull();
    }
  });

  it('any points and any bytes give an answer', async () => {
    const reader = fileOf(3000, wave(77));
    const frame = fc.integer({ min: -10, max: 3010 });
    await fc.assert(
      fc.asyncProperty(frame, frame, fc.uint8Array({ maxLength: 300 }), async (start, end, bytes) => {
        const seam = await measureLoopSeam(reader, start, end);
        const isInside = start >= 0 && end < 3000 && end - start >= 32;
        expect(seam !== null).toBe(isInside);
        if (seam?.betterEnd !== undefined) {
          expect(seam.betterEnd).toBeGreaterThan(start);
          expect(seam.betterEnd).toBeLessThan(3000);
        }
        expect(await measureLoopSeam(readerOf(bytes), start, end)).toBeNull();
      }),
    );
  });
});
