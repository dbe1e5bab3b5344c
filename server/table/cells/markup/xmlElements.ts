import type { XmlHandler } from '../../../xml/scan/handler';
import { scanXml } from '../../../xml/scan/scan';

/** An element of an XML text, with where its own texts and the values of its attributes stand. */
export interface XmlElement {
  name: string;
  parent: XmlElement | undefined;
  children: XmlElement[];
  start: number;
  end: number;
  attributes: Map<string, TextSpan>;
  /** The stretches of text in it, those of elements in it included. */
  texts: TextSpan[];
}

export interface TextSpan {
  start: number;
  end: number;
}

/** The elements of an XML text in their order, and its comments. */
export interface XmlElements {
  all: readonly XmlElement[];
  comments: readonly TextSpan[];
}

const mostElements = 400_000;

/** Reads the elements of any text with tags; never throws. */
export function xmlElements(text: string): XmlElements {
  const look = new ElementLook(text);
  scanXml(text, look);
  return look;
}

class ElementLook implements XmlHandler {
  readonly all: XmlElement[] = [];
  readonly comments: TextSpan[] = [];
  #open: XmlElement | undefined;

  constructor(readonly text: string) {}

  open(tagStart: number, nameStart: number, nameEnd: number): void {
    const parent = this.#open;
    const name = this.text.slice(nameStart, nameEnd);
    const end = this.text.length;
    this.#open = { name, parent, children: [], start: tagStart, end, attributes: new Map(), texts: [] };
    if (this.all.length >= mostElements) return;
    this.all.push(this.#open);
    parent?.children.push(this.#open);
  }

  attribute(_: number, nameStart: number, nameEnd: number, start: number, end: number): void {
    this.#open?.attributes.set(this.text.slice(nameStart, nameEnd), { start, end });
  }

  openEnd(end: number, empty: boolean): void {
    if (empty) this.#close(end);
  }

  close(start: number): void {
    const end = this.text.indexOf('>', start);
    this.#close(end < 0 ? this.text.length : end + 1);
  }

  #close(end: number): void {
    if (!this.#open) return;
    this.#open.end = end;
    this.#open = this.#open.parent;
  }

  characters(start: number, end: number): void {
    const isSection = this.text.startsWith('<![CDATA[', start);
    const span = isSection ? { start: start + 9, end: end - 3 } : { start, end };
    if (this.text.slice(span.start, span.end).trim() === '') return;
    // A cell may hold its text in elements of its own.
    for (let at = this.#open, depth = 0; at && depth < mostInCell; at = at.parent, depth++)
      at.texts.push(span);
  }

  comment(start: number, end: number): void {
    this.comments.push({ start: start + 4, end: Math.max(start + 4, end - 3) });
  }

  instruction(): void {}
  doctype(): void {}
  problem(): void {}
}

/** A text stands in so many elements of a cell at most. */
const mostInCell = 4;
