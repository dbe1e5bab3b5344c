import { fourierOf } from '../audio/measure/fourier';

/** The power of a sound in one band. */
export interface ThirdOctave {
  /** The nominal midband frequency. */
  hertz: number;
  /** Power against a sound of full scale in all frames. */
  power: number;
}

/** Nominal midband frequencies of bands −16 to 13 (IEC 61260-1:2014, annex E, table E.1; from memory). */
const nominal = [
  25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500,
  3150, 4000, 5000, 6300, 8000, 10000, 12500, 16000, 20000,
];
const firstBand = -16;
/** G, by which an octave is 10^(3/10) (IEC 61260-1:2014, 5.2.1). */
const octave = 10 ** 0.3;

/**
 * Powers in bands of a third of an octave. Midband frequencies are 1000·G^(x/3) Hz, the edges a sixth of an octave away
 * (IEC 61260-1:2014, 5.3 to 5.5); the bands are cut from a discrete Fourier transform, so their edges are steeper than the
 * filters that the standard asks of a meter. Bands beyond half of the rate are left out.
 */
export function thirdOctaves(channels: readonly Float32Array[], sampleRate: number): ThirdOctave[] {
  const frames = Math.max(0, ...channels.map(({ length }) => length));
  const length = 2 ** Math.ceil(Math.log2(Math.max(2, frames)));
  const powers = new Float64Array(length / 2);
  for (let first = 0; first < channels.length; first += 2)
    addPowers(channels[first], channels[first + 1], length, powers);
  const step = sampleRate / length;
  const bands: ThirdOctave[] = [];
  for (const [at, hertz] of nominal.entries()) {
    const middle = 1000 * octave ** ((firstBand + at) / 3);
    const high = middle * octave ** (1 / 6);
    if (high > sampleRate / 2) break;
    const sum = between(powers, middle / octave ** (1 / 6) / step, high / step);
    bands.push({ hertz, power: sum / Math.max(1, frames) });
  }
  return bands;
}

/**
 * Adds the powers of two channels at each step of frequency, both halves of the spectrum together; they sum to Σ x² (Parseval).
 * One transform does for both: of x + i·y, |Z(k)|² + |Z(−k)|² is 2·|X(k)|² + 2·|Y(k)|².
 */
function addPowers(
  one: Float32Array,
  other: Float32Array | undefined,
  length: number,
  powers: Float64Array,
): void {
  const real = new Float64Array(length);
  const imaginary = new Float64Array(length);
  real.set(one);
  if (other) imaginary.set(other);
  fourierOf(length).transform(real, imaginary);
  const power = (at: number) => real[at] ** 2 + imaginary[at] ** 2;
  powers[0] += power(0) / length;
  for (let at = 1; at < powers.length; at++) powers[at] += (power(at) + power(length - at)) / length;
}

/** The sum from one place to another, each number reaching half a step to both sides. */
function between(powers: Float64Array, low: number, high: number): number {
  let sum = 0;
  const last = Math.min(powers.length - 1, Math.ceil(high + 0.5));
  for (let at = Math.max(0, Math.floor(low - 0.5)); at <= last; at++) {
    const share = Math.min(high, at + 0.5) - Math.max(low, at - 0.5);
    if (share > 0) sum += powers[at] * Math.min(1, share);
  }
  return sum;
}
