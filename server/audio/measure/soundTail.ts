/** The level of the end is measured over so long (our choice). */
const levelSeconds = 0.01;
/** The sound's own steps are looked for in so long a stretch before its end, a period of the lowest notes (our choice). */
const stepSeconds = 0.05;
/** Values that are kept at the most, over all channels (our choice). */
const mostKept = 1 << 20;

/** How a sound ends; see `SampleSurvey`. */
export interface SoundEnd {
  endLevelDb: number;
  endStep: number;
  greatestEndStep: number;
}

/** Keeps the end of a sound while it passes, and the energy of its loudest hundredth of a second. */
export class TailScan {
  readonly #levelFrames: number;
  readonly #tails: Float32Array[];
  #kept = 0;
  #loudest = 0;
  #energy = 0;
  #inWindow = 0;

  constructor(sampleRate: number, channels: number) {
    const most = Math.max(2, Math.floor(mostKept / channels));
    this.#levelFrames = Math.min(most, Math.max(1, Math.round(levelSeconds * sampleRate)));
    const tail = Math.min(most, Math.max(this.#levelFrames, Math.round(stepSeconds * sampleRate)) + 1);
    this.#tails = Array.from({ length: channels }, () => new Float32Array(tail));
  }

  /** Takes the next frames and the sum of squares over all channels of each of them. */
  add(block: readonly Float32Array[], energies: Float32Array, count: number): void {
    let energy = this.#energy;
    let inWindow = this.#inWindow;
    for (let at = 0; at < count; at++) {
      energy += energies[at];
      if (++inWindow < this.#levelFrames) continue;
      if (energy > this.#loudest) this.#loudest = energy;
      energy = 0;
      inWindow = 0;
    }
    this.#energy = energy;
    this.#inWindow = inWindow;
    this.#tails.forEach((tail, channel) => {
      const values = block[channel];
      if (!values) return;
      if (count < tail.length) tail.copyWithin(0, count);
      tail.set(values.subarray(Math.max(0, count - tail.length), count), Math.max(0, tail.length - count));
    });
    this.#kept = Math.min(this.#kept + count, this.#tails[0]?.length ?? 0);
  }

  result(): SoundEnd {
    let end = 0;
    let endStep = 0;
    let greatestEndStep = 0;
    for (const tail of this.#tails) {
      const first = tail.length - this.#kept;
      for (let at = Math.max(first, tail.length - this.#levelFrames); at < tail.length; at++) {
        end += tail[at] ** 2;
      }
      for (let at = first + 1; at < tail.length; at++) {
        greatestEndStep = Math.max(greatestEndStep, Math.abs(tail[at] - tail[at - 1]));
      }
      endStep = Math.max(endStep, Math.abs(tail[tail.length - 1]));
    }
    const loudest = Math.max(this.#loudest, end);
    return {
      endLevelDb: end > 0 ? Math.min(0, 10 * Math.log10(end / loudest)) : Number.NEGATIVE_INFINITY,
      endStep,
      greatestEndStep,
    };
  }
}
