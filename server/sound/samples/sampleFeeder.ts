import { pageFrames } from '../voice/voiceSamples';
import type { VoiceEngine } from '../voiceEngine';
import type { SampleSource } from './sampleSource';

/** How an engine is fed. */
export interface FeederOptions {
  /** Bytes of decoded audio that are held; what sounds at one time is held whatever it takes. */
  mostBytes: number;
}

/** Samples of up to so many frames are handed over whole. */
const mostWholeFrames = 4 * pageFrames;
const bytesPerValue = 4;

/** A sample, or a page of one, that the engine holds. */
interface Held {
  id: number;
  page: number;
  bytes: number;
}

/**
 * Gives an engine the samples that its voices want, between its blocks: short ones whole, long ones page by page, and takes
 * back what was not wanted for longest where they grow too many.
 */
export class SampleFeeder {
  readonly #engine: VoiceEngine;
  readonly #source: SampleSource;
  readonly #paths: readonly (string | undefined)[];
  readonly #mostBytes: number;
  /** By sample and page, what was wanted last at the end. */
  readonly #held = new Map<string, Held>();
  /** Frames of samples that are handed over in pages. */
  readonly #long = new Map<number, { frames: number; rate: number }>();
  #bytes = 0;
  /** Samples that could not be read: their voices are silent. */
  readonly unreadable = new Set<number>();

  /** `paths` are those of the files by the number of the sample, `undefined` for one that is not there. */
  constructor(
    engine: VoiceEngine,
    source: SampleSource,
    paths: readonly (string | undefined)[],
    { mostBytes }: FeederOptions,
  ) {
    this.#engine = engine;
    this.#source = source;
    this.#paths = paths;
    this.#mostBytes = mostBytes;
  }

  /** Bytes of audio that the engine holds. */
  get bytes(): number {
    return this.#bytes;
  }

  /** Hands over a sample that voices wait for. */
  async give(id: number): Promise<void> {
    const path = this.#paths[id];
    const shape = path === undefined ? undefined : await this.#source.shape(path);
    if (path === undefined || !shape || shape.frames === 0) {
      this.unreadable.add(id);
      this.#engine.addSample(id, [new Float32Array(0)], 44100);
      return;
    }
    if (shape.frames > mostWholeFrames) {
      this.#long.set(id, shape);
      // What is wanted is told by the voice itself once it knows the sample.
      const stretch = { startFrame: 0, totalFrames: shape.frames };
      const channels = Array.from({ length: Math.min(2, shape.channels) }, () => new Float32Array(0));
      this.#engine.addSample(id, channels, shape.rate, stretch);
      return;
    }
    const channels = await this.#source.read(path, 0, shape.frames);
    if (channels[0].length === 0) this.unreadable.add(id);
    this.#engine.addSample(id, channels, shape.rate);
    this.#hold(id, -1, channels);
  }

  /** Hands over the pages that voices read in the next frames of output. */
  async givePages(frames: number): Promise<void> {
    const ahead = new Map<string, { id: number; page: number; isThere: boolean }>();
    this.#engine.pagesAhead(frames, (id, page, isThere) => ahead.set(keyOf(id, page), { id, page, isThere }));
    for (const [key, { id, page, isThere }] of ahead) {
      const held = this.#held.get(key);
      if (isThere && held) {
        this.#held.delete(key);
        this.#held.set(key, held);
        continue;
      }
      const path = this.#paths[id];
      const long = this.#long.get(id);
      if (path === undefined || !long) continue;
      const channels = await this.#source.read(path, page * pageFrames, pageFrames);
      // A file that ends before it says so goes on with silence.
      const whole = channels.map((values) =>
        padded(values, Math.min(pageFrames, long.frames - page * pageFrames)),
      );
      const stretch = { startFrame: page * pageFrames, totalFrames: long.frames };
      this.#engine.addSample(id, whole, long.rate, stretch);
      this.#hold(id, page, whole);
    }
    this.#takeBack(ahead);
  }

  #hold(id: number, page: number, channels: readonly Float32Array[]): void {
    const bytes = channels.reduce((sum, { length }) => sum + length * bytesPerValue, 0);
    this.#held.set(keyOf(id, page), { id, page, bytes });
    this.#bytes += bytes;
  }

  #takeBack(ahead: ReadonlyMap<string, unknown>): void {
    if (this.#bytes <= this.#mostBytes) return;
    for (const [key, { id, page, bytes }] of this.#held) {
      if (this.#bytes <= this.#mostBytes / 2) return;
      if (ahead.has(key)) continue;
      if (page >= 0) this.#engine.removePage(id, page);
      else if (!this.#engine.removeSample(id)) continue;
      this.#held.delete(key);
      this.#bytes -= bytes;
    }
  }
}

function keyOf(id: number, page: number): string {
  return `${id} ${page}`;
}

function padded(values: Float32Array, length: number): Float32Array {
  if (values.length >= length) return values;
  const whole = new Float32Array(length);
  whole.set(values);
  return whole;
}
