import type { LineBuffer } from '../model/lineBuffer';
import type { ElementLayout } from './writeLayout';

const usualIndentation = '  ';

/** A stretch of the text that is written. */
export interface Stretch {
  start: number;
  end: number;
}

/** Writes elements by their layouts, each on lines of its own, and knows where the values of the last one came to stand. */
export class ElementLines {
  readonly #lines: LineBuffer;
  readonly #indentations: string[] = [];
  /** By slot, where the value stands: the attribute with its name, or the text alone. */
  readonly #starts: number[] = [];
  readonly #ends: number[] = [];
  #tag: Stretch = { start: 0, end: 0 };

  constructor(lines: LineBuffer) {
    this.#lines = lines;
  }

  /** The start of the tag of the last element, up to its name's end. */
  get tag(): Stretch {
    return this.#tag;
  }

  /** Where the text of a slot of the last element stands, which has to be there. */
  stretchOf(slot: number): Stretch {
    return { start: this.#starts[slot] ?? this.#tag.start, end: this.#ends[slot] ?? this.#tag.end };
  }

  indentation(depth: number): string {
    let indentation = this.#indentations[depth];
    if (indentation === undefined) {
      indentation = usualIndentation.repeat(depth);
      this.#indentations[depth] = indentation;
    }
    return indentation;
  }

  /** Adds a line of text. */
  line(text: string, depth: number): void {
    this.#lines.line(this.indentation(depth) + text);
  }

  /**
   * Writes an element with the texts of its slots, which are ready to stand in XML. `isOpen` leaves its end tag to the
   * caller; `declarations` come before its attributes, each with a blank before it.
   */
  element(
    layout: ElementLayout,
    texts: readonly (string | undefined)[],
    depth: number,
    isOpen: boolean,
    declarations = '',
  ): void {
    const start = this.#lines.position + this.indentation(depth).length;
    const tag = { start, end: start + 1 + layout.name.length };
    this.#element(layout, texts, depth, isOpen, declarations);
    this.#tag = tag;
  }

  #element(
    { name, attributes, text, children }: ElementLayout,
    texts: readonly (string | undefined)[],
    depth: number,
    isOpen: boolean,
    declarations: string,
  ): void {
    const lineStart = this.#lines.position;
    let line = `${this.indentation(depth)}<${name}${declarations}`;
    for (const { lead, slot, fixed } of attributes) {
      const value = texts[slot] ?? fixed;
      if (value === undefined) continue;
      if (slot >= 0) this.#starts[slot] = lineStart + line.length + 1;
      line += `${lead}${value}"`;
      if (slot >= 0) this.#ends[slot] = lineStart + line.length;
    }
    const own = text < 0 ? undefined : texts[text];
    const inside = children.filter(({ slots }) => slots.some((slot) => texts[slot] !== undefined));
    const holdsElements = isOpen || inside.length > 0;
    if (own === undefined && !holdsElements) {
      this.#lines.line(`${line}/>`);
      return;
    }
    line += '>';
    if (own !== undefined) {
      this.#starts[text] = lineStart + line.length;
      line += own;
      this.#ends[text] = lineStart + line.length;
    }
    this.#lines.line(holdsElements ? line : `${line}</${name}>`);
    if (!holdsElements) return;
    for (const child of inside) this.#element(child, texts, depth + 1, false, '');
    if (!isOpen) this.line(`</${name}>`, depth);
  }
}
