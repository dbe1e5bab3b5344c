/**
 * A discrete Fourier transform of complex numbers, in place: decimation in time (Cooley and Tukey, Mathematics of
 * Computation 19(90), 1965), two steps of radix 2 in one pass, which goes over the numbers half as often. Its tables are
 * made once for a length.
 */
export class Fourier {
  /** How many numbers it transforms: a power of 2. */
  readonly length: number;
  readonly #cosines: Float64Array;
  readonly #sines: Float64Array;
  readonly #reversed: Uint32Array;
  /** The tables of twice the length. */
  #halfTurns: Fourier | undefined;

  constructor(length: number) {
    this.length = length;
    this.#cosines = new Float64Array(length);
    this.#sines = new Float64Array(length);
    for (let at = 0; at < length; at++) {
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
    this.#reorder(real, imaginary);
    let quarter = 1;
    if (Math.log2(length) % 2 === 1) {
      addPairs(real, imaginary, length);
      quarter = 2;
    }
    if (quarter === 1 && length > 1) {
      addFours(real, imaginary, length);
      quarter = 4;
    }
    for (; quarter < length; quarter *= 4) this.#twoSteps(real, imaginary, quarter);
  }

  /** Joins transforms of `quarter` numbers four by four. */
  #twoSteps(real: Float64Array, imaginary: Float64Array, quarter: number): void {
    const { length } = this;
    const cosines = this.#cosines;
    const sines = this.#sines;
    const stride = length / (4 * quarter);
    for (let block = 0; block < length; block += 4 * quarter) {
      for (let first = block, turn = 0; first < block + quarter; first++, turn += stride) {
        const cosine1 = cosines[turn];
        const sine1 = sines[turn];
        const cosine2 = cosines[2 * turn];
        const sine2 = sines[2 * turn];
        const cosine3 = cosines[3 * turn];
        const sine3 = sines[3 * turn];
        const second = first + quarter;
        const third = second + quarter;
        const fourth = third + quarter;
        const bReal = real[second] * cosine2 - imaginary[second] * sine2;
        const bImaginary = real[second] * sine2 + imaginary[second] * cosine2;
        const cReal = real[third] * cosine1 - imaginary[third] * sine1;
        const cImaginary = real[third] * sine1 + imaginary[third] * cosine1;
        const dReal = real[fourth] * cosine3 - imaginary[fourth] * sine3;
        const dImaginary = real[fourth] * sine3 + imaginary[fourth] * cosine3;
        const lowReal = real[first] + bReal;
        const lowImaginary = imaginary[first] + bImaginary;
        const highReal = real[first] - bReal;
        const highImaginary = imaginary[first] - bImaginary;
        const sumReal = cReal + dReal;
        const sumImaginary = cImaginary + dImaginary;
        const differenceReal = cReal - dReal;
        const differenceImaginary = cImaginary - dImaginary;
        real[first] = lowReal + sumReal;
        imaginary[first] = lowImaginary + sumImaginary;
        real[third] = lowReal - sumReal;
        imaginary[third] = lowImaginary - sumImaginary;
        real[second] = highReal + differenceImaginary;
        imaginary[second] = highImaginary - differenceReal;
        real[fourth] = highReal - differenceImaginary;
        imaginary[fourth] = highImaginary + differenceReal;
      }
    }
  }

  /**
   * X[k] of twice {@link length} real numbers, for k from 0 to `last`, which is `length` at the most, by one transform of
   * half as many complex ones (Press and others, Numerical Recipes, 3rd edition, 12.3). `even` and `odd` hold the numbers
   * at even and odd places and are written over.
   */
  realTransform(
    even: Float64Array,
    odd: Float64Array,
    real: Float64Array,
    imaginary: Float64Array,
    last = this.length,
  ): void {
    const { length } = this;
    this.#halfTurns ??= new Fourier(2 * length);
    const cosines = this.#halfTurns.#cosines;
    const sines = this.#halfTurns.#sines;
    this.transform(even, odd);
    for (let at = 0; at <= last; at++) {
      const here = at === length ? 0 : at;
      const mirror = here === 0 ? 0 : length - here;
      const evenReal = (even[here] + even[mirror]) / 2;
      const evenImaginary = (odd[here] - odd[mirror]) / 2;
      const oddReal = (odd[here] + odd[mirror]) / 2;
      const oddImaginary = (even[mirror] - even[here]) / 2;
      real[at] = evenReal + oddReal * cosines[at] - oddImaginary * sines[at];
      imaginary[at] = evenImaginary + oddReal * sines[at] + oddImaginary * cosines[at];
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

/** The first step where their number is odd: sums and differences of neighbours. */
function addPairs(real: Float64Array, imaginary: Float64Array, length: number): void {
  for (let at = 0; at < length; at += 2) {
    const otherReal = real[at + 1];
    const otherImaginary = imaginary[at + 1];
    real[at + 1] = real[at] - otherReal;
    imaginary[at + 1] = imaginary[at] - otherImaginary;
    real[at] = real[at] + otherReal;
    imaginary[at] = imaginary[at] + otherImaginary;
  }
}

/** The first two steps: none turns by more than a quarter of a round, so that nothing is multiplied. */
function addFours(real: Float64Array, imaginary: Float64Array, length: number): void {
  for (let at = 0; at < length; at += 4) {
    const lowReal = real[at] + real[at + 1];
    const lowImaginary = imaginary[at] + imaginary[at + 1];
    const highReal = real[at] - real[at + 1];
    const highImaginary = imaginary[at] - imaginary[at + 1];
    const sumReal = real[at + 2] + real[at + 3];
    const sumImaginary = imaginary[at + 2] + imaginary[at + 3];
    const differenceReal = real[at + 2] - real[at + 3];
    const differenceImaginary = imaginary[at + 2] - imaginary[at + 3];
    real[at] = lowReal + sumReal;
    imaginary[at] = lowImaginary + sumImaginary;
    real[at + 2] = lowReal - sumReal;
    imaginary[at + 2] = lowImaginary - sumImaginary;
    real[at + 1] = highReal + differenceImaginary;
    imaginary[at + 1] = highImaginary - differenceReal;
    real[at + 3] = highReal - differenceImaginary;
    imaginary[at + 3] = highImaginary + differenceReal;
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
