import type { AudioSource } from './audioSource';
import { emptyChannels, mostValues } from './audioSource';

/** What is known of compressed audio before it is decoded. */
export type StreamFormat = Pick<AudioSource, 'sampleRate' | 'channels' | 'bitsPerSample' | 'frames'>;

/** Decodes audio from its start, block by block; frees what it holds when it ends or is left. */
export type Decode = () => AsyncGenerator<Float32Array[]>;

/** The audio of a compressed file, which can be decoded from front to back only. */
export class StreamedSource implements AudioSource {
  readonly sampleRate: number;
  readonly channels: number;
  readonly bitsPerSample: number;
  readonly frames: number;
  readonly isDecodedInOrder = true;
  readonly #decode: Decode;
  #cursor: Cursor | undefined;
  /** Reads wait for one another, as they share one decoder. */
  #last: Promise<unknown> = Promise.resolve();

  constructor(format: StreamFormat, decode: Decode) {
    this.sampleRate = format.sampleRate;
    this.channels = format.channels;
    this.bitsPerSample = format.bitsPerSample;
    this.frames = format.frames;
    this.#decode = decode;
  }

  read(startFrame: number, count: number): Promise<Float32Array[]> {
    const read = this.#last.then(() => this.#read(startFrame, count));
    this.#last = read.catch(() => undefined);
    return read;
  }

  async *blocks(): AsyncGenerator<Float32Array[]> {
    try {
      for await (const block of this.#decode()) if ((block[0]?.length ?? 0) > 0) yield block;
    } catch {
      // What was decoded before the damage stands.
    }
  }

  async close(): Promise<void> {
    await this.#last;
    await this.#cursor?.blocks.return(undefined);
    this.#cursor = undefined;
  }

  async #read(startFrame: number, count: number): Promise<Float32Array[]> {
    const start = Math.max(0, Math.floor(startFrame));
    const end = Math.min(
      Math.floor(startFrame + count),
      this.frames,
      start + Math.floor(mostValues / this.channels),
    );
    if (!(end > start)) return emptyChannels(this.channels);
    const result = Array.from({ length: this.channels }, () => new Float32Array(end - start));
    let filled = start;
    let cursor = await this.#cursorBefore(start);
    while (filled < end) {
      const { block, first } = cursor;
      const last = first + (block[0]?.length ?? 0);
      if (filled >= last) {
        const next = await cursor.blocks.next();
        if (next.done) break;
        cursor = { blocks: cursor.blocks, block: next.value, first: last };
        this.#cursor = cursor;
        continue;
      }
      const to = Math.min(end, last);
      block.forEach((values, channel) => {
        result[channel]?.set(values.subarray(filled - first, to - first), filled - start);
      });
      filled = to;
    }
    return filled === end ? result : result.map((values) => values.subarray(0, filled - start));
  }

  async #cursorBefore(frame: number): Promise<Cursor> {
    if (this.#cursor && this.#cursor.first <= frame) return this.#cursor;
    await this.#cursor?.blocks.return(undefined);
    this.#cursor = { blocks: this.blocks(), block: emptyChannels(this.channels), first: 0 };
    return this.#cursor;
  }
}

/** How far decoding has come: the last block and the number of its first frame. */
interface Cursor {
  blocks: AsyncGenerator<Float32Array[]>;
  block: Float32Array[];
  first: number;
}
