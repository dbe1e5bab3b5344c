import { keptTextBytes } from './textBytes';

/** So many characters are bytes at a time. */
const windowLength = 1 << 20;

/**
 * A text as bytes like those of `keptTextBytes`, a stretch at a time, for who reads it from its start to its end: all bytes of a long text
 * would take as much memory as the text. Who goes back is given all of them.
 */
export class TextWindow {
  readonly #text: string;
  #bytes: Uint8Array = new Uint8Array(0);
  #start = 0;
  #end = 0;

  constructor(text: string) {
    this.#text = text;
  }

  /** The bytes that were reached last. */
  get bytes(): Uint8Array {
    return this.#bytes;
  }

  /** Has {@link bytes} hold a stretch of the text; answers the offset in the text of the first of them. */
  reach(from: number, to: number): number {
    if (from >= this.#start && to <= this.#end) return this.#start;
    const isBack = from < this.#start;
    const { length } = this.#text;
    this.#start = isBack ? 0 : from;
    this.#end = isBack ? length : Math.min(length, Math.max(to, from + windowLength));
    this.#bytes = keptTextBytes(this.#text.slice(this.#start, this.#end), 0);
    return this.#start;
  }
}
