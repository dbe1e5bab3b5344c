/** How the cells of a row are kept apart: by a character, or by standing below one another. */
export type Delimiter = 'tab' | 'semicolon' | 'bar' | 'comma' | 'space' | 'columns';

const characters: Readonly<Record<Exclude<Delimiter, 'columns'>, number>> = {
  tab: 9,
  semicolon: 59,
  bar: 124,
  comma: 44,
  space: 32,
};

const tab = 9;
const lineFeed = 10;
const carriageReturn = 13;
const space = 32;
const quote = 34;
const backslash = 92;
const bar = 124;
const noBreakSpace = 0xa0;
const byteOrderMark = 0xfeff;

/**
 * The cells of a table in flat lists, row by row. A cell's span is that of its content: without the white space
 * around it and without its quotation marks.
 */
export class TableCells {
  /** UTF-16 offsets of all cells. */
  readonly starts: number[] = [];
  readonly ends: number[] = [];
  /** The first cell of each row, and one past the last cell of all at the end. */
  readonly rowFirst: number[] = [0];
  /** Cells that read otherwise than the text at their span: doubled quotation marks, escaped bars. */
  readonly rewritten = new Map<number, string>();
  /** The stretch of text that each row stands for, where that is not simply from its first cell to its last. */
  rowSpans: readonly { start: number; end: number }[] | undefined;

  /** Whether the cells are parted by spaces, or by where they stand. */
  bySpaces = false;

  constructor(readonly text: string) {}

  get rowCount(): number {
    return this.rowFirst.length - 1;
  }

  /** The number of cells in a row; 0 for a blank line. */
  width(row: number): number {
    return (this.rowFirst[row + 1] as number) - (this.rowFirst[row] as number);
  }

  /** The number of a row's cell, or −1 where the row is too short. */
  cell(row: number, column: number): number {
    const cell = (this.rowFirst[row] as number) + column;
    return cell < (this.rowFirst[row + 1] as number) ? cell : -1;
  }

  /** What a cell reads; empty for −1. */
  value(cell: number): string {
    if (cell < 0) return '';
    return this.rewritten.get(cell) ?? this.text.slice(this.starts[cell], this.ends[cell]);
  }

  /** What a cell reads with compatibility characters, such as full-width digits and `½`, written in the usual ones. */
  plain(cell: number): string {
    const text = this.value(cell);
    for (let at = 0; at < text.length; at++) {
      if (text.charCodeAt(at) > 126) return usualCharacters(text);
    }
    return text;
  }

  /** Whether a cell, by row and column, is empty or missing. */
  isEmpty(row: number, column: number): boolean {
    const cell = this.cell(row, column);
    return cell < 0 || this.starts[cell] === this.ends[cell];
  }

  /** The number of cells of a row that hold something. */
  filled(row: number): number {
    let filled = 0;
    const end = this.rowFirst[row + 1] as number;
    for (let cell = this.rowFirst[row] as number; cell < end; cell++) {
      if (this.starts[cell] !== this.ends[cell]) filled++;
    }
    return filled;
  }

  /** The text of a row: from the start of its first cell to the end of its last. */
  rowSpan(row: number): { start: number; end: number } {
    const span = this.rowSpans?.[row];
    if (span) return span;
    const first = this.rowFirst[row] as number;
    const last = (this.rowFirst[row + 1] as number) - 1;
    if (last < first) return { start: 0, end: 0 };
    return { start: this.starts[first] as number, end: this.ends[last] as number };
  }

  add(start: number, end: number): void {
    let from = start;
    let to = end;
    while (from < to && isSpace(this.text.charCodeAt(from))) from++;
    while (to > from && isSpace(this.text.charCodeAt(to - 1))) to--;
    this.starts.push(from);
    this.ends.push(to);
  }

  endRow(): void {
    this.rowFirst.push(this.starts.length);
  }
}

function usualCharacters(text: string): string {
  return text
    .replace(/[\u00bc-\u00be\u2150-\u215e]/g, ' $&')
    .normalize('NFKC')
    .trim();
}

/** Where the text of a table starts: behind a byte order mark. */
export function textStart(text: string): number {
  return text.charCodeAt(0) === byteOrderMark ? 1 : 0;
}

function isSpace(code: number): boolean {
  return (
    code === space || code === tab || code === noBreakSpace || code === lineFeed || code === carriageReturn
  );
}

function isLineEnd(code: number): boolean {
  return code === lineFeed || code === carriageReturn;
}

/**
 * Splits a text at a delimiter into cells, with quoting after RFC 4180: a cell that starts with a quotation mark
 * reaches to the mark that closes it, line breaks and delimiters included, and a doubled mark stands for one. A mark
 * that nothing closes is an ordinary character. CRLF, CR and LF end a row. With bars, those around the whole row
 * count as borders, and `\|` stands for a bar. Takes time linear in the length of the text.
 */
