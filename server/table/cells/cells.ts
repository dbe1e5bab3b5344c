import { keptTextBytes } from '../../model/text/textBytes';
import { mostDecimals } from '../../trade/decimal';
import type { CutEnd } from './cutPlace';
import type { Answer } from './markup/answers';
import { areQuoted } from './typographicMarks';

const lineFeed = 10;
/** Codes from here on are not ASCII; see {@link TableCells.codes}. */
const beyondAscii = 0x80;
/** Digits whose number, and whose number of thousandths and so on, a double holds exactly. */
const mostExactDigits = 15;
/** Numbers below are written with digits alone, and their decimals are exact. */
const mostWritten = 1e9;
/** Digits of the largest number of 32 bits. */
const mostWholeDigits = 10;
const powers = Array.from({ length: mostExactDigits + 1 }, (_, digits) => 10 ** digits);

/** What was assumed of a stretch of the text, in sentences for people; `dropped` where it is left out. */
export interface Assumption {
  text: string;
  start: number;
  end: number;
  kind?: 'dropped';
}

/**
 * The cells of a table in flat lists, row by row. A cell's span is that of its content: without the white space
 * around it and without its quotation marks. Much is read from {@link codes}, without a string being cut out.
 */
export class TableCells {
  /** UTF-16 offsets of all cells; there may be room behind the last. */
  starts: Int32Array;
  ends: Int32Array;
  cellCount = 0;
  /** The first cell of each row, and one past the last cell of all at the end. */
  rowFirst = new Int32Array(64);
  rowCount = 0;
  /** Cells that read otherwise than the text at their span: doubled quotation marks, escaped bars. */
  readonly rewritten = new Map<number, string>();
  /** The stretch of text that each row stands for, where that is not simply from its first cell to its last. */
  rowSpans: readonly { start: number; end: number }[] | undefined;

  /** Whether the cells are parted by spaces, or by where they stand. */
  bySpaces = false;

  /** Whether each row stands for itself, as objects of a script do: what one does not give, it does not take from the one above. */
  areRecords = false;

  /** What stands in brackets behind the names of files, or a mark, by the cells of the names. */
  readonly nameRemarks = new Map<number, string>();

  /** Texts that belong to the table and stand in none of its rows, such as comments in a script. */
  around: readonly string[] = [];

  /** Rows that are struck out. */
  readonly struckRows = new Set<number>();

  /** Rows that the text around says not to use. */
  readonly unusedRows = new Set<number>();

  /** The ending that the text around gives for files that are named without. */
  statedEnding: { is: string; text: string } | undefined;

  /** Remarks beside the rows that name a sample of their own, such as a row that was made a comment. */
  remarks: readonly { text: string; start: number; end: number }[] = [];

  /** What somebody wrote below quoted lines that hold the table. */
  answers: readonly Answer[] = [];

  /** What was assumed when the rows were made, in sentences for people. */
  assumptions: readonly Assumption[] = [];

  /** Where the text ends before what it began is complete. */
  cutEnd: CutEnd | undefined;

  /** Rows of a page that are not shown; none of their cells are in the list. */
  hiddenRows: readonly { start: number; end: number }[] = [];

  #filled: Int32Array | undefined;

  constructor(
    readonly text: string,
    /** One code for each UTF-16 unit, ASCII as it is and others 128 or more, and a line feed behind the last. */
    readonly codes: Uint8Array = keptTextBytes(text, lineFeed),
    /** How many cells there are likely to be. */
    likely: number = text.length >> 3,
  ) {
    const expected = Math.max(64, likely);
    this.starts = new Int32Array(expected);
    this.ends = new Int32Array(expected);
  }

  /** The number of cells in a row; 0 for a blank line. */
  width(row: number): number {
    return this.rowFirst[row + 1] - this.rowFirst[row];
  }

  /** The number of a row's cell, or −1 where the row is too short. */
  cell(row: number, column: number): number {
    const cell = this.rowFirst[row] + column;
    return cell < this.rowFirst[row + 1] ? cell : -1;
  }

