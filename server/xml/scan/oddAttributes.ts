import { plainNumber } from '../../model/instrumentBuilder';
import type { AttributeNames } from './attributeNames';
import {
  characterNumber,
  findIllegalCharacters,
  isNameCharacter,
  isNameStart,
  isXmlSpace,
  nameEndAt,
  spaceEndAt,
} from './characters';
import type { XmlHandler } from './handler';
import { ValueMark } from './handler';
import { nameHash } from './nameHash';
import type { NamedReferences } from './references';
import { readReference } from './references';

/**
 * Reads attributes that are out of the ordinary: any name, white space around `=`, references in the value, and every
 * fault that an attribute can have.
 */
export class OddAttributes {
  readonly #text: string;
  readonly #handler: XmlHandler;
  readonly #names: AttributeNames;
  readonly #references: NamedReferences;

  constructor(text: string, handler: XmlHandler, names: AttributeNames, references: NamedReferences) {
    this.#text = text;
    this.#handler = handler;
    this.#names = names;
    this.#references = references;
  }

  /**
   * Reads the attribute at `start`, or what stands in its place; `spaced` says that white space stands before it.
   * Answers where to read on, which is always further.
   */
  scan(start: number, spaced: boolean): number {
    const text = this.#text;
    const nameEnd = nameEndAt(text, start);
    if (nameEnd === start) return this.#stray(start);
    const name = this.#shown(start, nameEnd);
    if (!spaced) this.#handler.problem(start, nameEnd, `Put a space before "${name}".`);
    let at = spaceEndAt(text, nameEnd);
    const hasEquals = text[at] === '=';
    if (hasEquals) at = spaceEndAt(text, at + 1);
    const quoted = text[at] === '"' || text[at] === "'";
    if (!hasEquals) {
      this.#handler.problem(
        start,
        nameEnd,
        quoted ? `An "=" is missing after "${name}".` : `"${name}" has no value. Write ${name}="…".`,
      );
      if (!quoted) return nameEnd;
    }
    const number = this.#names.numberOf(start, nameEnd, nameHash(text, start, nameEnd));
    if (this.#names.isRepeated(number)) this.reportRepeated(start, nameEnd);
    return quoted ? this.#quoted(start, nameEnd, at) : this.#unquoted(start, nameEnd, at);
  }

  /** Reports an attribute that its tag has already. */
  reportRepeated(start: number, end: number): void {
    const name = this.#shown(start, end);
    this.#handler.problem(start, end, `This element has "${name}" already. Remove one of the two.`);
  }

