/** A filter of second order: b0 + b1·z⁻¹ + b2·z⁻² over 1 + a1·z⁻¹ + a2·z⁻². */
export interface SecondOrder {
  b: readonly [number, number, number];
  a: readonly [number, number];
}

/** Below this rate the shelf would lie too near to half of it to be what is meant (our choice). */
export const leastWeightedRate = 4000;

/**
 * The two filters of K-weighting, a high shelf and then a high pass, at any sample rate from {@link leastWeightedRate}.
 *
 * ITU-R BS.1770-5, Annex 1, gives their coefficients at 48 kHz (tables 1 and 2) and asks for the same response at other
 * rates. These are the analogue filters that the bilinear transform turns into those coefficients, solved for from
 * them: corner frequency, quality and, for the shelf, its gain in dB and the share of it at the corner.
 */
export function kWeighting(sampleRate: number): { shelf: SecondOrder; highPass: SecondOrder } {
  const shelf = { hertz: 1681.974450955533, quality: 0.7071752369554196, gainDb: 3.999843853973347 };
  const pass = { hertz: 38.13547087602444, quality: 0.5003270373238773 };
  const high = 10 ** (shelf.gainDb / 20);
  const corner = high ** 0.4996667741545416;
  const k = Math.tan((Math.PI * shelf.hertz) / sampleRate);
  const scale = 1 + k / shelf.quality + k * k;
  const p = Math.tan((Math.PI * pass.hertz) / sampleRate);
  const passScale = 1 + p / pass.quality + p * p;
  return {
    shelf: {
      b: [
        (high + (corner * k) / shelf.quality + k * k) / scale,
        (2 * (k * k - high)) / scale,
        (high - (corner * k) / shelf.quality + k * k) / scale,
      ],
      a: [(2 * (k * k - 1)) / scale, (1 - k / shelf.quality + k * k) / scale],
    },
    highPass: {
      // The standard leaves the gain of this filter as it comes out, a little above 1.
      b: [1, -2, 1],
      a: [(2 * (p * p - 1)) / passScale, (1 - p / pass.quality + p * p) / passScale],
    },
  };
}

/** Values so small that they slow the processor down and no longer sound (our choice). */
const nothing = 1e-25;

/** K-weights one channel and sums what is left. */
export class WeightedEnergy {
  readonly #shelf: SecondOrder;
  readonly #highPass: SecondOrder;
  /** What the two filters carry on, in transposed direct form II. */
  readonly #carried = new Float64Array(4);

  constructor(sampleRate: number) {
    const { shelf, highPass } = kWeighting(sampleRate);
    this.#shelf = shelf;
    this.#highPass = highPass;
  }

  /** The sum of squares of the weighted values from one frame up to another. */
  add(values: Float32Array, from: number, to: number): number {
    const [b0, b1, b2] = this.#shelf.b;
    const [a1, a2] = this.#shelf.a;
    const [h1, h2] = this.#highPass.a;
    let [s1 = 0, s2 = 0, p1 = 0, p2 = 0] = this.#carried;
    let energy = 0;
    for (let frame = from; frame < to; frame++) {
      const input = values[frame];
      const shelved = b0 * input + s1;
      s1 = b1 * input - a1 * shelved + s2;
      s2 = b2 * input - a2 * shelved;
      const passed = shelved + p1;
      p1 = -2 * shelved - h1 * passed + p2;
      p2 = shelved - h2 * passed;
      energy += passed * passed;
    }
    this.#carried[0] = Math.abs(s1) < nothing ? 0 : s1;
    this.#carried[1] = Math.abs(s2) < nothing ? 0 : s2;
    this.#carried[2] = Math.abs(p1) < nothing ? 0 : p1;
    this.#carried[3] = Math.abs(p2) < nothing ? 0 : p2;
    return energy;
  }
}
