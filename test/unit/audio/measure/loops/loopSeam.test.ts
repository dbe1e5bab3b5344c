import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { measureLoopSeam, seamInMemory } from '../../../../../server/audio/measure/loops/loopSeam';
import { nearerEnd } from '../../../../../server/audio/measure/loops/loopSearch';
import type { LoopSurroundings } from '../../../../../server/audio/measure/loops/loopSurroundings';
import { readerOf } from '../../byteFiles';
import { randomNumbers } from '../tones';

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

/** A loop in frames that are in memory. */
function loopIn(frames: Float64Array, start: number, end: number): LoopSurroundings {
  const at = (frame: number) => frames[frame] ?? 0;
  return { start, end, frames: frames.length, sampleRate: rate, near: { start: at, end: at } };
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
        expect(seam, `moved by ${moved - end}`).toMatchObject({ isAudible: true, better: { start, end } });
      }
    },
  );

  it('is found where the file ends with the loop', async () => {
    const start = 5000;
    const end = start + 40 * 100 - 1;
    const reader = fileOf(end + 21, wave(100));
    expect(await measureLoopSeam(reader, start, end + 20)).toMatchObject({
      isAudible: true,
      better: { start, end },
    });
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
    const reader = fileOf(44100, (frame) => values[frame]);
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
      expect(await measureLoopSeam(reader, start, end)).toBeNull();
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
        if (seam?.better) {
          expect(seam.better.start).toBeGreaterThanOrEqual(0);
          expect(seam.better.end).toBeGreaterThan(seam.better.start);
          expect(seam.better.end).toBeLessThan(3000);
        }
        if (seam?.crossfadeFrames !== undefined) expect(seam.crossfadeFrames).toBeLessThanOrEqual(start);
        expect(await measureLoopSeam(readerOf(bytes), start, end)).toBeNull();
      }),
    );
  });

  it('is found again by random periodic sounds whose loop was moved', () => {
    // Loops of whole periods repeat the sound exactly, whatever it is; the partials are computed one by one.
    const sounds = fc.record({
      period: fc.integer({ min: 20, max: 400 }),
      periods: fc.integer({ min: 4, max: 50 }),
      // The fundamental is the strongest, so that no shorter stretch is nearly a period.
      levels: fc.array(fc.double({ min: 0, max: 0.6, noNaN: true }), { minLength: 11, maxLength: 11 }),
      phases: fc.array(fc.double({ min: 0, max: 6.28, noNaN: true }), { minLength: 12, maxLength: 12 }),
      moved: fc.double({ min: 0.02, max: 0.45, noNaN: true }),
      isLater: fc.boolean(),
    });
    fc.assert(
      fc.property(sounds, ({ period, periods, levels, phases, moved, isLater }) => {
        const one = Float64Array.from({ length: period }, (_, frame) =>
          phases.reduce((sum, phase, number) => {
            const level = number === 0 ? 1 : levels[number - 1] / (number + 1);
            return sum + level * Math.sin((2 * Math.PI * (number + 1) * frame) / period + phase);
          }, 0),
        );
        const sound = Float64Array.from({ length: 40000 }, (_, frame) => 0.3 * one[frame % period]);
        const start = 6000;
        const end = start + period * periods - 1;
        expect(seamInMemory(loopIn(sound, start, end)).isAudible).toBe(false);
        const away = Math.max(1, Math.round(moved * period)) * (isLater ? 1 : -1);
        const around = loopIn(sound, start, end + away);
        expect(nearerEnd(around, start)).toMatchObject({ start, end });
        const seam = seamInMemory(around);
        // A quarter of a period can be heard in any of these; a few frames may be as smooth as the wave itself.
        if (moved >= 0.25) expect(seam.isAudible).toBe(true);
        if (seam.isAudible) expect(seam.better).toEqual({ start, end });
      }),
    );
  });

  it('is never claimed to be heard in white noise', () => {
    const seeds = fc.integer({ min: 1, max: 2 ** 31 });
    const frame = fc.integer({ min: 0, max: 7000 });
    fc.assert(
      fc.property(seeds, frame, frame, (seed, first, last) => {
        const random = randomNumbers(seed);
        const noise = Float64Array.from({ length: 30000 }, () => 0.5 * random());
        const seam = seamInMemory(loopIn(noise, first, 12000 + 2 * last));
        expect(seam).toMatchObject({ isAudible: false });
        expect(seam.better ?? seam.crossfadeFrames).toBeUndefined();
      }),
    );
  });

  describe('of a sound that dies away', () => {
    // A loop of 40,000 frames over which the level falls by 9 dB: whole periods, and so without a step.
    const fall = 9 / 20 / 40000;
    const frames = Float64Array.from(
      { length: 80000 },
      (_, frame) => 0.5 * wave(100)(frame) * 10 ** (-fall * frame),
    );
    const [start, end] = [20000, 59999];

    it('is heard by its level alone', () => {
      const seam = seamInMemory(loopIn(frames, start, end));
      expect(seam.isAudible).toBe(true);
      expect(seam.step).toBeLessThan(2 * seam.greatestStep);
      expect(seam.better).toBeUndefined();
      // Of levels a and r·a the measure is (1 − r) ÷ √(1 + r²).
      const ratio = 10 ** (-9 / 20);
      expect(seam.spectrumChange).toBeCloseTo((1 - ratio) / Math.sqrt(1 + ratio ** 2), 1);
    });

    it('is smooth once the crossfade that it proposes is made', () => {
      const length = seamInMemory(loopIn(frames, start, end)).crossfadeFrames ?? 0;
      expect(length).toBeGreaterThan(0);
      // Common practice: the end fades out while what lies before the start fades in.
      const faded = frames.slice();
      for (let number = 0; number < length; number++) {
        const share = (number + 1) / length;
        const at = end - length + 1 + number;
        faded[at] = (1 - share) * frames[at] + share * frames[start - length + number];
      }
      expect(seamInMemory(loopIn(faded, start, end))).toMatchObject({ isAudible: false });
    });

    it('has no crossfade where there is no sound before its start', () => {
      expect(seamInMemory(loopIn(frames.slice(start), 0, end - start)).crossfadeFrames).toBeUndefined();
    });
  });

  it('finds both other points where what lies before the present start is a knock', () => {
    const random = randomNumbers(4);
    const knocked = Float64Array.from({ length: 40000 }, (_, frame) => 0.5 * wave(100)(frame));
    for (let frame = 5500; frame < 6000; frame++) {
      knocked[frame] = knocked[frame] + 0.8 * random();
    }
    const seam = seamInMemory(loopIn(knocked, 6000, 20030));
    expect(seam.isAudible).toBe(true);
    expect(seam.better?.start).toBeGreaterThan(6000);
    const { start, end } = seam.better ?? { start: 0, end: 0 };
    expect((end + 1 - start) % 100).toBe(0);
  });
});
