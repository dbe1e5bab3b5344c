/** Variances below this, about −100 dB, are silence (our choice). */
const silence = 1e-10;

/** Compares the channels of a sound while it passes. */
export class ChannelLikeness {
  #frames = 0;
  #products = 0;
  #areEqual = true;

  /** Takes the next frames. */
  add(block: readonly Float32Array[]): void {
    const [first, second] = block;
    if (!first || !second) return;
    let products = 0;
    for (let frame = 0; frame < first.length; frame++) {
      products += first[frame] * second[frame];
    }
    this.#products += products;
    this.#frames += first.length;
    for (let channel = 1; this.#areEqual && channel < block.length; channel++) {
      this.#areEqual = isSame(first, block[channel]);
    }
  }

  /** Whether there are several channels and all hold the same. */
  get hasEqualChannels(): boolean {
    return this.#frames > 0 && this.#areEqual;
  }

  /**
   * The correlation of the first two channels (Pearson's), from their sums and sums of squares; `null` where either is
   * silent.
   */
  correlation(sums: readonly number[], squares: readonly number[]): number | null {
    const frames = this.#frames;
    if (frames === 0) return null;
    const [one = 0, other = 0] = sums.map((sum) => sum / frames);
    const [oneVariance = 0, otherVariance = 0] = [
      (squares[0] ?? 0) / frames - one * one,
      (squares[1] ?? 0) / frames - other * other,
    ];
    if (oneVariance < silence || otherVariance < silence) return null;
    const correlation = (this.#products / frames - one * other) / Math.sqrt(oneVariance * otherVariance);
    return Math.max(-1, Math.min(1, correlation));
  }
}

function isSame(one: Float32Array, other: Float32Array): boolean {
  for (let frame = 0; frame < one.length; frame++) if (one[frame] !== other[frame]) return false;
  return true;
}
