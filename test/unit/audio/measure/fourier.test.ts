import { describe, expect, it } from 'vitest';
import { fourierOf } from '../../../../server/audio/measure/fourier';
import { selfSimilarity } from '../../../../server/audio/measure/pitch/selfSimilarity';
import { randomNumbers } from './tones';

// The definition is the sum of x[n] · e^(−2πikn/N) (common practice); it is worked out term by term here.
describe('the Fourier transform', () => {
  it.each([1, 2, 4, 8, 16, 32, 64])('of %i numbers is what its definition says', (length) => {
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

describe('the transform of real numbers', () => {
  it.each([1, 2, 8, 32])('by one of %i complex numbers is the transform of twice as many', (length) => {
    const random = randomNumbers(length);
    const numbers = Float64Array.from({ length: 2 * length }, random);
    const [real, imaginary] = [numbers.slice(), new Float64Array(2 * length)];
    fourierOf(2 * length).transform(real, imaginary);
    const even = numbers.filter((_, at) => at % 2 === 0);
    const odd = numbers.filter((_, at) => at % 2 === 1);
    const [halfReal, halfImaginary] = [new Float64Array(length + 1), new Float64Array(length + 1)];
    fourierOf(length).realTransform(even, odd, halfReal, halfImaginary);
    for (let k = 0; k <= length; k++) {
      expect(halfReal[k]).toBeCloseTo(real[k % (2 * length)], 9);
      expect(halfImaginary[k]).toBeCloseTo(imaginary[k % (2 * length)], 9);
    }
  });
});

describe('likeness to itself', () => {
  it.each([[[0]], [[0, 50]], [[0, 50, 172]]])(
    'is the normalised square difference, added up term by term: windows at %j',
    (starts) => {
      const random = randomNumbers(3);
      const samples = Float32Array.from({ length: 300 }, random);
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
    },
  );
});
