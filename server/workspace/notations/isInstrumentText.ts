import { HeaderKind, headerKindOf } from '../../model/headerKinds';
import { resolveOpcode } from '../../model/opcodes/resolve';
import type { SfzHandler } from '../../sfz/handler';
import { scanSfz } from '../../sfz/scan';
import { ElementKind, elementKindOf } from '../../xml/elements';
import { isReadAsXml } from '../../xml/isInstrumentXml';

/** Enough of a text to tell. */
const looked = 65_536;
/** The name of the outermost element, behind a declaration, comments and a document type. */
const firstElement = /^\ufeff?(?:\s+|<\?[\s\S]*?\?>|<!--[\s\S]*?-->|<![^>]*>)*<([^\s<>/!?]+)/;

/**
 * Whether a text can be an instrument in our notations or a part of one, so that what stands in it may be quoted: its file
 * is named so, or most of what it holds is known to the format. A text that holds nothing but comments can be one too.
 */
export function isInstrumentText(path: string, text: string): boolean {
  const start = text.slice(0, looked);
  if (isReadAsXml(path, start)) {
    const name = firstElement.exec(start)?.[1];
    return name === undefined ? start.trim() === '' : elementKindOf(name) !== ElementKind.unknown;
  }
  if (/\.sfzh?$/i.test(path)) return true;
  const count = new Count(start);
  scanSfz(start, count);
  return count.known >= count.unknown;
}

class Count implements SfzHandler {
  known = 0;
  unknown = 0;
  readonly #text: string;

  constructor(text: string) {
    this.#text = text;
  }

  header(_start: number, _end: number, nameStart: number, nameEnd: number): void {
    this.#note(headerKindOf(this.#text.slice(nameStart, nameEnd).trim()) !== HeaderKind.unknown);
  }

  opcode(nameStart: number, nameEnd: number): void {
    const name = this.#text.slice(nameStart, nameEnd);
    // What a variable stands for is not known here.
    if (!name.includes('$')) this.#note(resolveOpcode(name) !== undefined);
  }

  stray(start: number, end: number): void {
    if (this.#text[start] !== '$') this.#note(false, this.#text.slice(start, end).split(/\s+/).length);
  }

  define(): void {
    this.#note(true);
  }

  include(): void {
    this.#note(true);
  }

  comment(): void {}
  problem(): void {}

  #note(isKnown: boolean, count = 1): void {
    if (isKnown) this.known += count;
    else this.unknown += count;
  }
}
