import { leastWeightedRate, WeightedEnergy } from './kWeighting';

/** Blocks of 400 ms start every 100 ms, and are gated at these levels (ITU-R BS.1770-5, Annex 1). */
const stepsInBlock = 4;
const stepsInSecond = 10;
const absoluteGate = -70;
const relativeGate = -10;

/** The loudness of a whole sound in LUFS. */
export interface Loudness {
  /** `null` where no block passes the gate, as in a sound shorter than a block. */
  integrated: number | null;
  /** The greatest of one block, or that of the whole of a shorter sound; `null` for silence. */
  momentary: number | null;
}

/**
 * Measures loudness in one pass: K-weighted mean squares of blocks of 400 ms that overlap by three quarters, gated at −70
 * LUFS and then at 10 LU below the mean of what is left. ITU-R BS.1770-5 (11/2023), Annex 1; momentary loudness: EBU Tech 3341, version 4.0
 * (November 2023), section 2.2. Editions from memory, and the section.
 */
export class LoudnessMeter {
  readonly #stepFrames: number;
  readonly #channels: { weight: number; energy: WeightedEnergy; channel: number }[];
  /** Weighted sums of squares of every 100 ms. */
  readonly #steps: number[] = [];
  #inStep = 0;
  #energy = 0;

  /** Silent at sample rates too low for the weighting. */
  constructor(sampleRate: number, channels: number) {
    this.#stepFrames = Math.max(1, Math.round(sampleRate / stepsInSecond));
    this.#channels =
      sampleRate < leastWeightedRate
        ? []
        : Array.from({ length: channels }, (_, channel) => ({
            weight: channelWeight(channel, channels),
            energy: new WeightedEnergy(sampleRate),
            channel,
          })).filter(({ weight }) => weight > 0);
  }

  /** Takes the next frames of all channels. */
  add(block: readonly Float32Array[]): void {
    const length = block[0]?.length ?? 0;
    for (let at = 0; at < length; ) {
      const to = Math.min(length, at + this.#stepFrames - this.#inStep);
      for (const { weight, energy, channel } of this.#channels) {
        const values = block[channel];
        if (values) this.#energy += weight * energy.add(values, at, to);
      }
      this.#inStep += to - at;
      at = to;
      if (this.#inStep < this.#stepFrames) continue;
      this.#steps.push(this.#energy);
      this.#energy = 0;
      this.#inStep = 0;
    }
  }

  /** The loudness of all that was taken. */
  result(): Loudness {
    const steps = this.#steps;
    if (steps.length < stepsInBlock) {
      const frames = steps.length * this.#stepFrames + this.#inStep;
      const energy = steps.reduce((sum, step) => sum + step, this.#energy);
      return { integrated: null, momentary: energy > 0 ? level(energy / frames) : null };
    }
    const blocks: number[] = [];
    let greatest = 0;
    for (let end = stepsInBlock; end <= steps.length; end++) {
      let energy = 0;
      for (let step = end - stepsInBlock; step < end; step++) energy += steps[step];
      const mean = energy / (stepsInBlock * this.#stepFrames);
      greatest = Math.max(greatest, mean);
      if (mean > 0 && level(mean) > absoluteGate) blocks.push(mean);
    }
    const gate = level(meanOf(blocks)) + relativeGate;
    const loud = blocks.filter((mean) => level(mean) > gate);
    return {
      integrated: loud.length > 0 ? level(meanOf(loud)) : null,
      momentary: greatest > 0 ? level(greatest) : null,
    };
  }
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** LUFS of a weighted mean square (ITU-R BS.1770-5, Annex 1, equation 2). */
function level(meanSquare: number): number {
  return -0.691 + 10 * Math.log10(meanSquare);
}

/** Surround channels count 1.5 dB more, the low-frequency channel not at all (ITU-R BS.1770-5, Annex 1, table 3). */
const surround = 1.41;
/**
 * Weights by the number of channels, in the order of channels of WAV files without a mask (common practice): left and
 * right; centre from 3 on, but for 4, which are front and back; low frequency from 6 on. Of the surround channels, those
 * at the sides count more, those at the back, as there are beside them in 7.1, do not (ITU-R BS.1770-5, Annex 3).
 */
const weights: ReadonlyMap<number, readonly number[]> = new Map([
  [4, [1, 1, surround, surround]],
  [5, [1, 1, 1, surround, surround]],
  [6, [1, 1, 1, 0, surround, surround]],
  [7, [1, 1, 1, 0, 1, surround, surround]],
  [8, [1, 1, 1, 0, 1, 1, surround, surround]],
]);

function channelWeight(channel: number, channels: number): number {
  return weights.get(channels)?.[channel] ?? 1;
}
