/** Puts numbers of the little-endian kind one behind the other. */
export class ByteWriter {
  #bytes: Uint8Array;
  #view: DataView;
  #length = 0;

  constructor(expectedBytes = 256) {
    this.#bytes = new Uint8Array(Math.max(16, expectedBytes));
    this.#view = new DataView(this.#bytes.buffer);
  }

  /** Bytes written so far. */
  get length(): number {
    return this.#length;
  }

  /** Characters, one byte each. */
  letters(text: string): this {
    for (let at = 0; at < text.length; at++) this.u8(text.charCodeAt(at));
    return this;
  }

  /** Characters in a field of so many bytes, with zeros behind them. */
  field(text: string, bytes: number): this {
    this.letters(text.slice(0, bytes));
    for (let at = text.length; at < bytes; at++) this.u8(0);
    return this;
  }

  u8(value: number): this {
    const at = this.#next(1);
    this.#view.setUint8(at, value);
    return this;
  }

  /** Numbers of 16 bits; those below 0 as their two's complement. */
  u16(...values: number[]): this {
    for (const value of values) {
      const at = this.#next(2);
      this.#view.setUint16(at, value & 0xffff, true);
    }
    return this;
  }

  u32(...values: number[]): this {
    for (const value of values) {
      const at = this.#next(4);
      this.#view.setUint32(at, value >>> 0, true);
    }
    return this;
  }

  bytes(more: Uint8Array): this {
    const at = this.#next(more.length);
    this.#bytes.set(more, at);
    return this;
  }

  /** What was written; good until more is. */
  finish(): Uint8Array {
    return this.#bytes.subarray(0, this.#length);
  }

  #next(count: number): number {
    const at = this.#length;
    this.#length += count;
    if (this.#length > this.#bytes.length) {
      const grown = new Uint8Array(Math.max(this.#length, this.#bytes.length * 2));
      grown.set(this.#bytes);
      this.#bytes = grown;
      this.#view = new DataView(grown.buffer);
    }
    return at;
  }
}
