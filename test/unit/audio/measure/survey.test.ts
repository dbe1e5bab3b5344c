import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { WaveFile } from 'wavefile';
import { surveySample } from '../../../../server/audio/measure/survey';
import type { SampleSurvey } from '../../../../server/model/samples';
import { chunk, format, readerOf, silence, wave } from '../byteFiles';

const rate = 44100;

/** A tone of 441 Hz, whose period is 100 frames at 44.1 kHz. */
function tone(frames: number, level = 0.5): number[] {
  return Array.from({ length: frames }, (_, frame) => level * Math.sin((2 * Math.PI * frame) / 100));
}

/** The survey of a WAV file of 16 bits, or of another depth, made of these channels. */
async function surveyOf(channels: number[][], depth = '16', sampleRate = rate): Promise<SampleSurvey> {
  const wav = new WaveFile();
  // Bytes in WAV files count from 0, with silence at 128.
  const zero = depth === '8' ? 128 : 0;
  const scale = depth === '32f' ? 1 : 2 ** (Number(depth) - 1);
  const whole = channels.map((values) =>
    values.map((value) =>
      depth === '32f' ? value : zero + Math.max(-scale, Math.min(scale - 1, Math.round(value * scale))),
    ),
  );
  wav.fromScratch(channels.length, sampleRate, depth, whole);
  const survey = await surveySample(readerOf(wav.toBuffer()));
  if (!survey) throw new Error('There is no survey.');
  return survey;
}

describe('silence around a sound', () => {
  it('is counted to the frame', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.nat(40_000),
        fc.nat(40_000),
        fc.integer({ min: 1, max: 900 }),
        async (before, behind, level) => {
          // A tone that starts and ends at its peak.
          const sound = tone(2001).map((_, frame) => (level / 1000) * Math.cos((2 * Math.PI * frame) / 100));
          const survey = await surveyOf([[...silence(before), ...sound, ...silence(behind)]], '24');
          expect(survey.frames).toBe(before + 2001 + behind);
          expect(survey.leadingSilenceFrames).toBe(before);
          expect(survey.trailingSilenceFrames).toBe(behind);
        },
      ),
      { numRuns: 15 },
    );
  });

  it('is all of a silent file', async () => {
    const survey = await surveyOf([silence(500), silence(500)]);
    expect(survey).toEqual({
      frames: 500,
      peak: 0,
      dcOffset: [0, 0],
      leadingSilenceFrames: 500,
      trailingSilenceFrames: 500,
      endLevelDb: Number.NEGATIVE_INFINITY,
      endStep: 0,
      greatestEndStep: 0,
      clipping: null,
      channelCorrelation: null,
      isWhole: true,
      hasEqualChannels: true,
      loudness: null,
      momentaryLoudness: null,
    });
  });

  // 60 dB is the fall by which reverberation is said to be over (ISO 3382); steps of 6 dB are our choice. Decibels of
  // amplitudes are 20 · log10 (IEC 60027-3, from memory).
  it('holds noise that lies more than 66 dB below the sound, and none that lies less than 60 dB below', async () => {
    const noise = (level: number) => Array.from({ length: 1000 }, (_, frame) => (frame % 2 ? level : -level));
    const quiet = await surveyOf([[...noise(0.8 * 10 ** (-67 / 20)), ...tone(1000, 0.8)]], '24');
    // A sine at the frame after its start lies far above.
    expect(quiet.leadingSilenceFrames).toBe(1001);
    expect(
      (await surveyOf([[...noise(0.8 * 10 ** (-59 / 20)), ...tone(1000, 0.8)]], '24')).leadingSilenceFrames,
    ).toBe(0);
  });

  it('ends with the channel that sounds first or last', async () => {
    const survey = await surveyOf([
      [...silence(100), ...tone(1026).slice(1), ...silence(300)],
      [...silence(40), ...tone(1026).slice(1), ...silence(360)],
    ]);
    expect([survey.leadingSilenceFrames, survey.trailingSilenceFrames]).toEqual([40, 300]);
  });
});

describe('levels', () => {
  it('tells the peak and the offset of each channel', async () => {
    const survey = await surveyOf([tone(10_000).map((value) => value + 0.1), tone(10_000, 0.25)], '24');
    expect(survey.peak).toBeCloseTo(0.6, 6);
    expect(survey.dcOffset[0]).toBeCloseTo(0.1, 6);
    expect(survey.dcOffset[1]).toBeCloseTo(0, 6);
  });

  it('tells how far the end lies below the loudest', async () => {
    // 441 frames, a hundredth of a second, at a tenth of the level: 20 dB.
    const falling = await surveyOf([[...tone(44_100), ...tone(500, 0.05)]], '24');
    expect(falling.endLevelDb).toBeCloseTo(-20, 1);
    expect((await surveyOf([tone(44_100)], '24')).endLevelDb).toBeCloseTo(0, 1);
    expect((await surveyOf([[...tone(44_100), ...silence(441)]])).endLevelDb).toBe(Number.NEGATIVE_INFINITY);
  });

  it('tells the step at the end from those before it', async () => {
    // Cut at the peak of the tone, whose own steps are at most 0.5 · 2π / 100.
    const cut = await surveyOf([tone(44_126)], '24');
    expect(cut.endStep).toBeCloseTo(0.5, 4);
    expect(cut.greatestEndStep).toBeCloseTo(0.5 * ((2 * Math.PI) / 100), 3);
    expect((await surveyOf([tone(44_101)], '24')).endStep).toBeCloseTo(0, 6);
  });
});

