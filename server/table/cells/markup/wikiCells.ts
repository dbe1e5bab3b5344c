import { TableCells } from '../cells';
import { withoutInlineMarks } from './inlineMarks';
import { StruckCells, strikesOut } from './struckOut';

/** A table in the markup of wikis starts so at a line of its own. */
const opening = /^[ \t]*\{\|/m;
const attributes = /^(?:[^|[\]{}]*=\s*(?:"[^"]*"|'[^']*'|[^\s|]+)[^|[\]{}]*)\|(?!\|)/;
const marks = /'{2,5}/g;
const spanned = /\b(row|col)span\s*=\s*["']?(\d{1,4})/gi;
/** So many cells may stand for others; what asks for more is not spread out. */
const mostSpanned = 100_000;

/**
 * The cells of tables in wiki markup that stand between `{|` and `|}`: rows parted by `|-`, headings behind `!`, cells behind `|`, on
 * lines of their own or parted by `!!` and `||`. A cell that reaches over several rows stands in each of them, one over several columns
 * in the first. `undefined` for a text without one.
 */
export function wikiCells(text: string): TableCells | undefined {
  if (!opening.test(text.slice(0, 1 << 16))) return undefined;
  const reader = new WikiReader(text);
  return reader.read();
}

class WikiReader {
  readonly #cells: TableCells;
  readonly #struck: StruckCells;
  /** Whether the line that opened the row strikes it out. */
  #isRowStruck = false;
  #isOpen = false;
  #isInRow = false;
  /** For each column, the cell that reaches down into the rows below, and how many it still reaches. */
  #reaching: { cell: number; rows: number }[] = [];
  #column = 0;
  #spanned = 0;

  constructor(readonly text: string) {
    this.#cells = new TableCells(text);
    this.#struck = new StruckCells(this.#cells);
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
      this.#isRowStruck = sign === '|-' && strikesOut(line);
      if (sign === '|}') {
        this.#isOpen = false;
        this.#reaching = [];
        this.#cells.endRow();
      }
    } else if (sign === '|+') this.#textLine(from + 2, end);
    else if (sign[0] === '|' || sign[0] === '!') this.#cellsIn(from + 1, end, sign[0]);
  }

  /** A title, or the caption of a table. */
  #textLine(start: number, end: number): void {
    this.#endRow();
    this.#put(start, end);
    this.#cells.endRow();
    this.#struck.endRow(this.#cells.rowCount - 1);
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

  /** Adds a cell, behind those that reach down from rows above. */
  #add(start: number, end: number): void {
    this.#addReaching();
    const lead = attributes.exec(this.text.slice(start, end))?.[0] ?? '';
    const cell = this.#put(start + lead.length, end, this.#isRowStruck || strikesOut(lead));
    const spans = new Map(
      Array.from(lead.matchAll(spanned), ([, kind = '', count]) => [kind, Number(count)]),
    );
    const [rows, columns] = [spans.get('row') ?? 1, spans.get('col') ?? 1];
    for (let at = 0; at < columns && this.#spanned < mostSpanned; at++) {
      if (at > 0) this.#cells.put(this.#cells.ends[cell], this.#cells.ends[cell]);
      this.#reaching[this.#column++] = { cell: at === 0 ? cell : -1, rows: rows - 1 };
      if (rows > 1 || at > 0) this.#spanned++;
    }
  }

  #put(start: number, end: number, isStruck = false): number {
    const cell = this.#cells.add(start, end);
    const written = this.#cells.value(cell);
    const kept = this.#struck.read(cell, written, isStruck);
    const plain = withoutInlineMarks(kept).replace(marks, '').trim();
    if (plain !== written) this.#cells.rewritten.set(cell, plain);
    return cell;
  }

  /** Repeats the cells that reach down to the open row at its next columns. */
  #addReaching(): void {
    for (;;) {
      const above = this.#reaching[this.#column];
      if (!above || above.rows <= 0 || this.#spanned >= mostSpanned) return;
      above.rows--;
      this.#column++;
      this.#spanned++;
      const { cell } = above;
      const added = this.#cells.put(
        cell < 0 ? 0 : this.#cells.starts[cell],
        cell < 0 ? 0 : this.#cells.ends[cell],
      );
      const value = this.#cells.rewritten.get(cell);
      if (value !== undefined) this.#cells.rewritten.set(added, value);
    }
  }

  #endRow(): void {
    if (this.#isInRow) {
      this.#addReaching();
      this.#cells.endRow();
      this.#struck.endRow(this.#cells.rowCount - 1);
    }
    this.#isInRow = false;
    this.#column = 0;
  }
}
