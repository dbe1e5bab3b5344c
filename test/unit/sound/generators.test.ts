import { describe, expect, it } from 'vitest';
import { fourierOf } from '../../../server/audio/measure/fourier';
import { db, play } from './playing';

const rate = 48000;
const length = 32768;

/** The spectrum of a generator in dB of a sine of full scale, through a Hann window. */
function spectrum(text: string, key: number): Float64Array {
  const { left } = play(`<region> ${text} pan=-100 amp_veltrack=0`, 0.8, { key });
  const real = Float64Array.from(
    { length },
    (_, at) => left[at + 1000] * (1 - Math.cos((2 * Math.PI * at) / length)),
  );
  const imaginary = new Float64Array(length);
  fourierOf(length).transform(real, imaginary);
  return Float64Array.from({ length: length / 2 }, (_, bin) =>
    db((2 * Math.hypot(real[bin], imaginary[bin])) / length),
  );
}

const binOf = (hertz: number) => (hertz * length) / rate;
/** The level of the greatest bin around a frequency. */
const levelNear = (levels: Float64Array, hertz: number) =>
  Math.max(...levels.subarray(Math.round(binOf(hertz)) - 2, Math.round(binOf(hertz)) + 3));

describe('generators', () => {
  // A4 = 440 Hz (ISO 16); the Fourier series of the three waves.
  it.each([
    ['*sine', 1, 0],
    ['*saw', 1, 20 * Math.log10(2 / Math.PI)],
    ['*saw', 4, 20 * Math.log10(2 / Math.PI / 4)],
    ['*square', 3, 20 * Math.log10(4 / Math.PI / 3)],
    ['*triangle', 3, 20 * Math.log10(8 / Math.PI ** 2 / 9)],
    ['*tri', 1, 20 * Math.log10(8 / Math.PI ** 2)],
  ])('%s in tune, its harmonic %i at its level', (generator, harmonic, level) => {
    const levels = spectrum(`sample=${generator}`, 69);
    // The window tells apart at 3 Hz and lowers what lies between two bins by up to 1.4 dB.
    expect(levelNear(levels, 440 * harmonic)).toBeGreaterThan(level - 1.5);
    expect(levelNear(levels, 440 * harmonic)).toBeLessThan(level + 0.05);
  });

  it.each(['*saw', '*square', '*triangle'])('%s does not fold back, high up', (generator) => {
    // Key 103 is 3136 Hz, up to its harmonic 7 below 24 kHz.
    const hertz = 440 * 2 ** ((103 - 69) / 12);
    const levels = spectrum(`sample=${generator}`, 103);
    const between = [...levels.keys()].filter((bin) => {
      const place = ((bin * rate) / length / hertz) % 1;
      return place > 0.1 && place < 0.9;
    });
    expect(Math.max(...between.map((bin) => levels[bin]))).toBeLessThan(-90);
  });

  it('*noise is white, of the level of evenly spread numbers, and the same for a seed', () => {
    const noise = (seed: number) => play('<region> sample=*noise pan=-100 amp_veltrack=0', 1, { seed }).left;
    const first = noise(1);
    const power = first.reduce((sum, value) => sum + value * value, 0) / first.length;
    expect(power).toBeCloseTo(1 / 3, 2);
    const neighbours =
      first.subarray(1).reduce((sum, value, at) => sum + value * first[at], 0) / first.length;
    expect(Math.abs(neighbours)).toBeLessThan(0.01);
    expect(noise(1)).toEqual(first);
    expect(noise(2)).not.toEqual(first);
  });

  it('*silence is silent, and an unknown one too', () => {
    for (const text of ['*silence', '*theremin']) {
      const { left, right } = play(`<region> sample=${text}`, 0.1);
      expect([...left, ...right].every((value) => value === 0)).toBe(true);
    }
  });

  it('end by themselves where the key cannot end them', () => {
    const { left } = play('<region> sample=*sine loop_mode=one_shot', 11, { rate: 4000 });
    expect(left.subarray(4000, 39000).some((value) => value !== 0)).toBe(true);
    expect(left.subarray(4000 * 10.1).every((value) => value === 0)).toBe(true);
  });
});
