import type { SampleSurvey } from '../../model/samples';

/** Frames at the limit that make a stretch: one or two can be a peak that just fits (common practice). */
const shortestRun = 3;
/**
 * How many steps of its depth a sound has to come up to the limit in, at one end of a stretch at least. A low note that
 * is raised to just reach full scale stays at its peak for a few frames too, and bends into it (our choice).
 */
const steepSteps = 4;
/** Depths above this are held against the limit of this one, as files are often made from others of less depth (our choice). */
const deepest = 16;

/** Finds stretches of one channel that stay at the limit of full scale. */
export class ClippingScan {
  readonly #limit: number;
  readonly #steep: number;
  #frame = 0;
  /** The last value, and the one before the present stretch: at the start of the sound, one at the same limit. */
  #last: number | undefined;
  #before = 0;
  #length = 0;
  #sign = 0;
  runs = 0;
  frames = 0;
  firstFrame = -1;

  /** `bitsPerSample` is 0 where the encoding has no fixed depth. */
  constructor(bitsPerSample: number) {
    const depth = bitsPerSample > 0 ? Math.min(bitsPerSample, deepest) : deepest;
    const step = 2 ** (1 - depth);
    this.#limit = 1 - step;
    this.#steep = steepSteps * step;
  }

  /** Takes the next frames. `peak` is the greatest magnitude in them. */
  add(values: Float32Array, peak: number): void {
    if (values.length === 0) return;
    if (peak < this.#limit) {
      // Nothing here is at the limit, so only a stretch that reached up to here can end.
      this.#end(values[0]);
      this.#frame += values.length;
      this.#last = values[values.length - 1];
      return;
    }
    for (let at = 0; at < values.length; at++, this.#frame++) {
      const value = values[at];
      const sign = value >= this.#limit ? 1 : value <= -this.#limit ? -1 : 0;
      if (sign !== this.#sign) {
        this.#end(value);
        this.#before = this.#last ?? value;
        this.#sign = sign;
      }
      if (sign !== 0) this.#length++;
      this.#last = value;
    }
  }

  /** Ends a stretch that reaches up to the end of the sound. */
  finish(): void {
    this.#end(this.#sign * this.#limit);
  }

  #end(next: number): void {
    const reach = this.#limit - Math.min(this.#before * this.#sign, next * this.#sign);
    if (this.#length >= shortestRun && reach > this.#steep) {
      this.runs++;
      this.frames += this.#length;
      if (this.firstFrame < 0) this.firstFrame = this.#frame - this.#length;
    }
    this.#length = 0;
    this.#sign = 0;
  }
}

/** What was found in all channels of a sound; `null` for nothing. */
export function clippingOf(scans: readonly ClippingScan[]): SampleSurvey['clipping'] {
  const found = scans.filter(({ runs }) => runs > 0);
  if (found.length === 0) return null;
  return {
    runs: found.reduce((sum, { runs }) => sum + runs, 0),
    frames: found.reduce((sum, { frames }) => sum + frames, 0),
    firstFrame: found.reduce((first, { firstFrame }) => Math.min(first, firstFrame), Number.MAX_SAFE_INTEGER),
  };
}
