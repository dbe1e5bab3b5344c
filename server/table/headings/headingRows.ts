import { readHeading } from '../../trade/headings/headings';
import { unitOf } from '../../trade/languages/cellWords';
import { givesMeasuredUnit } from '../../trade/languages/measuredWords';
import { isSwitchTitle } from '../../trade/switchTitles';
import type { TableCells } from '../cells/cells';
import { namesAudioFile } from '../cells/namesAudioFile';
import { isRuling } from '../cells/split/delimiter';
import type { CellKind } from '../columns/cellKinds';
import { lookAt } from '../columns/cellKinds';

/** Columns behind these are not looked at. */
export const mostColumns = 2000;
const headingWithin = 25;
/** Digits are looked for among so many characters of a cell. */
const mostForDigits = 100;

/** The heading of one column. */
export interface ColumnHeading {
  /** As written, over two lines put together with a space; empty where there is none. */
  text: string;
  /** The cell that it stands in; −1 where there is none. */
  cell: number;
  /** Whether it stands in all cells of the column, in front of their values, and not above them. */
  isInCells?: boolean;
}

/** The row among the first with the most known headings; else a first row without values above rows with values. −1 for none. */
export function findHeading(cells: TableCells, rows: readonly number[]): number {
  let best = -1;
  let most = 0;
  const all = rows.slice(0, headingWithin);
  const first = all.slice(firstBelowProperties(cells, all)).filter((row) => !givesSwitch(cells, row));
  for (const row of first) {
    const filled = Math.min(cells.filled(row), mostColumns);
    const known = countKnown(cells, row);
    // Rows of values belong to the headings above them.
    if (most >= 2 && known < 2 && countValues(cells, row) > 0) break;
    if (known <= most || filled < 2 || (known < 2 && filled > 2)) continue;
    if (known * 3 >= filled || countValues(cells, row) === 0) {
      best = row;
      most = known;
    }
  }
  if (best >= 0) return best;
  const keyed = first.findIndex((row, at) => namesKeysAbove(cells, row, first[at + 1]));
  if (keyed >= 0) return first[keyed] ?? -1;
  for (const [position, row] of first.entries()) {
    if (cells.filled(row) < 2) continue;
    const next = rows[position + 1];
    if (countValues(cells, row) > 0) return -1;
    // Titles in several cells may stand above the headings.
    if (next !== undefined && countValues(cells, next) > 0) return row;
  }
  return -1;
}

/** So many known headings leave no doubt that a row has them. */
const fewestClear = 3;

/**
 * Where the rows begin that are below a block of properties, each of which is a name and a value, as `Author;N. N.;;;` in the columns of the
 * table: at the first row that has clearly headings, if all rows before hold fewer cells. 0 where there is no such block.
 */
function firstBelowProperties(cells: TableCells, rows: readonly number[]): number {
  for (const [at, row] of rows.entries()) {
    const filled = cells.filled(row);
    if (filled <= 2) {
      if (filled === 2 && (cells.isEmpty(row, 0) || countFiles(cells, row) > 0)) return 0;
      // Two headings above values begin a small table.
      const isHeading = filled === 2 && countKnown(cells, row) === 2 && countValues(cells, row) === 0;
      if (isHeading && countValues(cells, rows[at + 1] ?? row) > 0) return 0;
      continue;
    }
    const known = countKnown(cells, row);
    return known >= fewestClear && known * 2 > filled && countValues(cells, row) === 0 ? at : 0;
  }
  return 0;
}

function countFiles(cells: TableCells, row: number): number {
  let files = 0;
  const width = Math.min(cells.width(row), mostColumns);
  for (let column = 0; column < width; column++)
    // An ending alone is none.
    if (
      namesAudioFile(cells, cells.cell(row, column)) &&
      /[^\s*.]\./u.test(cells.value(cells.cell(row, column)))
    )
      files++;
  return files;
}

/** Whether a row speaks of a key switch with its number: the title of a section. */
function givesSwitch(cells: TableCells, row: number): boolean {
  if (cells.filled(row) > 3) return false;
  const { start, end } = cells.rowSpan(row);
  return end - start < 80 && isSwitchTitle(cells.text.slice(start, end));
}

