import { choice } from '../choices';
import { Limiter } from './limiter';

const mostGainDb = 0;
const rampSeconds = 0.02;
/** What comes in is cut off here, so that a text that asks for 600 dB does not hold the limiter down for seconds. */
const mostInput = 10 ** (24 / 20);
const lowestHertz = 5;
/** Below this a value counts as silence. */
const nothing = 1e-20;

/**
 * The way from an engine to the ear, which nothing switches off: starts at −12 dB, fades in over 20 ms, follows changes of
 * its gain over 20 ms, takes what is no tone away (below 5 Hz), limits to −1 dB true peak, cuts off at full scale, and falls
 * silent where numbers are none.
 */
export class OutputStage {
  readonly #limiter: Limiter;
  readonly #rampFrames: number;
  readonly #highPass: number;
  #gain = 0;
  #target: number;
  #slope = 0;
  #rampLeft = 0;
  #wanted: number;
  #isMuted = false;
  readonly #held = new Float64Array(4);

  constructor(sampleRate: number) {
    this.#limiter = new Limiter(sampleRate);
    this.#rampFrames = Math.max(1, Math.round(rampSeconds * sampleRate));
    this.#highPass = Math.exp((-2 * Math.PI * lowestHertz) / sampleRate);
    this.#wanted = 10 ** (choice.firstGainDb.value / 20);
    this.#target = 0;
    this.fadeIn();
  }

  /** Frames that the sound comes out later. */
  get delayFrames(): number {
    return this.#limiter.delayFrames;
  }

  /** Whether something that is no number came in; {@link fadeIn} begins again. */
  get isMuted(): boolean {
    return this.#isMuted;
  }

  /** How far the limiter has turned the sound down, in dB, 0 or less. */
  get reductionDb(): number {
    return 20 * Math.log10(this.#limiter.gain);
  }

  /** Sets the level in dB, 0 at the most, reached over 20 ms; values that are no numbers change nothing. */
  setGainDb(db: number): void {
    if (Number.isNaN(db)) return;
    this.#wanted = 10 ** (Math.min(mostGainDb, db) / 20);
    this.#rampTo(this.#wanted);
  }

  /** Rises from silence over 20 ms. */
  fadeIn(): void {
    this.#isMuted = false;
    this.#gain = 0;
    this.#held.fill(0);
    this.#rampTo(this.#wanted);
  }

  /** Falls to silence over 20 ms; {@link fadeIn} begins again. */
  fadeOut(): void {
    this.#rampTo(0);
  }

  #rampTo(target: number): void {
    this.#target = target;
    this.#rampLeft = this.#rampFrames;
    this.#slope = (target - this.#gain) / this.#rampFrames;
  }

  /** Treats two channels in place. */
  process(left: Float32Array | Float64Array, right: Float32Array | Float64Array): void {
    for (let frame = 0; frame < left.length; frame++) {
      const sum = left[frame] + right[frame];
      if (!(Math.abs(sum) < Number.POSITIVE_INFINITY)) this.#isMuted = true;
      const gain = this.#isMuted ? 0 : this.#nextGain();
      left[frame] = gain === 0 ? 0 : this.#toned(clamped(left[frame], mostInput) * gain, 0);
      right[frame] = gain === 0 ? 0 : this.#toned(clamped(right[frame], mostInput) * gain, 2);
    }
    this.#limiter.process(left, right);
    for (let frame = 0; frame < left.length; frame++) {
      left[frame] = clamped(left[frame], 1);
      right[frame] = clamped(right[frame], 1);
    }
  }

  #nextGain(): number {
    if (this.#rampLeft > 0) {
      this.#gain = --this.#rampLeft === 0 ? this.#target : this.#gain + this.#slope;
    }
    return this.#gain;
  }

  /** A high pass of first order. */
  #toned(value: number, at: number): number {
    const held = this.#held;
    const output = value - held[at] + this.#highPass * held[at + 1];
    held[at] = value;
    held[at + 1] = Math.abs(output) < nothing ? 0 : output;
    return held[at + 1];
  }
}

function clamped(value: number, most: number): number {
  return Math.max(-most, Math.min(most, value));
}
