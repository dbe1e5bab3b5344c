import { choice } from '../choices';
import { TruePeak, truePeakDelay } from './truePeak';

/** Kept free for what lies between four values a frame and for the movement of the gain itself; our choice. */
const marginDb = 0.6;
const ceiling = 10 ** ((choice.ceilingDb.value - marginDb) / 20);
const lookAheadSeconds = 0.002;
const releaseSeconds = 0.1;

/**
 * A limiter that looks ahead: its gain is down before a peak comes out and rises over 100 ms. The least gain of the stretch ahead,
 * averaged over as long a stretch, is never above what each peak in it needs.
 */
export class Limiter {
  /** Frames that the sound comes out later. */
  readonly delayFrames: number;
  /** The gain of the last frame. */
  gain = 1;
  readonly #window: number;
  readonly #release: number;
  readonly #peaks = new TruePeak();
  readonly #left: Float64Array;
  readonly #right: Float64Array;
  #at = 0;
  /** Positions and values of a queue of needed gains that rises from its head. */
  readonly #queueFrame: Float64Array;
  readonly #queueGain: Float64Array;
  #head = 0;
  #length = 0;
  #frame = 0;
  #held = 1;
  readonly #recent: Float64Array;
  #recentSum: number;
  #recentAt = 0;

  constructor(sampleRate: number) {
    this.#window = Math.max(1, Math.round(lookAheadSeconds * sampleRate));
    this.delayFrames = this.#window + truePeakDelay;
    this.#release = 1 - Math.exp(-1 / (releaseSeconds * sampleRate));
    this.#left = new Float64Array(this.delayFrames);
    this.#right = new Float64Array(this.delayFrames);
    this.#queueFrame = new Float64Array(this.#window + 2);
    this.#queueGain = new Float64Array(this.#window + 2);
    this.#recent = new Float64Array(this.#window).fill(1);
    this.#recentSum = this.#window;
  }

  /** Limits two channels in place. */
  process(left: Float32Array | Float64Array, right: Float32Array | Float64Array): void {
    for (let frame = 0; frame < left.length; frame++) {
      const gain = this.#nextGain(this.#peaks.next(left[frame], right[frame]));
      const at = this.#at;
      const delayedLeft = this.#left[at];
      const delayedRight = this.#right[at];
      this.#left[at] = left[frame];
      this.#right[at] = right[frame];
      this.#at = at + 1 === this.delayFrames ? 0 : at + 1;
      left[frame] = delayedLeft * gain;
      right[frame] = delayedRight * gain;
    }
  }

  #nextGain(peak: number): number {
    const needed = peak > ceiling ? ceiling / peak : 1;
    const least = this.#leastAhead(needed);
    this.#held = Math.min(least, this.#held + (1 - this.#held) * this.#release);
    this.#recentSum += this.#held - this.#recent[this.#recentAt];
    this.#recent[this.#recentAt] = this.#held;
    if (++this.#recentAt === this.#window) {
      this.#recentAt = 0;
      // Summed anew, so that rounding does not add up over hours.
      this.#recentSum = 0;
      for (let at = 0; at < this.#window; at++) this.#recentSum += this.#recent[at];
    }
    this.gain = Math.min(1, this.#recentSum / this.#window);
    return this.gain;
  }

  /** The least of the needed gains of the last frames: a queue in which no value stands before a smaller one. */
  #leastAhead(needed: number): number {
    const size = this.#queueGain.length;
    while (this.#length > 0 && this.#queueGain[(this.#head + this.#length - 1) % size] >= needed)
      this.#length--;
    const end = (this.#head + this.#length) % size;
    this.#queueGain[end] = needed;
    this.#queueFrame[end] = this.#frame;
    this.#length++;
    if (this.#queueFrame[this.#head] < this.#frame - this.#window) {
      this.#head = (this.#head + 1) % size;
      this.#length--;
    }
    this.#frame++;
    return this.#queueGain[this.#head];
  }
}