/** Whether a row has a word and then a key in all its other cells, above a row of files: a table with a column for each key. */
function namesKeysAbove(cells: TableCells, row: number, next: number | undefined): boolean {
  const width = Math.min(cells.width(row), mostColumns);
  if (next === undefined || width < 3 || cells.filled(row) !== width) return false;
  if (valueKinds.has(lookAt(cells.plain(cells.cell(row, 0))).kind)) return false;
  for (let column = 1; column < width; column++) {
    if (!keyKinds.has(lookAt(cells.plain(cells.cell(row, column))).kind)) return false;
    if (!cells.isEmpty(next, column) && lookAt(cells.plain(cells.cell(next, column))).kind !== 'file')
      return false;
  }
  return cells.filled(next) > 1;
}

/** Whether a row below the headings of a table has headings of another one: words alone, most of them known. */
export function isHeadingRow(cells: TableCells, row: number): boolean {
  const width = Math.min(cells.width(row), mostColumns);
  let looked = 0;
  let known = 0;
  for (let column = 0; column < width; column++) {
    const cell = cells.cell(row, column);
    if (cells.starts[cell] === cells.ends[cell]) continue;
    // Rows of values nearly always have digits, headings seldom: `Take 2`, `2nd`.
    if (hasDigit(cells, cell) && !isCounted(cells, cell)) return false;
    const text = cells.value(cell);
    if (looked++ < 6 && readHeading(text)) known++;
    if (looked === 6 && known === 0) return false;
  }
  if (known < 2 || countValues(cells, row) > 0) return false;
  return countKnown(cells, row) * 2 >= cells.filled(row);
}

const longestCounted = 16;
const counted =
  /^(?:\p{L}{2,}[ ._-]?\d{1,2}|\d{1,2} ?(?:st|nd|rd|th|\.|[ºª°]|e|er|ère|ème|ra|ro|da|do|:a|:e|-ja|-й|-я|番目|番) ?\p{L}*)$/iu;

/** Whether a cell is a word with a number, as headings of columns of a kind are. */
function isCounted(cells: TableCells, cell: number): boolean {
  if (cells.ends[cell] - cells.starts[cell] > longestCounted) return false;
  return counted.test(cells.value(cell));
}

/** Whether a digit is among the first characters of a cell. */
function hasDigit(cells: TableCells, cell: number): boolean {
  if (cells.isRewritten(cell)) return /\d/.test(cells.value(cell).slice(0, mostForDigits));
  const end = Math.min(cells.ends[cell], cells.starts[cell] + mostForDigits);
  for (let at = cells.starts[cell]; at < end; at++) {
    if (cells.codes[at] >= 48 && cells.codes[at] <= 57) return true;
  }
  return false;
}

/** How many cells of a row are known headings; the name of a file is none, though it may start with a word for one. */
export function countKnown(cells: TableCells, row: number): number {
  let known = 0;
  const width = Math.min(cells.width(row), mostColumns);
  for (let column = 0; column < width; column++) {
    const cell = cells.cell(row, column);
    if (!namesAudioFile(cells, cell) && readHeading(cells.value(cell))) known++;
  }
  return known;
}

/** Kinds that do not stand in headings; a switch can be a word or a letter. */
const keyKinds: ReadonlySet<CellKind> = new Set(['note', 'note-range', 'number', 'number-range']);
const valueKinds: ReadonlySet<CellKind> = new Set(['file', 'note', 'note-range', 'number', 'number-range']);

/** How many cells of a row are files, keys or numbers. */
export function countValues(cells: TableCells, row: number): number {
  let values = 0;
  const width = Math.min(cells.width(row), mostColumns);
  for (let column = 0; column < width; column++) {
    if (valueKinds.has(lookAt(cells.plain(cells.cell(row, column))).kind)) values++;
  }
  return values;
}

/**
 * The headings of all columns, from the row that was found and the one above or below it where the two belong together:
 * `Key` over `Low` and `High`, `Volume` over `(dB)`. Answers the rows that they stand in too.
 */