  /** What a cell reads; empty for −1. */
  value(cell: number): string {
    if (cell < 0) return '';
    const rewritten = this.rewritten.size === 0 ? undefined : this.rewritten.get(cell);
    return rewritten ?? this.text.slice(this.starts[cell], this.ends[cell]);
  }

  /** What a cell reads with compatibility characters, such as full-width digits and `½`, written in the usual ones. */
  plain(cell: number): string {
    const text = this.value(cell);
    for (let at = 0; at < text.length; at++) {
      if (text.charCodeAt(at) > 126) return usualCharacters(text);
    }
    return text;
  }

  /** Whether a cell reads otherwise than the text at its span. */
  isRewritten(cell: number): boolean {
    return this.rewritten.size > 0 && this.rewritten.has(cell);
  }

  /** The number in a cell of plain digits, at most `most` of them (15 at most); −1 for anything else. */
  digits(cell: number, most: number): number {
    if (cell < 0) return -1;
    const { codes } = this;
    const end = this.ends[cell];
    let at = this.starts[cell];
    if (at === end || end - at > most || this.isRewritten(cell)) return -1;
    let number = 0;
    for (; at < end; at++) {
      const digit = codes[at] - 48;
      if (digit < 0 || digit > 9) return -1;
      number = number * 10 + digit;
    }
    return number;
  }

  /** The number in a cell of digits, with `-` before and a decimal point among them or not; NaN for anything else. */
  number(cell: number): number {
    if (cell < 0 || this.isRewritten(cell)) return Number.NaN;
    const { codes } = this;
    const start = this.starts[cell];
    const end = this.ends[cell];
    const negative = codes[start] === 45;
    const first = negative ? start + 1 : start;
    let number = 0;
    let point = -1;
    for (let at = first; at < end; at++) {
      const digit = codes[at] - 48;
      if (digit >= 0 && digit <= 9) number = number * 10 + digit;
      else if (digit === -2 && point < 0) point = at;
      else return Number.NaN;
    }
    const whole = (point < 0 ? end : point) - first;
    const decimals = point < 0 ? 0 : end - point - 1;
    if (whole === 0 || (point >= 0 && decimals === 0)) return Number.NaN;
    if (whole + decimals > mostExactDigits) {
      return whole > 15 || decimals > 15 ? Number.NaN : Number(this.text.slice(start, end));
    }
    if (decimals > 0) number /= powers[decimals];
    return negative ? -number : number;
  }

  /** Whether the text of a cell is exactly how a number is written; see {@link decimal}. */
  reads(cell: number, number: number): boolean {
    if (this.isRewritten(cell)) return false;
    const { codes } = this;
    const start = number < 0 ? this.starts[cell] + 1 : this.starts[cell];
    const end = this.ends[cell];
    if (number < 0 && codes[start - 1] !== 45) return false;
    const whole = Math.abs(number) | 0;
    if (whole !== Math.abs(number)) return this.#readsDecimals(start, end - 1, cell, number);
    if (start >= end || end - start > mostWholeDigits || (codes[start] === 48 && end - start > 1))
      return false;
    let read = 0;
    for (let at = start; at < end; at++) {
      const digit = codes[at] - 48;
      if (digit < 0 || digit > 9) return false;
      read = read * 10 + digit;
    }
    return read === whole;
  }

