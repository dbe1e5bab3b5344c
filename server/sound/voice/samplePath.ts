import { LoopMode } from '../../playing/playable/playableInstrument';
import { LoopType } from '../program/recipe';

/** What of a sample is played, and how. Frames count from 0; ends belong to the stretch. */
export interface PathSettings {
  /** The stretch from `offset` to `end`. */
  offset: number;
  end: number;
  loopMode: number;
  loopType: number;
  loopStart: number;
  loopEnd: number;
  /** How often a loop is repeated, −1 for ever. */
  loopCount: number;
  crossfadeFrames: number;
  /** How often the whole stretch sounds; 0 where not set. */
  sampleCount: number;
  isReverse: boolean;
}

/** Passes and frames that never end. */
const forEver = Number.POSITIVE_INFINITY;

/**
 * The order in which a voice reads the frames of a sample. Frames are counted as they are played, from 0 on; those before
 * 0 are what stands before the offset. Loops are unrolled, so that an interpolator reads over their ends as over any place.
 */
export class SamplePath {
  /** Frames that are played in all. */
  length = 0;
  /** What {@link locate} found: a frame of the sample, or −1 for silence. */
  frame = -1;
  /** The frame that is mixed in, or −1, and its share. */
  partner = -1;
  share = 0;
  #offset = 0;
  #end = 0;
  /** First and last frame of the loop, and the frame as played with which it ends for the first time. */
  #start = 0;
  #last = 0;
  #firstEnd = forEver;
  /** Frames of a pass. */
  #period = 1;
  #passes = 1;
  #type: number = LoopType.forward;
  #crossfade = 0;
  #isReverse = false;
  #endsAfterRelease = false;

  begin(settings: PathSettings): void {
    const { offset, end, isReverse, loopMode } = settings;
    const isCounted = settings.sampleCount > 0;
    const mirrored = offset + end;
    const start = isCounted ? offset : isReverse ? mirrored - settings.loopEnd : settings.loopStart;
    const last = isCounted ? end : isReverse ? mirrored - settings.loopStart : settings.loopEnd;
    this.#offset = offset;
    this.#end = end;
    this.#isReverse = isReverse;
    this.#start = start;
    this.#last = last;
    // A single frame has no other direction.
    this.#type = isCounted || start === last ? LoopType.forward : settings.loopType;
    this.#period = this.#type === LoopType.alternate ? last - start : last - start + 1;
    const loops = loopMode === LoopMode.loopContinuous || loopMode === LoopMode.loopSustain;
    const isLoop = (isCounted || loops) && start >= 0 && last >= offset && last <= end && this.#period >= 1;
    this.#firstEnd = isLoop ? last - offset : forEver;
    this.#endsAfterRelease = isLoop && !isCounted && loopMode === LoopMode.loopSustain;
    const canFade = isLoop && !isCounted && this.#type === LoopType.forward;
    this.#crossfade = canFade ? Math.floor(Math.min(settings.crossfadeFrames, this.#period, start)) : 0;
    const repeats = isCounted ? settings.sampleCount - 1 : settings.loopCount;
    this.#setPasses(!isLoop ? 1 : repeats < 0 ? forEver : Math.floor(repeats) + 1);
  }

  /** The frame as played from which on the loop sounds; `Infinity` without a loop. */
  get loopFrom(): number {
    return this.#firstEnd === forEver ? forEver : this.#start - this.#offset;
  }

  #setPasses(passes: number): void {
    // A loop that alternates ends at its last frame, from where the sample goes on.
    this.#passes = this.#type === LoopType.alternate && passes % 2 === 0 ? passes + 1 : passes;
    const own = this.#end - this.#offset + 1;
    const more = this.#passes === 1 ? 0 : (this.#passes - 1) * this.#period;
    const turn = this.#type === LoopType.backward && this.#passes > 1 ? 1 : 0;
    this.length = Math.max(0, own + more - turn);
  }

  /** The note was let go: `loop_sustain` plays its pass to the end and goes on. `reach` frames ahead are read already. */
  release(position: number, reach: number): void {
    if (!this.#endsAfterRelease || this.#passes !== forEver) return;
    const ahead = Math.floor(position) + reach + this.#crossfade - this.#firstEnd;
    const turn = this.#type === LoopType.backward ? 1 : 0;
    this.#setPasses(ahead <= 0 ? 1 : Math.ceil((ahead + turn) / this.#period) + 1);
  }

  /**
   * The number that, added to frames as played from `first` to `last`, gives frames of the sample, where these lie one
   * behind the other and inside of what is played; NaN where they do not.
   */
  straight(first: number, last: number): number {
    const offset = this.#offset;
    if (this.#isReverse || first + offset < 0 || last >= this.length) return Number.NaN;
    if (this.#passes === 1 || last <= this.#firstEnd - this.#crossfade) return offset;
    if (this.#type !== LoopType.forward || first <= this.#firstEnd) return Number.NaN;
    const wraps = Math.min(Math.ceil((first - this.#firstEnd) / this.#period), this.#passes - 1);
    const shift = offset - wraps * this.#period;
    const isLast = wraps === this.#passes - 1;
    return isLast || last + shift <= this.#last - this.#crossfade ? shift : Number.NaN;
  }

  /**
   * The last frame as played up to which frames of the sample lie one behind the other from one on, with nothing mixed in; a
   * lower one where that is not so from there on.
   */
  straightUntil(first: number): number {
    if (this.#isReverse || first + this.#offset < 0) return first - 1;
    if (this.#passes === 1) return this.length - 1;
    const ahead = this.#firstEnd - this.#crossfade;
    if (first <= ahead) return ahead;
    if (this.#type !== LoopType.forward || first <= this.#firstEnd) return first - 1;
    const wraps = Math.ceil((first - this.#firstEnd) / this.#period);
    return wraps >= this.#passes - 1 ? this.length - 1 : ahead + wraps * this.#period;
  }

  /** Finds the frame of the sample that a frame as played is, and what is mixed into it. */
  locate(played: number): void {
    this.partner = -1;
    if (played >= this.length) {
      this.frame = -1;
      return;
    }
    const after = played - this.#firstEnd;
    let frame = this.#offset + played;
    if (after > 0 && this.#passes > 1) frame = this.#looped(frame, after);
    else if (this.#passes > 1) this.#mix(frame);
    this.frame = this.#isReverse ? this.#offset + this.#end - frame : frame;
    if (this.partner >= 0 && this.#isReverse) this.partner = this.#offset + this.#end - this.partner;
  }

  /** `after` frames behind the first end of the loop. */
  #looped(straightOn: number, after: number): number {
    const period = this.#period;
    const more = this.#passes - 1;
    if (this.#type === LoopType.forward) {
      const wraps = Math.min(Math.ceil(after / period), more);
      const frame = straightOn - wraps * period;
      if (wraps < more) this.#mix(frame);
      return frame;
    }
    if (this.#type === LoopType.alternate) {
      if (after >= more * period) return this.#last + (after - more * period);
      const at = after % (2 * period);
      return at <= period ? this.#last - at : this.#start + (at - period);
    }
    if (after >= more * period) return this.#last + 1 + (after - more * period);
    return this.#last - (after % period);
  }

  #mix(frame: number): void {
    const into = frame - (this.#last - this.#crossfade);
    if (this.#crossfade === 0 || into <= 0) return;
    this.partner = frame - this.#period;
    this.share = (1 - Math.cos((Math.PI * into) / this.#crossfade)) / 2;
  }
}
