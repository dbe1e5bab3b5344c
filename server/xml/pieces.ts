import type { ParameterNames } from '../model/parameterNames';
import type { Stretch } from '../model/text/stretch';
import type { TextPiece } from '../model/text/textLayout';
import { breaksBetween, textStart } from '../model/text/textLayout';
import { ElementKind, elementKindAt } from './elements';
import { isXmlSpace, spaceEndAt } from './scan/characters';
import type { XmlHandler } from './scan/handler';
import { scanXml } from './scan/scan';

/** What a piece of XML text is: a start tag is cut into its opening, its attributes and its end. */
export const XmlPieceKind = {
  open: 0,
  attribute: 1,
  openEnd: 2,
  close: 3,
  comment: 4,
  instruction: 5,
  frozen: 6,
} as const;
export type XmlPieceKind = (typeof XmlPieceKind)[keyof typeof XmlPieceKind];

export interface XmlPiece extends TextPiece {
  kind: XmlPieceKind;
  /** How many elements are open around it. */
  depth: number;
  /** The element that a piece of a tag belongs to. */
  element: ElementKind;
  /** The number of an attribute's name, else −1. */
  name: number;
}

/** UTF-16 units on either side of a stretch that are looked at with it. */
const context = 10_000;

/** Cuts XML, or what stands near a stretch of it, into pieces in the order of the text, and tells the stretches that are faulty or not known here. */
export function cutXml(
  text: string,
  names: ParameterNames,
  near?: Stretch,
): { pieces: XmlPiece[]; odd: Stretch[] } {
  const cutter = new Cutter(text, names, near);
  scanXml(text, cutter);
  if (!near) cutter.finish();
  return cutter;
}

class Cutter implements XmlHandler {
  readonly pieces: XmlPiece[] = [];
  readonly odd: Stretch[] = [];
  readonly #text: string;
  readonly #names: ParameterNames;
  readonly #ids: number[] = [];
  #end: number;
  #depth = 0;
  #element: ElementKind = ElementKind.unknown;
  #tagStart = 0;
  #tagHasFault = false;
  #inTag = false;

  readonly #from: number;
  readonly #to: number;
  /** Whether what is read now is to be cut: whole tags are, or are not. */
  #isNear = true;

  constructor(text: string, names: ParameterNames, near: Stretch | undefined) {
    this.#from = near ? near.start - context : 0;
    this.#to = near ? near.end + context : text.length;
    this.#text = text;
    this.#names = names;
    this.#end = textStart(text);
  }

  finish(): void {
    this.#gap(this.#text.length);
  }

  #gap(start: number): number {
    // What stands before the first piece is none of it where not all is cut.
    if (this.pieces.length === 0 && this.#from > 0) return 0;
    const breaks = breaksBetween(this.#text, this.#end, start);
    if (breaks < 0) {
      const gap = this.#text.slice(this.#end, start);
      this.odd.push({
        start: this.#end + gap.length - gap.trimStart().length,
        end: this.#end + gap.trimEnd().length,
      });
    }
    return Math.max(0, breaks);
  }

  #add(start: number, end: number, kind: XmlPieceKind, name = -1): XmlPiece {
    const piece = {
      order: this.pieces.length,
      start,
      end,
      text: undefined,
      breaks: this.#gap(start),
      lead: '',
      kind,
      depth: this.#depth,
      element: this.#element,
      name,
    };
    this.pieces.push(piece);
    this.#end = end;
    return piece;
  }

  open(tagStart: number, nameStart: number, nameEnd: number, hash: number): void {
    this.#element = elementKindAt(this.#text, nameStart, nameEnd, hash);
    this.#tagStart = tagStart;
    this.#tagHasFault = false;
    this.#inTag = true;
    this.#isNear = tagStart >= this.#from && tagStart <= this.#to;
    if (this.#isNear) this.#add(tagStart, nameEnd, XmlPieceKind.open);
  }

  attribute(
    attribute: number,
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
  ): void {
    if (!this.#isNear) return;
    const text = this.#text;
    const equals = spaceEndAt(text, nameEnd);
    const open = spaceEndAt(text, equals + 1);
    const quote = text[open];
    const close = spaceEndAt(text, valueEnd);
    if (
      text[equals] !== '=' ||
      (quote !== '"' && quote !== "'") ||
      text[close] !== quote ||
      close <= open ||
      valueStart <= open
    ) {
      this.#tagHasFault = true;
      return;
    }
    let id = this.#ids[attribute];
    if (id === undefined) {
      id = this.#names.idAt(text, nameStart, nameEnd);
      this.#ids[attribute] = id;
    }
    const piece = this.#add(nameStart, close + 1, XmlPieceKind.attribute, id);
    if (open !== nameEnd + 1) piece.text = `${text.slice(nameStart, nameEnd)}=${text.slice(open, close + 1)}`;
  }

  openEnd(end: number, empty: boolean, broken: boolean): void {
    this.#inTag = false;
    if (this.#isNear) this.#endTag(end, empty, broken);
    if (!empty) this.#depth++;
  }

  #endTag(end: number, empty: boolean, broken: boolean): void {
    if (broken || this.#tagHasFault || end <= this.#end) this.odd.push({ start: this.#tagStart, end });
    let start = end - 1;
    if (empty) start--;
    if (start >= this.#end) this.#add(start, end, XmlPieceKind.openEnd);
    else this.odd.push({ start: this.#tagStart, end });
  }

  close(start: number, end: number): void {
    this.#depth = Math.max(0, this.#depth - 1);
    this.#element = ElementKind.unknown;
    if (end > start && start >= this.#from && start <= this.#to) {
      const piece = this.#add(start, end, XmlPieceKind.close);
      const text = this.#text;
      let nameEnd = end - 1;
      while (isXmlSpace(text.charCodeAt(nameEnd - 1))) nameEnd--;
      if (nameEnd !== end - 1 && text[end - 1] === '>') piece.text = `${text.slice(start, nameEnd)}>`;
    }
  }

  characters(start: number, end: number): void {
    this.odd.push({ start, end });
  }

  comment(start: number, end: number): void {
    if (start >= this.#from && start <= this.#to) this.#add(start, end, XmlPieceKind.comment);
  }

  instruction(start: number, end: number): void {
    if (start >= this.#from && start <= this.#to) this.#add(start, end, XmlPieceKind.instruction);
  }

  doctype(start: number, end: number): void {
    this.odd.push({ start, end });
  }

  problem(start: number, end: number): void {
    if (this.#inTag) this.#tagHasFault = true;
    this.odd.push({ start, end });
  }
}
