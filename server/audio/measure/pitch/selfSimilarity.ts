import { fourierOf } from '../fourier';

/**
 * How alike a sound is to itself a lag later, from −1 to 1, for each lag up to half the window, as the mean of some
 * windows: the normalised square difference n'(τ) = 2·Σ x[j]·x[j+τ] ÷ Σ (x[j]² + x[j+τ]²) of McLeod and Wyvill, A
 * smarter way to find pitch, ICMC 2005. `starts` are the first frames of the windows; `length` is a power of 2.
 */
export function selfSimilarity(
  samples: Float32Array,
  starts: readonly number[],
  length: number,
): Float64Array {
  const mean = new Float64Array(length / 2 + 1);
  // Windows go two by two: one as the real, one as the imaginary part of one transform.
  for (let at = 0; at < starts.length; at += 2) {
    const first = starts[at];
    const second = starts[at + 1];
    if (second === undefined)
      addNormalised(mean, autocorrelation(samples, first, length), samples, first, length);
    else {
      const [one, two] = autocorrelations(samples, first, second, length);
      addNormalised(mean, one, samples, first, length);
      addNormalised(mean, two, samples, second, length);
    }
  }
  for (let lag = 0; lag < mean.length; lag++) mean[lag] = mean[lag] / Math.max(1, starts.length);
  return mean;
}

/** Where transforms are worked out, by how many numbers they have; what stands there counts until the next one. */
const rooms = new Map<number, [Float64Array, Float64Array]>();

function roomFor(length: number): [Float64Array, Float64Array] {
  let room = rooms.get(length);
  if (!room) {
    room = [new Float64Array(length), new Float64Array(length)];
    rooms.set(length, room);
  }
  return room;
}

/** Σ x[j]·x[j+τ] of one window by the Wiener-Khinchin theorem, for τ up to half the window. */
function autocorrelation(samples: Float32Array, start: number, length: number): Float64Array {
  // The window and as many zeros behind it, its even and odd numbers apart.
  const [even, odd] = roomFor(length);
  const [real, imaginary] = roomFor(length + 1);
  for (let at = 0; at < length / 2; at++) {
    even[at] = samples[start + 2 * at];
    odd[at] = samples[start + 2 * at + 1];
  }
  even.fill(0, length / 2);
  odd.fill(0, length / 2);
  const fourier = fourierOf(length);
  fourier.realTransform(even, odd, real, imaginary);
  for (let at = 0; at <= length; at++) real[at] = real[at] ** 2 + imaginary[at] ** 2;
  // The power is even, so the transform forth is the one back but for its scale.
  for (let at = 0; at < length / 2; at++) {
    even[at] = real[2 * at];
    odd[at] = real[2 * at + 1];
    even[length - 1 - at] = real[2 * at + 2];
    odd[length - 1 - at] = real[2 * at + 1];
  }
  fourier.realTransform(even, odd, real, imaginary, length / 2);
  for (let lag = 0; lag <= length / 2; lag++) real[lag] = real[lag] / (2 * length);
  return real;
}

/** Σ x[j]·x[j+τ] by the Wiener-Khinchin theorem, of two windows at once. */
function autocorrelations(
  samples: Float32Array,
  first: number,
  second: number,
  length: number,
): [Float64Array, Float64Array] {
  const padded = 2 * length;
  const fourier = fourierOf(padded);
  const [real, imaginary] = roomFor(padded);
  real.fill(0, length);
  imaginary.fill(0, length);
  for (let at = 0; at < length; at++) {
    real[at] = samples[first + at];
    imaginary[at] = samples[second + at];
  }
  fourier.transform(real, imaginary);
  // The even and odd parts of the transform belong to one window each; their powers are even, so that they can go
  // through one transform back together.
  for (let at = 0; at <= length; at++) {
    const mirror = (padded - at) % padded;
    const ar = real[at];
    const ai = imaginary[at];
    const br = real[mirror];
    const bi = imaginary[mirror];
    const one = ((ar + br) ** 2 + (ai - bi) ** 2) / 4;
    const two = ((ai + bi) ** 2 + (ar - br) ** 2) / 4;
    real[at] = one;
    imaginary[at] = two;
    real[mirror] = one;
    imaginary[mirror] = two;
  }
  fourier.transform(real, imaginary);
  for (let at = 0; at <= length / 2; at++) {
    real[at] = real[at] / padded;
    imaginary[at] = imaginary[at] / padded;
  }
  return [real, imaginary];
}

function addNormalised(
  sum: Float64Array,
  correlation: Float64Array,
  samples: Float32Array,
  start: number,
  length: number,
): void {
  let energy = 0;
  for (let at = 0; at < length; at++) energy += samples[start + at] ** 2;
  // What the quiet of a window's end leaves of rounding must not look like a likeness.
  const floor = energy * 1e-9;
  let both = 2 * energy;
  for (let lag = 0; lag < sum.length; lag++) {
    if (lag > 0) {
      both -= samples[start + lag - 1] ** 2 + samples[start + length - lag] ** 2;
    }
    if (both > floor) sum[lag] = sum[lag] + (2 * correlation[lag]) / both;
  }
}
