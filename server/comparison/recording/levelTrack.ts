/** Seconds of one step of a level track. */
const stepSeconds = 0.005;
/** What counts as nothing, in dB: the floor of 24 bits. */
const silenceDb = -144;

/** The level of a sound of any length in steps of 5 ms, both channels together. */
export class LevelTrack {
  readonly #stepFrames: number;
  #levels = new Float32Array(4096);
  #count = 0;
  #sum = 0;
  #inStep = 0;

  constructor(sampleRate: number) {
    this.#stepFrames = Math.max(1, Math.round(sampleRate * stepSeconds));
    this.secondsPerStep = this.#stepFrames / sampleRate;
  }

  /** The length of a step, a whole number of frames. */
  readonly secondsPerStep: number;

  /** Takes the next frames. */
  add(left: ArrayLike<number>, right: ArrayLike<number>, count: number): void {
    for (let frame = 0; frame < count; frame++) {
      this.#sum += left[frame] * left[frame] + right[frame] * right[frame];
      if (++this.#inStep < this.#stepFrames) continue;
      if (this.#count === this.#levels.length) {
        const more = new Float32Array(2 * this.#count);
        more.set(this.#levels);
        this.#levels = more;
      }
      this.#levels[this.#count++] = decibels(this.#sum / (2 * this.#stepFrames));
      this.#sum = 0;
      this.#inStep = 0;
    }
  }

  /** Levels in dB, a value a step. */
  levels(): Float32Array {
    return this.#levels.subarray(0, this.#count);
  }
}

/** A mean square in dB, not below {@link silenceDb}. */
export function decibels(meanSquare: number): number {
  return meanSquare > 0 ? Math.max(silenceDb, 10 * Math.log10(meanSquare)) : silenceDb;
}

/** The level below which the quietest tenth of a track lies. */
export function floorOf(levels: Float32Array): number {
  const sorted = Float32Array.from(levels).sort();
  return sorted[Math.floor(sorted.length / 10)] ?? silenceDb;
}
