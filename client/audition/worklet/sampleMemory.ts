import { pageFrames } from '../../../server/sound/voice/voiceSamples';

/** Frames that are asked for at once when a sample is wanted; longer ones follow in pages. */
export const firstFrames = 4 * pageFrames;

/** Audio of a sample that is held on the audio thread. */
export interface HeldSample {
  rate: number;
  totalFrames: number;
  /** Channels by the first frame of their stretch. */
  stretches: Map<number, Float32Array[]>;
}

const bytesPerValue = 4;

/** Sample audio by path, so that an instrument that takes the place of another needs nothing sent again. */
export class SampleMemory {
  readonly #samples = new Map<string, HeldSample>();
  readonly #mostBytes: number;
  #bytes = 0;

  constructor(mostBytes: number) {
    this.#mostBytes = mostBytes;
  }

  get(path: string): HeldSample | undefined {
    const sample = this.#samples.get(path);
    if (sample) {
      // What was asked for last stands at the end.
      this.#samples.delete(path);
      this.#samples.set(path, sample);
    }
    return sample;
  }

  add(
    path: string,
    stretch: { rate: number; totalFrames: number; startFrame: number; channels: Float32Array[] },
  ): HeldSample {
    const { rate, totalFrames, startFrame, channels } = stretch;
    let sample = this.get(path);
    if (!sample || sample.totalFrames !== totalFrames) {
      if (sample) this.#bytes -= bytesOf(sample);
      sample = { rate, totalFrames, stretches: new Map() };
      this.#samples.set(path, sample);
    }
    if (!sample.stretches.has(startFrame)) {
      sample.stretches.set(startFrame, channels);
      for (const { length } of channels) this.#bytes += length * bytesPerValue;
    }
    return sample;
  }

  /** Forgets a sample. */
  forget(path: string): void {
    const sample = this.#samples.get(path);
    if (sample) this.#bytes -= bytesOf(sample);
    this.#samples.delete(path);
  }

  /** Whether there is too much. */
  get isFull(): boolean {
    return this.#bytes > this.#mostBytes;
  }

  /** Forgets samples that were not asked for longest while there is too much, of those that `mayForget` allows. */
  shrink(mayForget: (path: string) => boolean): void {
    for (const [path, sample] of this.#samples) {
      if (!this.isFull) return;
      if (!mayForget(path)) continue;
      this.#samples.delete(path);
      this.#bytes -= bytesOf(sample);
    }
  }

  /** Forgets stretches behind the first of each sample while there is too much, but those that `isNeeded` keeps; tells of each. */
  shrinkStretches(
    isNeeded: (path: string, startFrame: number) => boolean,
    forgotten: (path: string, startFrame: number) => void,
  ): void {
    for (const [path, { stretches }] of this.#samples) {
      for (const [startFrame, channels] of stretches) {
        if (!this.isFull) return;
        if (startFrame === 0 || isNeeded(path, startFrame)) continue;
        stretches.delete(startFrame);
        for (const { length } of channels) this.#bytes -= length * bytesPerValue;
        forgotten(path, startFrame);
      }
    }
  }
}

function bytesOf({ stretches }: HeldSample): number {
  let bytes = 0;
  for (const channels of stretches.values())
    for (const { length } of channels) bytes += length * bytesPerValue;
  return bytes;
}