  /** As {@link reads}, for a number that is not whole or is large; `start` and `last` are its first and last digit. */
  #readsDecimals(start: number, last: number, cell: number, number: number): boolean {
    const { codes } = this;
    if (codes[start] === 48 && codes[start + 1] !== 46) return false;
    if (number !== Math.floor(number)) {
      if (codes[last] === 48) return false;
      let point = last;
      while (point > start && codes[point] !== 46) point--;
      if (last - point > mostDecimals) return false;
    }
    return Math.abs(number) < mostWritten && this.number(cell) === number;
  }

  /** Whether a cell, by row and column, is empty or missing. */
  isEmpty(row: number, column: number): boolean {
    const cell = this.cell(row, column);
    return cell < 0 || this.starts[cell] === this.ends[cell];
  }

  /** The number of cells of a row that hold something. */
  filled(row: number): number {
    this.#filled ??= this.#countFilled();
    return this.#filled[row];
  }

  /** Makes a cell of a row empty; what stood in it counts no more. */
  empty(row: number, cell: number): void {
    this.rewritten.delete(cell);
    if (this.starts[cell] === this.ends[cell]) return;
    this.ends[cell] = this.starts[cell];
    if (this.#filled) this.#filled[row]--;
  }

  /** The text of a row: from the start of its first cell to the end of its last. */
  rowSpan(row: number): { start: number; end: number } {
    return { start: this.rowStart(row), end: this.rowEnd(row) };
  }

  /** Where {@link rowSpan} starts and ends: numbers alone, for who asks for all rows. */
  rowStart(row: number): number {
    const span = this.rowSpans?.[row];
    if (span) return span.start;
    return this.width(row) > 0 ? this.starts[this.rowFirst[row]] : 0;
  }

  rowEnd(row: number): number {
    const span = this.rowSpans?.[row];
    if (span) return span.end;
    return this.width(row) > 0 ? this.ends[this.rowFirst[row + 1] - 1] : 0;
  }

  /** Adds a cell to the row that is open, without white space and typographic quotation marks around its text, and answers its number. */
  add(start: number, end: number): number {
    let from = start;
    let to = end;
    while (from < to && this.isSpace(from)) from++;
    while (to > from && this.isSpace(to - 1)) to--;
    if (this.codes[from] >= beyondAscii && to - from > 2 && areQuoted(this.text, from, to))
      return this.add(from + 1, to - 1);
    return this.put(from, to);
  }

  /** Adds a cell as it is. */
  put(start: number, end: number): number {
    const cell = this.cellCount++;
    if (cell >= this.starts.length) {
      this.starts = grown(this.starts);
      this.ends = grown(this.ends);
    }
    this.starts[cell] = start;
    this.ends[cell] = end;
    return cell;
  }

  /** Ends a row; all cells added since the last one stand in it. */
  endRow(): void {
    const row = ++this.rowCount;
    if (row >= this.rowFirst.length) this.rowFirst = grown(this.rowFirst);
    this.rowFirst[row] = this.cellCount;
    this.#filled = undefined;
  }

  /** Whether a character is white space, of any width, or a sign that shows nothing; see {@link isUnseen}. */
  isSpace(at: number): boolean {
    const code = this.codes[at];
    if (code > 32) return code >= beyondAscii && isUnseen(this.text.charCodeAt(at));
    return code === 32 || code === 9 || code === 10 || code === 13;
  }

  #countFilled(): Int32Array {
    const { starts, ends, rowFirst } = this;
    const filled = new Int32Array(this.rowCount);
    for (let row = 0; row < this.rowCount; row++) {
      const end = rowFirst[row + 1];
      let count = 0;
      for (let cell = rowFirst[row]; cell < end; cell++) if (starts[cell] !== ends[cell]) count++;
      filled[row] = count;
    }
    return filled;
  }
}

function grown(list: Int32Array): Int32Array<ArrayBuffer> {
  const longer = new Int32Array(list.length * 2);
  longer.set(list);
  return longer;
}

/**
 * Whether a character beyond ASCII leaves no mark: a space of any width, a zero-width space or joiner, or a sign of the
 * direction of writing (Unicode's categories Zs and Cf).
 */
export function isUnseen(code: number): boolean {
  if (code < 0x2000) return code === 0xa0 || code === 0xad || code === 0x61c || code === 0x1680;
  return (
    code <= 0x200f ||
    (code >= 0x202a && code <= 0x202f) ||
    (code >= 0x205f && code <= 0x206f) ||
    code === 0x3000 ||
    code === 0xfeff
  );
}

function usualCharacters(text: string): string {
  return (
    text
      .replace(/[\u00ad\u061c\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff]/g, '')
      // A raised digit behind a number is the sign of a footnote.
      .replace(/(?<=[\p{L}\p{N}%)])[\u00b9\u00b2\u00b3\u2070-\u2079]+(?=$|[\s,;])/gu, '*')
      .replace(/[\u00bc-\u00be\u2150-\u215e]/g, ' $&')
      .normalize('NFKC')
      .trim()
  );
}
