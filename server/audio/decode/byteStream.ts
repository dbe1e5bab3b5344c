import type { FileReader } from '../../model/files';

/** Bytes fetched at a time. */
const stepBytes = 1 << 16;

/** A file read from front to back in large steps; only what has not been passed is kept in memory. */
export class ByteStream {
  readonly #reader: FileReader;
  #bytes = new Uint8Array(0);
  /** The offset in the file of the first byte in memory. */
  #start: number;
  #at = 0;
  #isOver = false;

  constructor(reader: FileReader, start = 0) {
    this.#reader = reader;
    this.#start = start;
  }

  /** The offset in the file of the next byte. */
  get position(): number {
    return this.#start + this.#at;
  }

  /** The next bytes without passing them: at least `count`, fewer only at the end. Good until the next call. */
  async peek(count: number): Promise<Uint8Array> {
    const held = this.#bytes.length - this.#at;
    if (held >= count || this.#isOver) return this.#bytes.subarray(this.#at);
    const from = this.#start + this.#bytes.length;
    const wanted = Math.min(Math.max(count - held, stepBytes), this.#reader.size - from);
    const more = wanted > 0 ? await this.#reader.read(from, wanted) : new Uint8Array(0);
    // A file that shrinks while it is read ends where it gives no more.
    if (more.length < Math.max(wanted, count - held)) this.#isOver = true;
    const bytes = new Uint8Array(held + more.length);
    bytes.set(this.#bytes.subarray(this.#at));
    bytes.set(more, held);
    this.#start += this.#at;
    this.#at = 0;
    this.#bytes = bytes;
    return bytes;
  }

  /** Passes bytes, which need not have been looked at. */
  skip(count: number): void {
    const at = this.#at + count;
    if (at <= this.#bytes.length) {
      this.#at = at;
      return;
    }
    this.#start += at;
    this.#bytes = new Uint8Array(0);
    this.#at = 0;
  }
}