export function headingsOf(
  cells: TableCells,
  row: number,
  width: number,
): { headings: ColumnHeading[]; rows: number[] } {
  const candidates = [
    [row, row + 1],
    [row - 1, row],
  ] as const;
  let best: ColumnHeading[] | undefined;
  let bestRows: number[] = [row];
  let most = 0;
  for (const [upper, lower] of candidates) {
    if (upper < 0 || lower >= cells.rowCount) continue;
    const other = upper === row ? lower : upper;
    if (isTitle(cells, other) || isRuling(cells, other)) continue;
    if (cells.filled(other) === 0 || countValues(cells, other) > 0) continue;
    const { headings, gain } = combined(cells, upper, lower, width);
    if (gain <= most) continue;
    best = headings;
    bestRows = [upper, lower];
    most = gain;
  }
  return { headings: best ?? singleHeadings(cells, row, width), rows: bestRows };
}

/** The headings that stand in one row. */
export function singleHeadings(cells: TableCells, row: number, width: number): ColumnHeading[] {
  return Array.from({ length: width }, (_, column) => headingAt(cells, cells.cell(row, column)));
}

function headingAt(cells: TableCells, cell: number): ColumnHeading {
  const text = cells.value(cell);
  return text === '' ? { text, cell: -1 } : { text, cell };
}

/** A row of one cell in the first column. */
function isTitle(cells: TableCells, row: number): boolean {
  return cells.filled(row) === 1 && !cells.isEmpty(row, 0);
}

/**
 * For the columns of a line with bars, the column of the line above that reaches over it, where that line has fewer bars;
 * `undefined` where both have as many, or none.
 */
function placesAbove(cells: TableCells, upper: number, lower: number): number[] | undefined {
  if (
    cells.width(upper) >= cells.width(lower) ||
    cells.rowSpans ||
    cells.rowFirst[upper] === cells.rowFirst[lower]
  )
    return undefined;
  const [above, below] = [barsOf(cells, upper), barsOf(cells, lower)];
  if (above.length === 0 || above.length >= below.length) return undefined;
  const lead = (cells.width(upper) > above.length ? 0 : 1) as number;
  const edges = cells.width(lower) > below.length ? [0, ...below] : below;
  return edges.slice(0, cells.width(lower)).map((from, at) => {
    const to = edges[at + 1] ?? from + 2;
    const middle = (from + to) / 2;
    return above.filter((bar) => bar < middle).length - lead;
  });
}

/** Where the bars of a line stand, counted from its start. */
function barsOf(cells: TableCells, row: number): number[] {
  const { start, end } = cells.rowSpan(row);
  const lineStart = cells.text.lastIndexOf('\n', start - 1) + 1;
  const next = cells.text.indexOf('\n', end);
  const line = cells.text.slice(lineStart, next < 0 ? cells.text.length : next).slice(0, 2000);
  return Array.from(line.matchAll(/\|/g), ({ index }) => index);
}

/** Two lines as headings; `gain` counts the columns that only both together, or the upper line alone, explain. */
function combined(
  cells: TableCells,
  upper: number,
  lower: number,
  width: number,
): { headings: ColumnHeading[]; gain: number } {
  const headings: ColumnHeading[] = [];
  let gain = 0;
  let reaching = '';
  const places = placesAbove(cells, upper, lower);
  for (let column = 0; column < width; column++) {
    const above = headingAt(cells, cells.cell(upper, places ? (places[column] ?? -1) : column));
    const below = headingAt(cells, cells.cell(lower, column));
    if (above.text !== '' || places) reaching = above.text;
    const cell = below.cell >= 0 ? below.cell : above.cell;
    const alone = below.text === '' ? undefined : readHeading(below.text);
    const both = below.text === '' || reaching === '' ? undefined : `${reaching} ${below.text}`;
    const together = both === undefined ? undefined : readHeading(both);
    const isUnit = unitOf(below.text.replace(/[()[\]]/g, '').trim()) !== undefined;
    const isOther = together?.meaning !== alone?.meaning || together?.unit !== alone?.unit;
    if (together && (isOther || (isUnit && reaching !== ''))) {
      gain++;
      headings.push({ text: both as string, cell });
    } else if (alone) headings.push(below);
    // A unit that is only measured tells what the word above it is no word for.
    else if (readHeading(above.text) && !givesMeasuredUnit(below.text)) headings.push(above);
    else headings.push({ text: `${above.text} ${below.text}`.trim(), cell });
  }
  return { headings, gain };
}