  #stray(start: number): number {
    const text = this.#text;
    let end = start + 1;
    if (text[start] !== '/') {
      while (end < text.length) {
        const code = text.charCodeAt(end);
        if (isXmlSpace(code) || code === 47 || code === 60 || code === 62) break;
        if (isNameStart(text.codePointAt(end) as number)) break;
        end++;
      }
    }
    const shown = text.slice(start, Math.min(end, start + 40));
    this.#handler.problem(
      start,
      end,
      `${quote(shown)} does not belong in a tag. Attributes read name="value".`,
    );
    return end;
  }

  #unquoted(nameStart: number, nameEnd: number, start: number): number {
    const text = this.#text;
    let end = start;
    while (end < text.length) {
      const code = text.charCodeAt(end);
      if (isXmlSpace(code) || code === 34 || code === 39 || code === 60 || code === 62) break;
      if (code === 47 && text.charCodeAt(end + 1) === 62) break;
      end++;
    }
    const name = this.#shown(nameStart, nameEnd);
    const isNext = this.#isAttribute(start);
    if (end === start || isNext) {
      this.#handler.problem(nameStart, nameEnd, `"${name}" has no value. Write ${name}="…".`);
      return isNext ? start - 1 : start;
    }
    const closed = text[end] === '"' || text[end] === "'";
    this.#handler.problem(
      start,
      end,
      closed
        ? `The value of "${name}" has no quote at its start.`
        : `Put the value of "${name}" in quotes: ${name}="…".`,
    );
    this.#report(nameStart, nameEnd, start, end);
    return closed ? end + 1 : end;
  }

  /** Whether a name and `=` stand here behind white space, so that it is no value of the attribute before. */
  #isAttribute(start: number): boolean {
    const end = nameEndAt(this.#text, start);
    return end > start && this.#text[end] === '=' && isXmlSpace(this.#text.charCodeAt(start - 1));
  }

  #quoted(nameStart: number, nameEnd: number, open: number): number {
    const text = this.#text;
    const mark = text.charCodeAt(open);
    /** The first place where a value that is never closed could be taken to end. */
    let stop = -1;
    let at = open + 1;
    for (; at < text.length; at++) {
      const code = text.charCodeAt(at);
      if (code === mark || (code === 60 && stop >= 0)) break;
      if (stop < 0 && (code === 62 || code === 10 || code === 13)) stop = at;
    }
    if (at >= text.length || text.charCodeAt(at) !== mark) {
      return this.#unclosed(nameStart, nameEnd, open, stop < 0 ? text.length : stop);
    }
    const next = this.#attributeSwallowed(open + 1, at);
    if (next >= 0) return this.#unclosed(nameStart, nameEnd, open, next);
    this.#report(nameStart, nameEnd, open + 1, at);
    return at + 1;
  }

  /**
   * Where the value up to the quote at `close` in truth ends, when the name of a further attribute stands in it and
   * the quote is the opening one of that: `sample="a.wav lokey="60"`. −1 for a value in order.
   */
  #attributeSwallowed(start: number, close: number): number {
    const text = this.#text;
    const after = text.charCodeAt(close + 1);
    if (close + 1 >= text.length || isXmlSpace(after) || after === 47 || after === 62) return -1;
    let at = close - 1;
    while (at > start && isXmlSpace(text.charCodeAt(at))) at--;
    if (text[at] !== '=') return -1;
    at--;
    while (at > start && isXmlSpace(text.charCodeAt(at))) at--;
    const nameEnd = at + 1;
    while (at >= start && isNameCharacter(text.charCodeAt(at))) at--;
    if (at + 1 === nameEnd || at < start || !isXmlSpace(text.charCodeAt(at))) return -1;
    return at;
  }

  #unclosed(nameStart: number, nameEnd: number, open: number, stop: number): number {
    const text = this.#text;
    let end = stop;
    if (text[end] === '>' && end > open + 1 && text[end - 1] === '/') end--;
    const name = this.#shown(nameStart, nameEnd);
    this.#handler.problem(open, end, `The value of "${name}" has no quote at its end.`);
    this.#report(nameStart, nameEnd, open + 1, end);
    return end;
  }

  #report(nameStart: number, nameEnd: number, from: number, to: number): void {
    const text = this.#text;
    const start = Math.min(to, spaceEndAt(text, from));
    let end = to;
    while (end > start && isXmlSpace(text.charCodeAt(end - 1))) end--;
    let marks = this.#checkValue(from, to, start, end);
    if (text.slice(nameStart, nameEnd).includes(':')) marks |= ValueMark.prefixed;
    const number = end - start < 400 ? plainNumber(text.slice(start, end)) : Number.NaN;
    const name = this.#names.numberOf(nameStart, nameEnd, nameHash(text, nameStart, nameEnd));
    this.#handler.attribute(name, nameStart, nameEnd, start, end, number, marks);
  }

  /** Reports what a value cannot hold, and answers its marks. */
  #checkValue(from: number, to: number, start: number, end: number): number {
    const text = this.#text;
    const handler = this.#handler;
    let marks = 0;
    for (let at = from; at < to; at++) {
      const code = text.charCodeAt(at);
      if (code === 38) {
        const reference = readReference(text, at);
        const referenceEnd = Math.min(reference.end, to);
        if (reference.name !== undefined && reference.end <= to) {
          this.#references.found(reference.name, at, referenceEnd, 'attribute');
        } else if (reference.problem !== undefined) handler.problem(at, referenceEnd, reference.problem);
        marks |= ValueMark.encoded;
        at = referenceEnd - 1;
      } else if (code === 60) {
        handler.problem(
          at,
          at + 1,
          'A value cannot hold a bare "<". Write &lt;, or close the value before it.',
        );
      } else if (code === 36) marks |= ValueMark.dollar;
      else if (code < 32 && at >= start && at < end && isXmlSpace(code)) marks |= ValueMark.encoded;
    }
    findIllegalCharacters(text, from, to, (at, behind, code) =>
      handler.problem(at, behind, `XML cannot hold the character ${characterNumber(code)}. Remove it.`),
    );
    return marks;
  }

  #shown(start: number, end: number): string {
    return end - start > 40 ? `${this.#text.slice(start, start + 39)}…` : this.#text.slice(start, end);
  }
}

function quote(text: string): string {
  return text.includes('"') ? `'${text}'` : `"${text}"`;
}
