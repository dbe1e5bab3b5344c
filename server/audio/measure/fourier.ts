/**
 * A discrete Fourier transform of complex numbers, in place: radix 2, decimation in time (Cooley and Tukey, Mathematics
 * of Computation 19(90), 1965). Its tables are made once for a length.
 */
export class Fourier {
  /** How many numbers it transforms: a power of 2. */
  readonly length: number;
  readonly #cosines: Float64Array;
  readonly #sines: Float64Array;
  readonly #reversed: Uint32Array;

  constructor(length: number) {
    this.length = length;
    this.#cosines = new Float64Array(length / 2);
    this.#sines = new Float64Array(length / 2);
    for (let at = 0; at < length / 2; at++) {
      this.#cosines[at] = Math.cos((2 * Math.PI * at) / length);
      this.#sines[at] = -Math.sin((2 * Math.PI * at) / length);
    }
    this.#reversed = new Uint32Array(length);
    for (let at = 1; at < length; at++) {
      const half = this.#reversed[at >> 1] >> 1;
      this.#reversed[at] = half + (at % 2) * (length / 2);
    }
  }

  /** X[k] = Σ x[n] · e^(−2πikn / length), not scaled. Both arrays hold {@link length} numbers and are written over. */
  transform(real: Float64Array, imaginary: Float64Array): void {
    const { length } = this;
    const cosines = this.#cosines;
    const sines = this.#sines;
    this.#reorder(real, imaginary);
    for (let half = 1; half < length; half *= 2) {
      const stride = length / (2 * half);
      for (let block = 0; block < length; block += 2 * half) {
        for (let at = block, turn = 0; at < block + half; at++, turn += stride) {
          const cosine = cosines[turn];
          const sine = sines[turn];
          const other = at + half;
          const otherReal = real[other];
          const otherImaginary = imaginary[other];
          const turnedReal = otherReal * cosine - otherImaginary * sine;
          const turnedImaginary = otherReal * sine + otherImaginary * cosine;
          real[other] = real[at] - turnedReal;
          imaginary[other] = imaginary[at] - turnedImaginary;
          real[at] = real[at] + turnedReal;
          imaginary[at] = imaginary[at] + turnedImaginary;
        }
      }
    }
  }

  #reorder(real: Float64Array, imaginary: Float64Array): void {
    for (let at = 0; at < this.length; at++) {
      const other = this.#reversed[at];
      if (other <= at) continue;
      const keptReal = real[at];
      real[at] = real[other];
      real[other] = keptReal;
      const keptImaginary = imaginary[at];
      imaginary[at] = imaginary[other];
      imaginary[other] = keptImaginary;
    }
  }
}

const made = new Map<number, Fourier>();

/** The transform of a length that is a power of 2, made when first asked for. */
export function fourierOf(length: number): Fourier {
  let fourier = made.get(length);
  if (!fourier) {
    fourier = new Fourier(length);
    made.set(length, fourier);
  }
  return fourier;
}
