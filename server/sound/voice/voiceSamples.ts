/** Audio of a sample, in pages that can be lacking. */
export interface StoredSample {
  /** Frames a second. */
  rate: number;
  frames: number;
  pageFrames: number;
  /** Left and right of each page, the same array twice for mono; `undefined` where it is not there. */
  left: (Float32Array | undefined)[];
  right: (Float32Array | undefined)[];
  isMono: boolean;
}

/** A stretch of a sample that is longer than what is handed over at once. */
export interface SampleStretch {
  /** First frame of the stretch: a multiple of {@link pageFrames}. */
  startFrame: number;
  /** Frames of the whole sample. */
  totalFrames: number;
}

/** Frames of a page of a sample that is handed over in stretches; a stretch that is not the last one holds whole pages. */
export const pageFrames = 1 << 16;

/** Is told of a page of a sample that is read, more than once at times, and whether it is there. */
export type TellPage = (sample: number, page: number, isThere: boolean) => void;

/** The samples that voices can read, by their numbers in the program. */
export class VoiceSamples {
  readonly #samples = new Map<number, StoredSample>();

  /**
   * Adds a sample, or a stretch of one. Channels beyond the second are left out. A sample without channels or frames
   * counts as there and silent.
   */
  add(id: number, channels: readonly Float32Array[], rate: number, stretch?: SampleStretch): void {
    const [left = new Float32Array(0), right = left] = channels;
    const frames = stretch?.totalFrames ?? left.length;
    let sample = this.#samples.get(id);
    if (!sample || !stretch || sample.frames !== frames) {
      sample = {
        rate,
        frames,
        pageFrames: stretch ? pageFrames : Math.max(1, frames),
        left: [],
        right: [],
        isMono: channels.length < 2,
      };
      this.#samples.set(id, sample);
    }
    const length = sample.pageFrames;
    const first = Math.floor((stretch?.startFrame ?? 0) / length);
    for (let start = 0; start < left.length; start += length) {
      const page = first + start / length;
      sample.left[page] = left.subarray(start, start + length);
      sample.right[page] = right === left ? sample.left[page] : right.subarray(start, start + length);
    }
  }

  get(id: number): StoredSample | undefined {
    return this.#samples.get(id);
  }

  /** Forgets a sample; voices that read it go on with silence. */
  remove(id: number): void {
    const sample = this.#samples.get(id);
    if (!sample) return;
    sample.left.length = 0;
    sample.right.length = 0;
    this.#samples.delete(id);
  }

  /** Forgets one page of a sample that is handed over in stretches. */
  removePage(id: number, page: number): void {
    const sample = this.#samples.get(id);
    if (!sample) return;
    sample.left[page] = undefined;
    sample.right[page] = undefined;
  }
}
