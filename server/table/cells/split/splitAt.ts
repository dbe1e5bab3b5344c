import { keptTextBytes } from '../../../model/text/textBytes';
import { textStart } from '../../../model/text/textLayout';
import { TableCells } from '../cells';

/** How the cells of a row are kept apart: by a character, or by standing below one another. */
export type Delimiter = 'tab' | 'semicolon' | 'bar' | 'comma' | 'space' | 'columns';

/** The character codes of delimiters. */
export const delimiterCodes: Readonly<Record<Exclude<Delimiter, 'columns'>, number>> = {
  tab: 9,
  semicolon: 59,
  bar: 124,
  comma: 44,
  space: 32,
};

/** The number of cells is guessed from so many characters. */
const counted = 1 << 14;

const tab = 9;
const lineFeed = 10;
const carriageReturn = 13;
const space = 32;
const quote = 34;
const backslash = 92;
const bar = 124;
const plus = 43;
const minus = 45;
const equals = 61;
/** Codes from here on are not ASCII. */
const beyondAscii = 0x80;

/**
 * Splits a text at a delimiter into cells, with quoting after RFC 4180: a cell that starts with a quotation mark
 * reaches to the mark that closes it, line breaks and delimiters included, and a doubled mark stands for one. A mark
 * that nothing closes is an ordinary character. CRLF, CR and LF end a row. With bars, those around the whole row
 * count as borders, and `\|` stands for a bar. Takes time linear in the length of the text.
 */
export function splitAt(text: string, delimiter: Exclude<Delimiter, 'columns'>): TableCells {
  const code = delimiterCodes[delimiter];
  const codes = keptTextBytes(text, lineFeed);
  const cells = new TableCells(text, codes, likelyCells(codes, code));
  const bordered = code === bar && hasBorders(cells);
  const length = text.length;
  let at = textStart(text);
  let rowStart = at;
  while (at < length) {
    if (bordered && at === rowStart) {
      while (at < length && isBlank(cells, at)) at++;
      if (codes[at] === bar) at++;
    }
    const first = codes[at];
    // Most cells start and end with a character that needs no second look.
    if (first > quote && first < beyondAscii && first !== code && !bordered) {
      const start = at;
      at = nextStop(codes, at + 1, code, code);
      const last = codes[at - 1];
      if (last > space && last < beyondAscii) cells.put(start, at);
      else cells.add(start, at);
    } else at = addCell(cells, at, code, bordered, rowStart);
    if (at >= length) break;
    if (codes[at] === code) {
      at++;
      // A delimiter at the very end of the text opens one more, empty cell.
      if (at >= length && !bordered) cells.put(at, at);
    } else {
      if (codes[at] === carriageReturn && codes[at + 1] === lineFeed && at + 1 < length) at++;
      at++;
      cells.endRow();
      rowStart = at;
    }
  }
  if (cells.rowFirst[cells.rowCount] < cells.cellCount) cells.endRow();
  return cells;
}

/**
 * Adds the cell that starts at `start`, if one does, and answers where its delimiter or line end stands. With `bordered`,
 * bars stand around the whole row, and `\|` for a bar.
 */
function addCell(
  cells: TableCells,
  start: number,
  code: number,
  bordered: boolean,
  rowStart: number,
): number {
  const { codes } = cells;
  const { length } = cells.text;
  // Among bars, `\|` is no end of a cell.
  const escaping = bordered ? backslash : code;
  let at = start;
  while (at < length && codes[at] !== code && isBlank(cells, at)) at++;
  if (codes[at] === quote && !bordered && !isLoneMark(codes, at, code)) {
    const end = addQuoted(cells, at, code);
    if (end >= 0) return end;
  }
  let end = nextStop(codes, at, code, escaping);
  let escaped = false;
  while (bordered && codes[end] === backslash) {
    const escapes = codes[end + 1] === bar;
    if (escapes) escaped = true;
    end = nextStop(codes, end + (escapes ? 2 : 1), code, escaping);
  }
  // White space up to the end of a row is the rest of it, not a cell, at its start or behind its border.
  const blank = at === end && (end >= length || isLineEnd(codes[end]));
  if (!blank || (start > rowStart && !bordered)) {
    const cell = cells.add(start, end);
    if (escaped) cells.rewritten.set(cell, spanText(cells, cell).replaceAll('\\|', '|'));
  }
  return end;
}

