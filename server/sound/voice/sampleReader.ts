import type { Channels, Interpolator } from '../interpolation/interpolator';
import type { Walk } from '../interpolation/readRows';
import type { SamplePath } from './samplePath';
import type { StoredSample } from './voiceSamples';

/** Frames of input that are gathered at once where they do not lie one behind the other. */
const scratchFrames = 16384;

/** Greatest step for which the scratch holds a piece of output and all taps. */
const leastPiece = 1;

/** Reads a sample along a path at a moving pitch. One reader serves all voices, one after the other. */
export class SampleReader {
  /** Frames that were asked for and are not there, since this was last set to 0. */
  missing = 0;
  readonly #interpolator: Interpolator;
  readonly #left = new Float32Array(scratchFrames);
  readonly #right = new Float32Array(scratchFrames);
  readonly #scratch: Channels;
  readonly #scratchMono: Channels;
  readonly #direct: Channels;
  readonly #walk: Walk = { position: 0, step: 1, slope: 0 };

  constructor(interpolator: Interpolator) {
    this.#interpolator = interpolator;
    this.#scratch = { left: this.#left, right: this.#right };
    this.#scratchMono = { left: this.#left, right: this.#left };
    this.#direct = { left: this.#left, right: this.#right };
  }

  /** The most frames before and behind a position that are read. */
  reach(step: number): number {
    return this.#interpolator.reach(step);
  }

  /**
   * Reads `count` values from `walk.position` on, frames as played, and leaves the position and step behind the last one
   * there. A mono sample fills the left output only.
   */
  read(
    sample: StoredSample,
    path: SamplePath,
    walk: Walk,
    left: Float64Array,
    right: Float64Array,
    count: number,
  ): void {
    if (walk.step === 1 && walk.slope === 0 && Number.isInteger(walk.position)) {
      this.#copy(sample, path, walk.position, left, right, count);
      walk.position += count;
      return;
    }
    for (let done = 0; done < count; ) {
      const most = Math.max(walk.step, walk.step + walk.slope * (count - done));
      const reach = this.#interpolator.reach(most);
      const room = Math.floor((scratchFrames - 2 * reach - 4) / most);
      const piece = Math.max(leastPiece, Math.min(count - done, room));
      this.#readPiece(sample, path, walk, most, reach, left, right, done, piece);
      done += piece;
    }
  }

  #readPiece(
    sample: StoredSample,
    path: SamplePath,
    walk: Walk,
    most: number,
    reach: number,
    left: Float64Array,
    right: Float64Array,
    from: number,
    count: number,
  ): void {
    const first = Math.floor(walk.position) - reach;
    const last = Math.floor(walk.position + most * count) + reach + 1;
    const input = this.#input(sample, path, first, last);
    const own = this.#walk;
    own.position = walk.position - this.#origin;
    own.step = walk.step;
    own.slope = walk.slope;
    const leftOut = from === 0 ? left : left.subarray(from);
    const rightOut = from === 0 ? right : right.subarray(from);
    this.#interpolator.read(input, own, most, leftOut, rightOut, count);
    walk.position = own.position + this.#origin;
    walk.step = own.step;
  }

  /** The frame as played that is the first of the input; see {@link #input}. */
  #origin = 0;

  /** Frames as played from `first` to `last`: where they lie in the sample, or gathered. */
  #input(sample: StoredSample, path: SamplePath, first: number, last: number): Channels {
    const shift = path.straight(first, last);
    if (!Number.isNaN(shift)) {
      const page = Math.floor((first + shift) / sample.pageFrames);
      const left = sample.left[page];
      const start = page * sample.pageFrames;
      if (left && last + shift < start + left.length) {
        this.#direct.left = left;
        this.#direct.right = sample.right[page] as Float32Array;
        this.#origin = start - shift;
        return this.#direct;
      }
    }
    this.#gather(sample, path, first, last);
    this.#origin = first;
    return sample.isMono ? this.#scratchMono : this.#scratch;
  }

  /** Puts frames as played one behind the other, stretch by stretch where they lie so in the sample. */
  #gather(sample: StoredSample, path: SamplePath, first: number, last: number): void {
    for (let played = first; played <= last; ) {
      const copied = this.#copyStraight(sample, path, played, last, first);
      if (copied > 0) {
        played += copied;
        continue;
      }
      path.locate(played);
      this.#left[played - first] = this.#mixed(sample, sample.left, path);
      if (!sample.isMono) this.#right[played - first] = this.#mixed(sample, sample.right, path);
      played++;
    }
  }

  /** Copies frames from `played` on that lie in one page, as many as there are up to `last`; answers how many. */
  #copyStraight(
    sample: StoredSample,
    path: SamplePath,
    played: number,
    last: number,
    origin: number,
  ): number {
    const until = Math.min(last, path.straightUntil(played));
    if (until < played) return 0;
    path.locate(played);
    const { frame } = path;
    if (frame < 0 || frame >= sample.frames) return 0;
    const page = Math.floor(frame / sample.pageFrames);
    const from = frame - page * sample.pageFrames;
    const left = sample.left[page];
    const right = sample.right[page];
    if (!left || !right) return 0;
    const count = Math.min(until - played + 1, left.length - from);
    const to = played - origin;
    for (let at = 0; at < count; at++) this.#left[to + at] = left[from + at];
    if (!sample.isMono) for (let at = 0; at < count; at++) this.#right[to + at] = right[from + at];
    return Math.max(0, count);
  }

  #mixed(
    sample: StoredSample,
    pages: (Float32Array | undefined)[],
    { frame, partner, share }: SamplePath,
  ): number {
    const value = this.#valueAt(sample, pages, frame);
    return partner < 0 ? value : value + (this.#valueAt(sample, pages, partner) - value) * share;
  }

  #valueAt(sample: StoredSample, pages: (Float32Array | undefined)[], frame: number): number {
    if (frame < 0 || frame >= sample.frames) return 0;
    const page = Math.floor(frame / sample.pageFrames);
    const values = pages[page];
    if (values) return values[frame - page * sample.pageFrames] ?? 0;
    this.missing++;
    return 0;
  }

  /** Whole positions at the recorded speed: the frames themselves, bit for bit. */
  #copy(
    sample: StoredSample,
    path: SamplePath,
    first: number,
    left: Float64Array,
    right: Float64Array,
    count: number,
  ): void {
    const last = first + count - 1;
    const input = this.#input(sample, path, first, last);
    const from = first - this.#origin;
    for (let frame = 0; frame < count; frame++) left[frame] = input.left[from + frame];
    if (sample.isMono) return;
    for (let frame = 0; frame < count; frame++) right[frame] = input.right[from + frame];
  }
}
