/** Levels are told apart in steps of 6 dB, by the power of two below a magnitude, down to 2^-13, about −78 dB (our choice). */
const least = 2 ** 13;
const levels = 15;
/** So many steps below the highest level, at least 60 dB, a sound counts as silent (our choice). */
const silentSteps = 10;

/**
 * Finds in one pass where a sound starts and ends, though what counts as silence depends on its peak: less than the
 * greatest power of two that lies at least 60 dB below the peak, or than about −78 dB of full scale (common practice: 60
 * dB is the fall by which reverberation is said to be over; ISO 3382).
 */
export class SilenceScan {
  #frame = 0;
  #highest = 0;
  /** The first frame that reaches each level, and the last one that lies in it. */
  readonly #first = new Float64Array(levels).fill(-1);
  readonly #last = new Float64Array(levels).fill(-1);

  /** Takes the greatest magnitudes of any channel in the next frames. */
  add(magnitudes: Float32Array, count: number): void {
    let highest = this.#highest;
    for (let at = 0; at < count; at++) {
      const level = 32 - Math.clz32(Math.min(magnitudes[at], 1) * least);
      if (level === 0) continue;
      this.#last[level] = this.#frame + at;
      while (highest < level) this.#first[++highest] = this.#frame + at;
    }
    this.#highest = highest;
    this.#frame += count;
  }

  /** Frames of silence before and behind the sound; all frames for both where there is no sound. */
  result(): { leading: number; trailing: number } {
    const frames = this.#frame;
    if (this.#highest === 0) return { leading: frames, trailing: frames };
    const sounding = Math.max(1, this.#highest - silentSteps);
    let last = 0;
    for (let level = sounding; level < levels; level++) last = Math.max(last, this.#last[level]);
    return { leading: this.#first[sounding], trailing: frames - 1 - last };
  }
}
