import type { TableCells } from '../cells/cells';
import { namesAudioFile } from '../cells/namesAudioFile';
import type { TableRows } from '../cells/tableRows';
import type { ColumnReading } from './columnReading';

/** So many rows at the start and at the end of a table are looked at for lines of text. */
const mostLooks = 40;
const mostTexts = 400;
const longest = 2000;

/** One table of a text, as far as its rows go. */
interface Rows {
  rows: TableRows;
  columns: readonly ColumnReading[];
}

/** The texts that stand around the zones of some tables: titles, headings, lines before and behind. */
export function textsAround(cells: TableCells, tables: readonly Rows[]): string[] {
  const texts: string[] = [...cells.around];
  for (const { rows, columns } of tables) {
    for (const { row } of rows.others) texts.push(rowText(cells, row));
    for (const { text } of rows.headings) if (text !== '') texts.push(text);
    const { data } = rows;
    const near =
      data.length <= 2 * mostLooks ? data : [...data.slice(0, mostLooks), ...data.slice(-mostLooks)];
    for (const row of near) if (!isZone(cells, row, rows, columns)) texts.push(rowText(cells, row));
    if (texts.length > mostTexts) break;
  }
  return texts.slice(0, mostTexts);
}

/** Whether a row is likely to be a zone: it names a file, or has values in most columns. */
function isZone(
  cells: TableCells,
  row: number,
  { width }: TableRows,
  columns: readonly ColumnReading[],
): boolean {
  const filled = cells.filled(row);
  if (filled > 2 && filled * 2 > width) return true;
  return columns.some(
    ({ meaning, index }) => meaning === 'sample' && namesAudioFile(cells, cells.cell(row, index)),
  );
}

function rowText(cells: TableCells, row: number): string {
  const { start, end } = cells.rowSpan(row);
  // Of a page only what it shows says something.
  if (cells.rowSpans === undefined) return cells.text.slice(start, Math.min(end, start + longest));
  const width = Math.min(cells.width(row), 50);
  return Array.from({ length: width }, (_, column) => cells.value(cells.cell(row, column))).join(' ');
}
