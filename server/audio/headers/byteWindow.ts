import type { FileReader } from '../../model/files';

/** Bytes fetched at a time behind the first read: enough for the small chunks that stand together at a file's end. */
const fetchLength = 1024;
/** Reads that one file may take, so that a file made of thousands of tiny chunks costs no more than a few. */
const mostReads = 48;

/**
 * A stretch of a file held in memory that moves along as it is needed. Numbers are read from it by their offset in
 * the file, in the file's byte order, once {@link hold} has answered true for them.
 */
export class ByteWindow {
  /** Bytes in the file. */
  readonly size: number;
  /** Whether the low byte of a number comes first. */
  littleEndian = true;
  readonly #reader: FileReader;
  #bytes: Uint8Array;
  #view: DataView;
  #start = 0;
  #reads = 0;

  /** `head` are the first bytes of the file, read already. */
  constructor(reader: FileReader, head: Uint8Array) {
    this.#reader = reader;
    this.#bytes = head;
    this.#view = new DataView(head.buffer, head.byteOffset, head.byteLength);
    this.size = Math.max(reader.size, head.length);
  }

  /** Whether bytes are in memory, so that reading them needs no wait. */
  holds(start: number, length: number): boolean {
    return start >= this.#start && start + length <= this.#start + this.#bytes.length;
  }

  /** The offset behind the last byte in memory. */
  get heldEnd(): number {
    return this.#start + this.#bytes.length;
  }

  /** Brings bytes into memory. False where the file ends before, or where it has cost too many reads already. */
  async hold(start: number, length: number): Promise<boolean> {
    if (this.holds(start, length)) return true;
    if (start < 0 || start + length > this.size || this.#reads >= mostReads) return false;
    this.#reads++;
    const wanted = Math.min(Math.max(length, fetchLength), this.size - start);
    this.#bytes = await this.#reader.read(start, wanted);
    this.#view = new DataView(this.#bytes.buffer, this.#bytes.byteOffset, this.#bytes.byteLength);
    this.#start = start;
    return this.#bytes.length >= length;
  }

  /** A stretch that is held, not copied: it is good until the next {@link hold}. */
  part(start: number, end: number): Uint8Array {
    return this.#bytes.subarray(start - this.#start, end - this.#start);
  }

  uint8(at: number): number {
    return this.#view.getUint8(at - this.#start);
  }

  int8(at: number): number {
    return this.#view.getInt8(at - this.#start);
  }

  uint16(at: number): number {
    return this.#view.getUint16(at - this.#start, this.littleEndian);
  }

  uint32(at: number): number {
    return this.#view.getUint32(at - this.#start, this.littleEndian);
  }

  /** Whole numbers above 2^53 lose their last digits, which no file size reaches. */
  uint64(at: number): number {
    const low = this.uint32(this.littleEndian ? at : at + 4);
    const high = this.uint32(this.littleEndian ? at + 4 : at);
    return high * 2 ** 32 + low;
  }

  /** Four characters as one number, the first in the highest byte, as {@link fourCharacters} gives it. */
  identifier(at: number): number {
    return this.#view.getUint32(at - this.#start);
  }
}

/** A chunk identifier of four characters as one number, so that comparing it needs no string. */
export function fourCharacters(text: string): number {
  let value = 0;
  for (let at = 0; at < 4; at++) value = (value << 8) | (text.charCodeAt(at) & 255);
  return value >>> 0;
}

/** Whether a number is four printable ASCII characters, as every chunk identifier is. */
export function isIdentifier(value: number): boolean {
  for (let shift = 24; shift >= 0; shift -= 8) {
    const code = (value >>> shift) & 255;
    if (code < 32 || code > 126) return false;
  }
  return true;
}
