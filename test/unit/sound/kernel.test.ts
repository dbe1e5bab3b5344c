import { describe, expect, it } from 'vitest';
import { constant, db, play, sine } from './playing';

const noise = Float32Array.from({ length: 2000 }, (_, at) => Math.sin(at * at * 0.37) * 0.9);

describe('reading samples', () => {
  it('gives the frames of the file bit for bit at its own pitch', () => {
    const text = '<region> sample=a.wav pan=-100';
    const { left } = play(text, 0.05, { samples: { 'a.wav': { channels: [noise], rate: 48000 } } });
    expect([...left.subarray(0, 2000)]).toEqual([...noise]);
    expect(left.subarray(2000).every((value) => value === 0)).toBe(true);
  });

  it('keeps a sine a fifth down within −100 dB', () => {
    const text = '<region> sample=a.wav pan=-100';
    const { left } = play(text, 0.5, {
      key: 53,
      samples: { 'a.wav': { channels: [sine(10000, 1)], rate: 48000 } },
    });
    const hertz = 10000 * 2 ** (-7 / 12);
    const errors = [...left.subarray(1000, 20000)].map(
      (value, at) => value - Math.sin((2 * Math.PI * hertz * (at + 1000)) / 48000),
    );
    const rms = Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / errors.length);
    expect(db(rms * Math.SQRT2)).toBeLessThan(-100);
  });

  it('has the level that velocity, volume and pan say', () => {
    const text = '<region> sample=a.wav volume=-6';
    const { left, right } = play(text, 0.01, { velocity: 64, samples: { 'a.wav': constant() } });
    expect(db(left[100])).toBeCloseTo(-6 + 40 * Math.log10(64 / 127) - 3.0103, 3);
    expect(right[100]).toBeCloseTo(left[100], 12);
  });
});