// Full scale is the greatest number that the encoding holds; how many frames make a stretch is our choice.
describe('clipped stretches', () => {
  const loud = (level: number, frames = 10_000) =>
    tone(frames, level).map((value) => Math.max(-1, Math.min(1, value)));

  it.each(['8', '16', '24', '32f'])('are counted in files of %s bits', async (depth) => {
    const survey = await surveyOf([loud(1.5), tone(10_000)], depth);
    // Twice in each of 100 periods. |1.5 sin| ≥ 1 from asin(1 / 1.5) to π less as much, of 50 frames for π.
    const step = depth === '8' ? 2 ** -7 : 2 ** -15;
    const at = (part: number) => (Math.asin(part / 1.5) / Math.PI) * 50;
    expect(survey.clipping?.runs).toBe(200);
    expect(survey.clipping?.firstFrame).toBe(Math.ceil(at(1 - step * 1.5)));
    expect(Math.abs((survey.clipping?.frames ?? 0) / 200 - (50 - 2 * at(1)))).toBeLessThan(1.5);
  });

  it('reach over the bounds of blocks and up to the ends of the sound', async () => {
    const survey = await surveyOf([
      [...new Array(40_000).fill(1), ...silence(100), ...new Array(5).fill(-1)],
    ]);
    expect(survey.clipping).toEqual({ runs: 2, frames: 40_005, firstFrame: 0 });
  });

  it('are not peaks that just reach full scale', async () => {
    for (const frames of [100, 1000, 3000]) {
      const low = Array.from({ length: 30_000 }, (_, frame) => Math.sin((2 * Math.PI * frame) / frames));
      for (const depth of ['16', '24', '32f']) expect((await surveyOf([low], depth)).clipping).toBeNull();
    }
    // Two frames at the limit are no stretch.
    expect((await surveyOf([[0, 1, 1, 0, -1, -1, 0, 1, -1, 1, -1]])).clipping).toBeNull();
  });
});

// Pearson's coefficient of correlation: −1 opposite, 0 unlike, 1 alike (common practice).
describe('channels', () => {
  it('in opposite phase correlate with −1, equal ones with 1, unlike ones with about 0', async () => {
    const one = tone(44_100);
    const other = Array.from({ length: 44_100 }, (_, frame) => 0.3 * Math.cos((2 * Math.PI * frame) / 100));
    const opposite = await surveyOf([one, one.map((value) => -0.5 * value + 0.2)], '24');
    expect(opposite.channelCorrelation).toBeCloseTo(-1, 6);
    expect(opposite.hasEqualChannels).toBe(false);
    const equal = await surveyOf([one, one]);
    expect(equal.channelCorrelation).toBeCloseTo(1, 9);
    expect(equal.hasEqualChannels).toBe(true);
    expect((await surveyOf([one, other], '24')).channelCorrelation).toBeCloseTo(0, 4);
  });

  it('that are silent or alone correlate with nothing', async () => {
    expect(await surveyOf([tone(1000)])).toMatchObject({ channelCorrelation: null, hasEqualChannels: false });
    expect(await surveyOf([tone(1000), silence(1000)])).toMatchObject({ channelCorrelation: null });
    const last = tone(1000);
    last[999] = 0.25;
    expect((await surveyOf([tone(1000), tone(1000), last])).hasEqualChannels).toBe(false);
  });
});

describe('files that cannot be surveyed', () => {
  it('give nothing', async () => {
    expect(await surveySample(readerOf(new Uint8Array(0)))).toBeNull();
    expect(
      await surveySample(readerOf(wave(chunk('fmt ', format(1, 1, rate, 16)), chunk('data', [])))),
    ).toBeNull();
    // IMA ADPCM is not decoded.
    const differences = wave(chunk('fmt ', format(0x11, 1, rate, 4)), chunk('data', silence(100)));
    expect(await surveySample(readerOf(differences))).toBeNull();
  });

  it('give numbers that make sense for any bytes behind a header', async () => {
    const kinds = fc.constantFrom([1, 8], [1, 16], [1, 24], [1, 32], [3, 32], [3, 64]);
    await fc.assert(
      fc.asyncProperty(
        kinds,
        fc.integer({ min: 1, max: 9 }),
        fc.constantFrom(1, 3000, 8000, 44_100, 0xffffffff),
        fc.uint8Array({ maxLength: 3000 }),
        async ([tag = 1, bits = 8], channels, sampleRate, bytes) => {
          const file = wave(
            chunk('fmt ', format(tag, channels, sampleRate, bits)),
            chunk('data', [...bytes]),
          );
          const survey = await surveySample(readerOf(file));
          if (!survey) return;
          expect(survey.frames).toBe(Math.floor((bytes.length * 8) / bits / channels));
          expect(survey.peak).toBeGreaterThanOrEqual(0);
          expect(survey.dcOffset.every(Number.isFinite) && survey.dcOffset.length === channels).toBe(true);
          expect(survey.leadingSilenceFrames).toBeLessThanOrEqual(survey.frames);
          expect(survey.trailingSilenceFrames).toBeLessThanOrEqual(survey.frames);
          expect(survey.endLevelDb).toBeLessThanOrEqual(0);
          expect(Math.abs(survey.channelCorrelation ?? 0)).toBeLessThanOrEqual(1);
          expect(survey.loudness === null || Number.isFinite(survey.loudness)).toBe(true);
          expect(survey.momentaryLoudness === null || Number.isFinite(survey.momentaryLoudness)).toBe(true);
        },
      ),
      { numRuns: 200 },
    );
  });
});
