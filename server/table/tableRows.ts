import type { CellKind } from './cellKinds';
import { lookAt } from './cellKinds';
import type { TableCells } from './cells';
import { isRuling } from './delimiter';
import { readHeading } from './headings';

/** The parts of a table: where its headings are and which rows are left for zones. */
export interface TableRows {
  /** The row of headings, or −1. */
  heading: number;
  /** Rows that may be zones, in the order of the text. */
  data: number[];
  /** Rows that say the headings again. */
  repeated: number[];
  /** Rows before the headings. */
  before: number[];
  /** The number of columns. */
  width: number;
  /** Rows that are wider than {@link mostColumns}. */
  cut: boolean;
}

/** Columns behind these are not looked at. */
export const mostColumns = 2000;
const headingWithin = 25;

/** Finds headings and data among the rows of a table. */
export function findRows(cells: TableCells): TableRows {
  const rows: number[] = [];
  let width = 0;
  for (let row = 0; row < cells.rowCount; row++) {
    if (cells.filled(row) === 0 || isRuling(cells, row)) continue;
    rows.push(row);
    width = Math.max(width, cells.width(row));
  }
  const heading = findHeading(cells, rows);
  const result: TableRows = {
    heading,
    data: [],
    repeated: [],
    before: [],
    width: Math.min(width, mostColumns),
    cut: width > mostColumns,
  };
  const headingText = heading < 0 ? undefined : rowText(cells, heading);
  for (const row of rows) {
    if (row < heading) result.before.push(row);
    else if (row > heading || heading < 0) {
      const again =
        headingText !== undefined &&
        cells.width(row) === cells.width(heading) &&
        rowText(cells, row) === headingText;
      (again ? result.repeated : result.data).push(row);
    }
  }
  return result;
}

function rowText(cells: TableCells, row: number): string {
  const { start, end } = cells.rowSpan(row);
  return cells.text.slice(start, Math.min(end, start + 2000));
}

/** The row among the first with the most known headings; else a first row without values above rows with values. */
function findHeading(cells: TableCells, rows: readonly number[]): number {
  let best = -1;
  let most = 0;
  for (const row of rows.slice(0, headingWithin)) {
    const filled = Math.min(cells.filled(row), mostColumns);
    const known = countKnown(cells, row);
    if (known <= most || filled < 2 || (known < 2 && filled > 2)) continue;
    if (known * 3 >= filled || countValues(cells, row) === 0) {
      best = row;
      most = known;
    }
  }
  if (best >= 0) return best;
  for (const [position, row] of rows.slice(0, headingWithin).entries()) {
    if (cells.filled(row) < 2) continue;
    const next = rows[position + 1];
    const bare = countValues(cells, row) === 0;
    return bare && next !== undefined && countValues(cells, next) > 0 ? row : -1;
  }
  return -1;
}

function countKnown(cells: TableCells, row: number): number {
  let known = 0;
  const width = Math.min(cells.width(row), mostColumns);
  for (let column = 0; column < width; column++) {
    const text = cells.value(cells.cell(row, column));
    if (text !== '' && readHeading(text)) known++;
  }
  return known;
}

/** Kinds that do not stand in headings; a switch can be a word or a letter. */
const valueKinds: ReadonlySet<CellKind> = new Set(['file', 'note', 'note-range', 'number', 'number-range']);

function countValues(cells: TableCells, row: number): number {
  let values = 0;
  const width = Math.min(cells.width(row), mostColumns);
  for (let column = 0; column < width; column++) {
    const { kind } = lookAt(cells.value(cells.cell(row, column)));
    if (valueKinds.has(kind)) values++;
  }
  return values;
}
