import { namesAudioFileIn } from '../../../model/fileNames';
import type { TableCells } from '../../cells/cells';
import type { TableRows } from '../../cells/tableRows';
import { repeatsHeadings } from '../../cells/tableRows';

/** Lines that stand over a table, its headings not among them. */
export interface LinesOver {
  rows: readonly number[];
  texts: readonly string[];
}

/** So many lines are looked at. */
const mostLines = 12;
const mostLooked = 40;
const longest = 600;

/** The lines between the first zone of a table and the zone before it, or the start of the text. */
export function linesOver(cells: TableCells, firstZone: number, headings: ReadonlySet<number>): LinesOver {
  const rows: number[] = [];
  for (
    let row = firstZone - 1;
    row >= Math.max(0, firstZone - mostLooked) && rows.length < mostLines;
    row--
  ) {
    if (cells.filled(row) === 0 || headings.has(row)) continue;
    if (namesFile(cells, row)) break;
    rows.unshift(row);
  }
  return { rows, texts: rows.map((row) => rowText(cells, row)) };
}

/** Whether a row names an audio file. */
export function namesFile(cells: TableCells, row: number): boolean {
  return namesAudioFileIn(rowText(cells, row));
}

/** The rows of the headings of some tables. */
export function headingRowsOf(cells: TableCells, tables: readonly TableRows[]): ReadonlySet<number> {
  const rows = new Set<number>();
  for (const { headings, others } of tables) {
    for (const { cell } of headings) if (cell >= 0) rows.add(rowOf(cells, cell));
    for (const { row, why } of others) if (why === repeatsHeadings) rows.add(row);
  }
  return rows;
}

/** The row that a cell stands in. */
function rowOf({ rowFirst, rowCount }: TableCells, cell: number): number {
  let row = 0;
  let beyond = rowCount;
  while (beyond - row > 1) {
    const middle = (row + beyond) >> 1;
    if (rowFirst[middle] <= cell) row = middle;
    else beyond = middle;
  }
  return row;
}

function rowText(cells: TableCells, row: number): string {
  const { start, end } = cells.rowSpan(row);
  if (cells.rowSpans === undefined) return cells.text.slice(start, Math.min(end, start + longest));
  const width = Math.min(cells.width(row), 20);
  return Array.from({ length: width }, (_, column) => cells.value(cells.cell(row, column))).join(' ');
}