/** About how many cells a text has, from what stands at its start. */
function likelyCells(codes: Uint8Array, code: number): number {
  const length = Math.min(codes.length, counted);
  let stops = 0;
  for (let at = 0; at < length; at++) if (codes[at] === code || codes[at] === lineFeed) stops++;
  return Math.min(Math.ceil((stops / length) * codes.length * 1.05), codes.length >> 2) + 1;
}

/** Where the next line end, `code` or `other` stands, from `start` on; a line end stands behind all text. */
function nextStop(codes: Uint8Array, start: number, code: number, other: number): number {
  // Most characters are greater than tab, comma and line ends.
  const greatest = Math.max(carriageReturn, code, other);
  let at = start;
  for (;;) {
    while (codes[at] > greatest) at++;
    const next = codes[at];
    if (next === code || next === other || (next <= carriageReturn && isLineEnd(next))) return at;
    at++;
  }
}

function isLineEnd(code: number): boolean {
  return code === lineFeed || code === carriageReturn;
}

/** White space within a line. */
function isBlank(cells: TableCells, at: number): boolean {
  return cells.isSpace(at) && !isLineEnd(cells.codes[at]);
}

function spanText(cells: TableCells, cell: number): string {
  return cells.text.slice(cells.starts[cell], cells.ends[cell]);
}

/**
 * Adds the quoted cell that opens at `open` and answers where its delimiter or line end stands; −1 where the mark is
 * never closed or other text follows the closing mark. A failed attempt reads at most up to the next mark that is
 * not doubled, and no later attempt starts before that one other than at doubled marks, so the whole stays linear.
 */
function addQuoted(cells: TableCells, open: number, code: number): number {
  const { text, codes } = cells;
  let doubled = false;
  let close = text.indexOf('"', open + 1);
  while (close >= 0 && codes[close + 1] === quote) {
    doubled = true;
    close = text.indexOf('"', close + 2);
  }
  if (close < 0) return -1;
  let end = close + 1;
  while (end < text.length && codes[end] !== code && isBlank(cells, end)) end++;
  if (end < text.length && codes[end] !== code && !isLineEnd(codes[end])) return -1;
  const cell = cells.add(open + 1, close);
  if (doubled) cells.rewritten.set(cell, spanText(cells, cell).replaceAll('""', '"'));
  return end;
}

/**
 * A quotation mark that stands alone says "the same as above"; it opens no quoted cell. Behind commas and semicolons a cell may be quoted
 * that starts with a line break.
 */
function isLoneMark(codes: Uint8Array, at: number, code: number): boolean {
  let next = at + 1;
  while (codes[next] === space || (codes[next] === tab && code !== tab)) next++;
  if (codes[next] === code) return true;
  return isLineEnd(codes[next]) && (code === tab || code === bar || isLoneBefore(codes, at, code));
}

/** Whether the cell before a mark is one as well. */
function isLoneBefore(codes: Uint8Array, at: number, code: number): boolean {
  let before = at - 1;
  while (codes[before] === space) before--;
  if (codes[before] !== code) return false;
  before--;
  while (codes[before] === space) before--;
  if (codes[before] !== quote) return false;
  before--;
  while (codes[before] === space) before--;
  return codes[before] === code;
}

/** Whether most lines of a text start with a bar; lines drawn with `+---` do not count. */
function hasBorders(cells: TableCells): boolean {
  const { text, codes } = cells;
  let lines = 0;
  let bars = 0;
  let at = textStart(text);
  for (let looked = 0; at < text.length && looked < 200; looked++) {
    while (at < text.length && cells.isSpace(at)) at++;
    if (at >= text.length) break;
    const isDrawn = codes[at] === plus && (codes[at + 1] === minus || codes[at + 1] === equals);
    if (!isDrawn) lines++;
    if (codes[at] === bar) bars++;
    while (at < text.length && !isLineEnd(codes[at])) at++;
  }
  return bars * 2 > lines;
}
