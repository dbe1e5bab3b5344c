import type { LineBuffer } from '../../model/text/lineBuffer';
import type { Stretch } from '../../model/text/stretch';
import type { ElementLayout } from './writeLayout';

const usualIndentation = '  ';

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
   * Writes an element with the texts of its slots, which are ready to stand between double quotes. `isOpen` leaves its end tag to the
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
    const lines = this.#lines;
    lines.add(this.indentation(depth));
    lines.add('<');
    lines.add(name);
    if (declarations !== '') lines.add(declarations);
    for (const { lead, slot, fixed } of attributes) {
      const value = texts[slot] ?? fixed;
      if (value === undefined) continue;
      if (slot >= 0) this.#starts[slot] = lines.position + 1;
      lines.add(lead);
      lines.add(value);
      lines.add('"');
      if (slot >= 0) this.#ends[slot] = lines.position;
    }
    const own = text < 0 ? undefined : texts[text];
    const holdsElements =
      isOpen || (children.length > 0 && children.some((child) => holdsText(child, texts)));
    if (own === undefined && !holdsElements) {
      lines.add('/>');
      lines.endLine();
      return;
    }
    lines.add('>');
    if (own !== undefined) {
      this.#starts[text] = lines.position;
      lines.add(own.includes('&') ? own.replaceAll('&quot;', '"') : own);
      this.#ends[text] = lines.position;
    }
    if (!holdsElements) {
      this.#endTag(name);
      return;
    }
    lines.endLine();
    for (const child of children)
      if (holdsText(child, texts)) this.#element(child, texts, depth + 1, false, '');
    if (isOpen) return;
    lines.add(this.indentation(depth));
    this.#endTag(name);
  }

  #endTag(name: string): void {
    this.#lines.add('</');
    this.#lines.add(name);
    this.#lines.add('>');
    this.#lines.endLine();
  }
}

function holdsText({ slots }: ElementLayout, texts: readonly (string | undefined)[]): boolean {
  for (const slot of slots) if (texts[slot] !== undefined) return true;
  return false;
}