export function splitAt(text: string, delimiter: Exclude<Delimiter, 'columns'>): TableCells {
  const code = characters[delimiter];
  const cells = new TableCells(text);
  const bordered = code === bar && hasBorders(text);
  const length = text.length;
  let at = textStart(text);
  let rowStart = at;
  while (at < length) {
    if (bordered && at === rowStart) {
      while (at < length && isBlank(text.charCodeAt(at))) at++;
      if (text.charCodeAt(at) === bar) at++;
    }
    const cellStart = at;
    while (at < length && isBlank(text.charCodeAt(at)) && text.charCodeAt(at) !== code) at++;
    let end = -1;
    if (text.charCodeAt(at) === quote && !bordered && !isLoneMark(text, at, code))
      end = addQuoted(cells, at, code);
    if (end < 0) {
      at = cellStart;
      let escaped = false;
      let character = text.charCodeAt(at);
      while (at < length && character !== code && !isLineEnd(character)) {
        if (bordered && character === backslash && text.charCodeAt(at + 1) === bar) {
          escaped = true;
          at++;
        }
        character = text.charCodeAt(++at);
      }
      end = at;
      const rowEnds = end >= length || isLineEnd(text.charCodeAt(end));
      const blank = rowEnds && isAllBlank(text, cellStart, end);
      const behindBorder = bordered && blank && cellStart > rowStart;
      if (!behindBorder && !(blank && cellStart === rowStart)) {
        cells.add(cellStart, end);
        if (escaped) unescapeBars(cells);
      }
    }
    at = end;
    if (at >= length) break;
    if (text.charCodeAt(at) === code) {
      at++;
      // A delimiter at the very end of the text opens one more, empty cell.
      if (at >= length && !bordered) cells.add(at, at);
    } else {
      if (text.charCodeAt(at) === carriageReturn && text.charCodeAt(at + 1) === lineFeed) at++;
      at++;
      cells.endRow();
      rowStart = at;
    }
  }
  if ((cells.rowFirst.at(-1) as number) < cells.starts.length) cells.endRow();
  return cells;
}

function isBlank(code: number): boolean {
  return code === space || code === tab || code === noBreakSpace;
}

function isAllBlank(text: string, start: number, end: number): boolean {
  for (let at = start; at < end; at++) if (!isBlank(text.charCodeAt(at))) return false;
  return true;
}

/**
 * Adds the quoted cell that opens at `open` and answers where its delimiter or line end stands; −1 where the mark is
 * never closed or other text follows the closing mark. A failed attempt reads at most up to the next mark that is
 * not doubled, and no later attempt starts before that one other than at doubled marks, so the whole stays linear.
 */
function addQuoted(cells: TableCells, open: number, code: number): number {
  const { text } = cells;
  let doubled = false;
  let close = text.indexOf('"', open + 1);
  while (close >= 0 && text.charCodeAt(close + 1) === quote) {
    doubled = true;
    close = text.indexOf('"', close + 2);
  }
  if (close < 0) return -1;
  let end = close + 1;
  while (end < text.length && isBlank(text.charCodeAt(end)) && text.charCodeAt(end) !== code) end++;
  if (end < text.length && text.charCodeAt(end) !== code && !isLineEnd(text.charCodeAt(end))) return -1;
  cells.add(open + 1, close);
  if (doubled) {
    const cell = cells.starts.length - 1;
    cells.rewritten.set(cell, text.slice(cells.starts[cell], cells.ends[cell]).replaceAll('""', '"'));
  }
  return end;
}

/** Between tabs, a quotation mark that stands alone says "the same as above"; it opens no quoted cell. */
function isLoneMark(text: string, at: number, code: number): boolean {
  const next = text.charCodeAt(at + 1);
  return code === tab && (next === code || isLineEnd(next));
}

function unescapeBars(cells: TableCells): void {
  const cell = cells.starts.length - 1;
  cells.rewritten.set(cell, cells.text.slice(cells.starts[cell], cells.ends[cell]).replaceAll('\\|', '|'));
}

/** Whether most lines of a text start with a bar. */
function hasBorders(text: string): boolean {
  let lines = 0;
  let bars = 0;
  let at = textStart(text);
  while (at < text.length && lines < 200) {
    while (at < text.length && isSpace(text.charCodeAt(at))) at++;
    if (at >= text.length) break;
    lines++;
    if (text.charCodeAt(at) === bar) bars++;
    while (at < text.length && !isLineEnd(text.charCodeAt(at))) at++;
  }
  return bars * 2 > lines;
}
