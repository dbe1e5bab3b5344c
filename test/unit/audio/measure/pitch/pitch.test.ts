import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measurePitch } from '../../../../../server/audio/measure/pitch/pitch';
import type { ToneKind } from '../tones';
import { centsAbove, randomNumbers, struck, toneAt } from '../tones';

// The frequency of each tone is known because the test computes it from sines; nothing here comes from the measure.

const keys = Array.from({ length: 12 }, (_, number) => 28 + 6.17 * number);

describe('the pitch of a tone', () => {
  const kinds: [name: string, kind: ToneKind, cents: number][] = [
    ['harmonic', {}, 0.1],
    ['at 22050 Hz', { sampleRate: 22050 }, 0.1],
    ['at 96 kHz', { sampleRate: 96000, seconds: 1 }, 0.1],
    ['of one sine', { amplitude: (number) => (number === 1 ? 1 : 0) }, 0.1],
    ['with odd partials alone', { amplitude: (number) => (number % 2 ? 1 / number : 0) }, 0.1],
    ['with a weak fundamental', { amplitude: (number) => (number === 1 ? 0.05 : 1 / number) }, 0.1],
    ['without its fundamental', { amplitude: (number) => (number === 1 ? 0 : 1 / number) }, 0.1],
    ['with weak odd partials', { amplitude: (number) => (number % 2 ? 0.1 : 1) / number }, 0.1],
    ['that dies away', { decays: true }, 0.1],
    ['of a stiff string (B = 0.0004, a piano)', { inharmonicity: 0.0004, decays: true }, 0.5],
    ['of a stiffer string (B = 0.001)', { inharmonicity: 0.001, decays: true }, 3],
    ['under noise 20 dB below it', { noiseDb: 20 }, 1],
    ['under noise 10 dB below it', { noiseDb: 10 }, 2],
    ['with vibrato of 20 cents', { vibratoCents: 20 }, 3],
    ['after an attack of noise', { hasAttackNoise: true, decays: true }, 0.1],
    ['of a fifth of a second', { seconds: 0.2 }, 0.5],
  ];

  it.each(kinds)('%s', (_name, kind, most) => {
    for (const key of keys) {
      const { samples, sampleRate, hertz } = toneAt(key, kind);
      const pitch = measurePitch(samples, sampleRate);
      expect(Math.abs(centsAbove(pitch?.hertz ?? 0, hertz)), `key ${key}`).toBeLessThan(most);
      expect(pitch?.confidence, `key ${key}`).toBeGreaterThan(0.8);
    }
  });

  it.each([72, 80.4, 88, 96, 100.7])('stands under rumble that is louder: key %f', (key) => {
    for (const rumbleDb of [0, 10]) {
      const { samples, sampleRate, hertz } = toneAt(key, { rumbleDb, decays: true });
      const pitch = measurePitch(samples, sampleRate);
      expect(Math.abs(centsAbove(pitch?.hertz ?? 0, hertz)), `${rumbleDb} dB`).toBeLessThan(2);
    }
  });

  it('is given as its nearest key and the cents above it', () => {
    const { samples, sampleRate } = toneAt(60.3);
    const pitch = measurePitch(samples, sampleRate);
    expect(pitch?.key).toBe(60);
    expect(pitch?.cents).toBeCloseTo(30, 1);
  });

  it('stands whatever the level, and beside a constant', () => {
    const { samples, sampleRate, hertz } = toneAt(57);
    const shifted = samples.map((value) => 0.3 + value / 50);
    expect(measurePitch(shifted, sampleRate)?.hertz).toBeCloseTo(hertz, 1);
  });
});

describe('sounds without a sure pitch', () => {
  const noise = (seed: number) => {
    const random = randomNumbers(seed);
    return Float32Array.from({ length: 88200 }, () => 0.5 * random());
  };

  it.each([1, 2, 3, 4])('noise, seed %i', (seed) => {
    expect(measurePitch(noise(seed), 44100)?.confidence ?? 0).toBeLessThan(0.3);
  });

  it('bursts of noise with a short low tone', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const random = randomNumbers(seed);
      const burst = Float64Array.from({ length: 44100 }, (_, frame) => {
        const tone = 0.1 * Math.exp(-frame / 3000) * Math.sin((2 * Math.PI * 180 * frame) / 44100);
        return tone + 0.5 * random() * Math.exp(-frame / (1500 * seed));
      });
      const pitch = measurePitch(Float32Array.from(burst), 44100);
      expect(pitch?.confidence ?? 0, `seed ${seed}`).toBeLessThan(0.6);
    }
  });

  // Modes of an ideal round membrane: zeros of Bessel functions over the first (Fletcher and Rossing, The Physics of
  // Musical Instruments).
  it.each([60, 100, 200])('a drum of %i Hz', (hertz) => {
    const drum = struck(hertz, [1, 1.593, 2.136, 2.296, 2.653, 2.918], 0.8, 3);
    expect(measurePitch(drum, 44100)?.confidence ?? 0).toBeLessThan(0.8);
  });

  it.each([220, 440])('a bell with a strike note of %i Hz', (hertz) => {
    const bell = struck(hertz, [0.5, 1, 1.2, 1.5, 2, 2.5, 2.67, 3, 4], 0.95, 0.5);
    expect(measurePitch(bell, 44100)?.confidence ?? 0).toBeLessThan(0.8);
  });

  it.each([100, 270, 440, 610])('a chord over %i Hz', (hertz) => {
    const chord = struck(hertz, [1, 1.26, 1.498], 1, 0);
    expect(measurePitch(chord, 44100)?.confidence ?? 0).toBeLessThan(0.8);
  });

  // Modes of a bar with free ends: 1, 2.756, 5.404, 8.933 (the same book).
  it.each([65, 130, 262, 523, 1047])('a bar of %i Hz never has a sure pitch of another octave', (hertz) => {
    for (const brightness of [0.1, 0.4, 0.7, 1]) {
      const pitch = measurePitch(struck(hertz, [1, 2.756, 5.404, 8.933], brightness, 3), 44100);
      if (pitch && pitch.confidence >= 0.8) expect(Math.abs(centsAbove(pitch.hertz, hertz))).toBeLessThan(20);
    }
  });

  it('silence, a constant and hardly any sound have none', () => {
    expect(measurePitch(new Float32Array(44100), 44100)).toBeNull();
    expect(measurePitch(new Float32Array(44100).fill(0.5), 44100)).toBeNull();
    expect(measurePitch(new Float32Array(0), 44100)).toBeNull();
    expect(measurePitch(toneAt(60).samples.slice(0, 100), 44100)).toBeNull();
  });

  it('any numbers at any rate give a sensible answer', () => {
    const samples = fc.float32Array({ maxLength: 3000, noNaN: true, min: -2, max: 2 });
    const rate = fc.oneof(fc.integer({ min: 1, max: 4294967295 }), fc.constantFrom(8000, 44100, 192000));
    fc.assert(
      fc.property(samples, rate, (numbers, sampleRate) => {
        const pitch = measurePitch(numbers, sampleRate);
        if (pitch === null) return;
        expect(pitch.hertz).toBeGreaterThan(0);
        expect(pitch.confidence).toBeGreaterThanOrEqual(0);
        expect(pitch.confidence).toBeLessThanOrEqual(1);
        expect(Number.isFinite(pitch.cents)).toBe(true);
      }),
    );
  });
});
