import { describe, expect, it } from 'vitest';
import { thirdOctaves } from '../../../server/comparison/thirdOctaves';

const rate = 48000;
const sine = (hertz: number, amplitude: number) =>
  Float32Array.from({ length: rate }, (_, at) => amplitude * Math.sin((2 * Math.PI * hertz * at) / rate));

describe('third octaves', () => {
  // IEC 61260-1:2014, 5.4: exact midband frequencies 1000·10^(x/10); the edges are a factor of 10^(1/20) away.
  it.each([
    [20, 100],
    [23, 200],
    [26, 400],
    [30, 1000],
    [33, 2000],
    [40, 10000],
  ])('have the power of a sine at 10^(%i/10) Hz in the band named %i Hz', (exponent, hertz) => {
    const bands = thirdOctaves([sine(10 ** (exponent / 10), 0.5)], rate);
    const [loudest, second] = bands.toSorted((one, other) => other.power - one.power);
    expect(loudest.hertz).toBe(hertz);
    // The mean square of a sine is half of the square of its amplitude.
    expect(10 * Math.log10(loudest.power / 0.125)).toBeCloseTo(0, 1);
    expect(second.power).toBeLessThan(loudest.power / 100);
  });

  it('take a sine to either side of an edge', () => {
    const edge = 1000 * 10 ** (1 / 20);
    const loudestAt = (hertz: number) =>
      thirdOctaves([sine(hertz, 0.5)], rate).toSorted((one, other) => other.power - one.power)[0].hertz;
    expect(loudestAt(edge * 0.99)).toBe(1000);
    expect(loudestAt(edge * 1.01)).toBe(1250);
  });

  it('keep all of the power between the lowest and the highest', () => {
    const sum = thirdOctaves([sine(50, 0.3), sine(3000, 0.4)], rate).reduce(
      (all, { power }) => all + power,
      0,
    );
    expect(sum).toBeCloseTo((0.3 ** 2 + 0.4 ** 2) / 2, 3);
  });
});
