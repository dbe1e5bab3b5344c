import { TableCells } from './cells';

/** A table in the markup of wikis starts so at a line of its own. */
const opening = /^[ \t]*\{\|/m;
const attributes = /^(?:[^|[\]{}]*=\s*(?:"[^"]*"|'[^']*'|[^\s|]+)[^|[\]{}]*)\|(?!\|)/;
const marks = /^'{2,5}|'{2,5}$/g;

/**
 * The cells of tables in wiki markup that stand between `{|` and `|}`: rows parted by `|-`, headings behind `!`, cells behind `|`, on
 * lines of their own or parted by `!!` and `||`. `undefined` for a text without one.
 */
export function wikiCells(text: string): TableCells | undefined {
  if (!opening.test(text.slice(0, 1 << 16))) return undefined;
  const reader = new WikiReader(text);
  return reader.read();
}

class WikiReader {
  readonly #cells: TableCells;
  #isOpen = false;
  #isInRow = false;

  constructor(readonly text: string) {
    this.#cells = new TableCells(text);
  }

  read(): TableCells | undefined {
    let start = 0;
    while (start < this.text.length) {
      const next = this.text.indexOf('\n', start);
      const end = next < 0 ? this.text.length : next;
      this.#line(start, end);
      start = end + 1;
    }
    this.#endRow();
    return this.#cells.rowCount > 1 ? this.#cells : undefined;
  }

  #line(start: number, end: number): void {
    const line = this.text.slice(start, end);
    const from = start + (line.length - line.trimStart().length);
    const sign = this.text.slice(from, Math.min(end, from + 2));
    if (!this.#isOpen) {
      if (sign === '{|') this.#isOpen = true;
      else if (line.trim() !== '') this.#textLine(from, end);
      return;
    }
    if (sign === '|}' || sign === '|-') {
      this.#endRow();
      if (sign === '|}') {
        this.#isOpen = false;
        this.#cells.endRow();
      }
    } else if (sign === '|+') this.#textLine(from + 2, end);
    else if (sign[0] === '|' || sign[0] === '!') this.#cellsIn(from + 1, end, sign[0]);
  }

  /** A title, or the caption of a table. */
  #textLine(start: number, end: number): void {
    this.#endRow();
    this.#add(start, end);
    this.#cells.endRow();
  }

  #cellsIn(start: number, end: number, sign: string): void {
    this.#isInRow = true;
    const parting = sign === '!' ? /!!|\|\|/g : /\|\|/g;
    parting.lastIndex = 0;
    const line = this.text.slice(start, end);
    let from = 0;
    for (const match of line.matchAll(parting)) {
      this.#add(start + from, start + match.index);
      from = match.index + match[0].length;
    }
    this.#add(start + from, end);
  }

  #add(start: number, end: number): void {
    const lead = attributes.exec(this.text.slice(start, end))?.[0].length ?? 0;
    const cell = this.#cells.add(start + lead, end);
    const written = this.#cells.value(cell);
    const plain = written.replace(marks, '').trim();
    if (plain !== written) this.#cells.rewritten.set(cell, plain);
  }

  #endRow(): void {
    if (this.#isInRow) this.#cells.endRow();
    this.#isInRow = false;
  }
}
