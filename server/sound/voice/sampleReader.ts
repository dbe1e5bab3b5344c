import type { Interpolator } from '../interpolation/interpolator';
import type { Walk } from '../interpolation/readRows';
import { type InputWindow, type InputWindows, inputFrames, windowFrames } from '../kernel/inputWindows';
import type { Channels, Sound } from '../kernel/kernel';
import type { SamplePath } from './samplePath';
import type { StoredSample } from './voiceSamples';

/** Greatest step for which the input holds a piece of output and all taps. */
const leastPiece = 1;

/** Reads a sample along a path at a moving pitch. One reader serves all voices, one after the other. */
export class SampleReader {
  /** Frames that were asked for and are not there, since this was last set to 0. */
  missing = 0;
  readonly #interpolator: Interpolator;
  /** What is gathered, as stereo and as mono. */
  readonly #gathered: Channels;
  readonly #gatheredMono: Channels;
  /** A sample's own arrays. */
  readonly #direct: Channels;

  constructor(interpolator: Interpolator) {
    this.#interpolator = interpolator;
    const { left, right } = interpolator.kernel.input;
    this.#gathered = { left, right };
    this.#gatheredMono = { left, right: left };
    this.#direct = { left, right };
  }

  /** The most frames before and behind a position that are read. */
  reach(step: number): number {
    return this.#interpolator.reach(step);
  }

  /**
   * Reads `count` values from `walk.position` on, frames as played, and leaves the position and step behind the last one
   * there. A mono sample fills the left output only. `window` is that of the voice, in which it finds frames of its sample
   * and path alone.
   */
  read(
    sample: StoredSample,
    path: SamplePath,
    walk: Walk,
    window: InputWindow,
    output: Sound,
    count: number,
  ): void {
    if (walk.step === 1 && walk.slope === 0 && Number.isInteger(walk.position)) {
      this.#copy(sample, path, walk.position, output, count);
      walk.position += count;
      return;
    }
    for (let done = 0; done < count; ) {
      const most = Math.max(walk.step, walk.step + walk.slope * (count - done));
      const reach = this.#interpolator.reach(most);
      const room = Math.floor((inputFrames - 2 * reach - 4) / most);
      const piece = Math.max(leastPiece, Math.min(count - done, room));
      this.#readPiece(sample, path, walk, window, most, reach, output, done, piece);
      done += piece;
    }
  }

  #readPiece(
    sample: StoredSample,
    path: SamplePath,
    walk: Walk,
    window: InputWindow,
    most: number,
    reach: number,
    output: Sound,
    from: number,
    count: number,
  ): void {
    const first = Math.floor(walk.position) - reach;
    const last = Math.floor(walk.position + most * count) + reach + 1;
    const { windows } = this.#interpolator.kernel;
    const input = windows
      ? this.#gatherAhead(sample, path, window, windows, first, last)
      : this.#input(sample, path, first, last);
    const { left, right } = output;
    const rest = from === 0 ? output : { left: left.subarray(from), right: right.subarray(from) };
    this.#interpolator.read(input, this.#origin, walk, most, rest, count);
  }

  /** The frame as played that is the first of what was found or gathered. */
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
    return this.#gather(sample, path, first, last, 0);
  }

  /** The same in the window of a voice, with more behind them for the next time, where all of that is there. */
  #gatherAhead(
    sample: StoredSample,
    path: SamplePath,
    window: InputWindow,
    windows: InputWindows,
    first: number,
    last: number,
  ): Channels {
    if (first < window.first || last >= window.end) {
      const { missing } = this;
      window.clear();
      if (last - first >= windowFrames) return this.#gather(sample, path, first, last, 0);
      windows.claim(window);
      this.#gather(sample, path, first, first + windowFrames - 1, window.place);
      if (this.missing > missing) {
        this.missing = missing;
        return this.#gather(sample, path, first, last, 0);
      }
      window.first = first;
      window.end = first + windowFrames;
    }
    this.#origin = window.first - window.place;
    return sample.isMono ? this.#gatheredMono : this.#gathered;
  }

  /** Puts frames as played one behind the other from a place on, stretch by stretch where they lie so in the sample. */
  #gather(sample: StoredSample, path: SamplePath, first: number, last: number, place: number): Channels {
    const { left, right } = this.#gathered;
    this.#origin = first - place;
    for (let played = first; played <= last; ) {
      const to = played - this.#origin;
      const copied = this.#copyStraight(sample, path, played, last, to);
      if (copied > 0) {
        played += copied;
        continue;
      }
      path.locate(played);
      left[to] = this.#mixed(sample, sample.left, path);
      if (!sample.isMono) right[to] = this.#mixed(sample, sample.right, path);
      played++;
    }
    return sample.isMono ? this.#gatheredMono : this.#gathered;
  }

  /** Copies frames from `played` on that lie in one page, as many as there are up to `last`; answers how many. */
  #copyStraight(sample: StoredSample, path: SamplePath, played: number, last: number, to: number): number {
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
    const gathered = this.#gathered;
    copy(left, from, gathered.left, to, count);
    if (!sample.isMono) copy(right, from, gathered.right, to, count);
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
  #copy(sample: StoredSample, path: SamplePath, first: number, { left, right }: Sound, count: number): void {
    const last = first + count - 1;
    const input = this.#input(sample, path, first, last);
    const from = first - this.#origin;
    for (let frame = 0; frame < count; frame++) left[frame] = input.left[from + frame];
    if (sample.isMono) return;
    for (let frame = 0; frame < count; frame++) right[frame] = input.right[from + frame];
  }
}

/** From so many values on a view that copies them all at once is quicker than a loop, though it has to be made. */
const manyValues = 48;

function copy(values: Float32Array, from: number, into: Float32Array, to: number, count: number): void {
  if (count >= manyValues) into.set(values.subarray(from, from + count), to);
  else for (let at = 0; at < count; at++) into[to + at] = values[from + at];
}
