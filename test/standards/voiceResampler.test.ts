/*
 * Sources: what comes out of an ideal resampler is the same tones at the other rate, by the sampling theorem (C. E. Shannon,
 * Communication in the Presence of Noise, Proc. IRE 37, 1949, section II; from memory). The judge is libsamplerate, a general
 * library that shares no code with ours. How far ours may be off is our choice, above what was measured.
 */
import { ConverterType, create } from '@alexanderolsen/libsamplerate-js';
import { describe, expect, it } from 'vitest';
import { db, play } from '../unit/sound/playing';

/** Tones from low to high, in a level that keeps their sum below full scale. */
function tones(hertz: readonly number[], seconds: number, rate: number): Float32Array {
  return Float32Array.from({ length: Math.round(seconds * rate) }, (_, at) =>
    hertz.reduce(
      (sum, one, number) => sum + Math.sin((2 * Math.PI * one * at) / rate + number) / (hertz.length + 1),
      0,
    ),
  );
}

/** The energy of a difference to that of a signal, in dB, away from both ends. */
function residualDb(
  signal: ArrayLike<number>,
  reference: ArrayLike<number>,
  from: number,
  to: number,
): number {
  let error = 0;
  let energy = 0;
  for (let at = from; at < to; at++) {
    error += (signal[at] - reference[at]) ** 2;
    energy += reference[at] ** 2;
  }
  return 10 * Math.log10(error / energy);
}

/** What the voice makes of a sample of one rate at another. */
function voice(
  sample: Float32Array,
  rate: number,
  outputRate: number,
  quality: 'live' | 'reference',
): Float64Array {
  const samples = { 'a.wav': { channels: [sample], rate } };
  return play('<region> sample=a.wav pan=-100', 1, { samples, rate: outputRate, quality }).left;
}

/** What libsamplerate's best converter makes of it: the judge, measured at −148 dB against ideal tones. */
async function judge(sample: Float32Array, rate: number, outputRate: number): Promise<Float32Array> {
  const converter = await create(1, rate, outputRate, { converterType: ConverterType.SRC_SINC_BEST_QUALITY });
  const output = converter.simple(sample);
  converter.destroy();
  return output;
}

describe('reading between frames, judged by libsamplerate', () => {
  const upTo15kHz = [110, 1000, 3100, 6300, 9700, 12400, 15000];

  it.each([
    [44100, 48000, 'reference', -100],
    [44100, 96000, 'reference', -100],
    // Eight taps: good enough to play by.
    [44100, 48000, 'live', -36],
  ] as const)('from %i to %i Hz in %s quality', async (rate, outputRate, quality, most) => {
    const sample = tones(upTo15kHz, 1.1, rate);
    const own = voice(sample, rate, outputRate, quality);
    const reference = await judge(sample, rate, outputRate);
    expect(residualDb(own, reference, 2000, outputRate * 0.9)).toBeLessThan(most);
  });

  it.each([
    [96000, 48000],
    [72000, 48000],
    [192000, 48000],
  ])('keeps what passes from %i to %i Hz', async (rate, outputRate) => {
    const sample = tones([110, 1000, 5000, 9000, 14000], 1.1, rate);
    const own = voice(sample, rate, outputRate, 'reference');
    expect(residualDb(own, await judge(sample, rate, outputRate), 2000, outputRate * 0.9)).toBeLessThan(-100);
  });

  it.each([
    // A tone of 20 kHz an octave up, and higher ones, would fold back.
    ['20 kHz an octave up', 20000, 48000, 12],
    ['15 kHz an octave up', 15000, 48000, 12],
    ['20 kHz two octaves up', 20000, 48000, 24],
    ['20 kHz four octaves up', 20000, 48000, 48],
    ['20 kHz a fifth up', 20000, 48000, 7],
  ])('keeps %s out', (_name, hertz, rate, semitones) => {
    const samples = { 'a.wav': { channels: [tones([hertz], 4, rate)], rate } };
    const { left } = play('<region> sample=a.wav pan=-100', 0.2, { samples, key: 60 + semitones });
    const part = left.subarray(1000, 9000);
    const level = Math.sqrt((2 * part.reduce((sum, value) => sum + value * value, 0)) / part.length);
    // The tone has half of full scale.
    expect(db(level / 0.5)).toBeLessThan(-90);
  });
});
