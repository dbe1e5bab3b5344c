import { describe, expect, it } from 'vitest';
import { fourierOf } from '../../../../server/audio/measure/fourier';
import { selfSimilarity } from '../../../../server/audio/measure/pitch/selfSimilarity';
import { randomNumbers } from './tones';

describe('the Fourier transform', () => {
  it.each([2, 8, 64])('of %i numbers is what its definition says', (length) => {
    const random = randomNumbers(length);
    const real = Float64Array.from({ length }, random);
    const imaginary = Float64Array.from({ length }, random);
    const [beforeReal, beforeImaginary] = [real.slice(), imaginary.slice()];
    fourierOf(length).transform(real, imaginary);
    for (let k = 0; k < length; k++) {
      let [sumReal, sumImaginary] = [0, 0];
      for (let n = 0; n < length; n++) {
        const [cosine, sine] = [
          Math.cos((-2 * Math.PI * k * n) / length),
          Math.sin((-2 * Math.PI * k * n) / length),
        ];
        sumReal += beforeReal[n] * cosine - beforeImaginary[n] * sine;
        sumImaginary += beforeReal[n] * sine + beforeImaginary[n] * cosine;
      }
      expect(real[k]).toBeCloseTo(sumReal, 9);
      expect(imaginary[k]).toBeCloseTo(sumImaginary, 9);
    }
  });
});

describe('likeness to itself', () => {
  it('is the normalised square difference, added up term by term', () => {
    const random = randomNumbers(3);
    const samples = Float32Array.from({ length: 300 }, random);
    const starts = [0, 50, 172];
    const length = 128;
    const likeness = selfSimilarity(samples, starts, length);
    for (const lag of [0, 1, 17, 64]) {
      let mean = 0;
      for (const start of starts) {
        let [products, squares] = [0, 0];
        for (let at = start; at + lag < start + length; at++) {
          const [one, other] = [samples[at], samples[at + lag]];
          products += 2 * one * other;
          squares += one * one + other * other;
        }
        mean += products / squares / starts.length;
      }
      expect(likeness[lag]).toBeCloseTo(mean, 6);
    }
  });
});
