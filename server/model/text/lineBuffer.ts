const firstSize = 1 << 12;
/** After so many bytes a piece of the text is done. */
const pieceLength = 1 << 20;
const decoder = new TextDecoder();

/**
 * Puts a text together line by line. ASCII is collected as bytes, which takes a fraction of the time that joining
 * strings does; a line with other characters is kept as a string between them.
 */
export class LineBuffer {
  readonly #parts: string[] = [];
  #bytes: Uint8Array;
  /** The number of bytes so far. */
  length = 0;
  /** Where the line that is being written starts. */
  #lineStart = 0;
  /** The length of {@link #parts}. */
  #flushed = 0;

  /** `expected` is the likely length of the text. */
  constructor(
    readonly lineEnd: string,
    expected: number,
  ) {
    this.#bytes = new Uint8Array(Math.max(firstSize, Math.min(expected, pieceLength + firstSize)));
  }

  get isEmpty(): boolean {
    return this.length === 0 && this.#parts.length === 0;
  }

  /** Where the next character goes, as an offset in the whole text. */
  get position(): number {
    return this.#flushed + this.length;
  }

  /** Adds a whole line. */
  line(text: string): void {
    if (this.ascii(text)) this.endLine();
    else {
      this.dropLine();
      this.#flush();
      this.#parts.push(text, this.lineEnd);
      this.#flushed += text.length + this.lineEnd.length;
    }
  }

  /** Adds a text to the line that is being written; where it is not ASCII, answers `false` and adds a part of it. */
  ascii(text: string): boolean {
    const { length } = text;
    const bytes = this.room(length);
    const at = this.length;
    for (let place = 0; place < length; place++) {
      const code = text.charCodeAt(place);
      if (code > 127) return false;
      bytes[at + place] = code;
    }
    this.length = at + length;
    return true;
  }

  /** Adds a text to the line that is being written; a line with other than ASCII in it cannot be left out any more. */
  add(text: string): void {
    if (this.ascii(text)) return;
    this.#flush();
    this.#parts.push(text);
    this.#flushed += text.length;
  }

  /** Bytes with room for `more` behind {@link length}; whoever fills them moves it on. */
  room(more: number): Uint8Array {
    if (this.length + more > this.#bytes.length) {
      const longer = new Uint8Array(Math.max(this.#bytes.length * 2, this.length + more));
      longer.set(this.#bytes);
      this.#bytes = longer;
    }
    return this.#bytes;
  }

  endLine(): void {
    this.ascii(this.lineEnd);
    this.#lineStart = this.length;
    if (this.length >= pieceLength) this.#flush();
  }

  /** Leaves out the line that is being written. */
  dropLine(): void {
    this.length = this.#lineStart;
  }

  /** The whole text. */
  finish(): string {
    return this.pieces().join('');
  }

  /** The whole text in pieces. */
  pieces(): readonly string[] {
    this.#flush();
    return this.#parts;
  }

  #flush(): void {
    if (this.length > 0) this.#parts.push(decoder.decode(this.#bytes.subarray(0, this.length)));
    this.#flushed += this.length;
    this.length = 0;
    this.#lineStart = 0;
  }
}
