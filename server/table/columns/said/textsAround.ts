import { statedSettings } from '../../../trade/statements/settings';
import type { TableCells } from '../../cells/cells';
import { namesAudioFile } from '../../cells/namesAudioFile';
import type { TableRows } from '../../cells/tableRows';
import type { ColumnReading } from '../columnReading';

/** So many rows at the start and at the end of a table are looked at for lines of text. */
const mostLooks = 40;
const mostTexts = 400;
const longest = 2000;
/** The name of a property has few words. */
const longestName = 40;
/** A sentence goes over so many lines at most. */
const mostWrapped = 6;

/** One table of a text, as far as its rows go. */
interface Rows {
  rows: TableRows;
  columns: readonly ColumnReading[];
}

/** The texts that stand around the zones of some tables: titles, headings, lines before and behind. */
export function textsAround(cells: TableCells, tables: readonly Rows[]): string[] {
  const texts: string[] = [...cells.around];
  const lines: number[] = [];
  for (const { rows, columns } of tables) {
    const titles = titleRows(cells, rows);
    for (const { row } of rows.others) {
      if (titles.has(row) || cells.struckRows.has(row)) continue;
      texts.push(rowText(cells, row));
      lines.push(row);
    }
    for (const { text } of rows.headings) if (text !== '') texts.push(text);
    const { data } = rows;
    const near =
      data.length <= 2 * mostLooks ? data : [...data.slice(0, mostLooks), ...data.slice(-mostLooks)];
    for (const row of near) {
      if (isZone(cells, row, rows, columns) || cells.struckRows.has(row)) continue;
      texts.push(rowText(cells, row));
      lines.push(row);
    }
    if (texts.length > mostTexts) break;
  }
  return [...texts.slice(0, mostTexts), ...wrapped(cells, lines.slice(0, mostTexts))];
}

/** The rows of titles that say something of their own sections, and nothing of the others. */
function titleRows(cells: TableCells, { sections, others }: TableRows): ReadonlySet<number> {
  const titles = new Set(sections.values());
  if (titles.size === 0) return new Set();
  const isOwn = ({ row }: { row: number }) => {
    for (let cell = cells.rowFirst[row]; cell < cells.rowFirst[row + 1]; cell++)
      if (titles.has(cell)) return statedSettings(cells.plain(cell)) !== undefined;
    return false;
  };
  return new Set(others.filter(isOwn).map(({ row }) => row));
}

/** Sentences that go on in the next line, put together: of lines below one another where the first does not end one. */
function wrapped(cells: TableCells, lines: number[]): string[] {
  const found: string[] = [];
  const open: string[] = [];
  let before = -1;
  const close = () => {
    if (open.length > 1) found.push(open.join(' '));
    open.length = 0;
  };
  for (const row of lines.sort((a, b) => a - b)) {
    const text = rowText(cells, row).trim();
    const goesOn = row === before + 1 && !/[.:;!?]$/.test(open.at(-1) ?? '.') && /^[\p{Ll}\d(=]/u.test(text);
    if (!goesOn || open.length === mostWrapped) close();
    open.push(text);
    before = row;
  }
  close();
  return found;
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
  const property = propertyIn(cells, row);
  if (property !== undefined) return property;
  const { start, end } = cells.rowSpan(row);
  // Of a page only what it shows says something.
  if (cells.rowSpans === undefined) return cells.text.slice(start, Math.min(end, start + longest));
  const width = Math.min(cells.width(row), 50);
  return Array.from({ length: width }, (_, column) => cells.value(cells.cell(row, column))).join(' ');
}

/** A row that gives a name a value in the columns of the table, as a sentence does: `Folder;strings/long;;;`. */
function propertyIn(cells: TableCells, row: number): string | undefined {
  if (cells.rowSpans !== undefined || cells.filled(row) !== 2 || cells.width(row) < 3) return undefined;
  if (cells.isEmpty(row, 0) || cells.isEmpty(row, 1)) return undefined;
  const name = cells.value(cells.cell(row, 0)).replace(/\s*[:=]$/u, '');
  const isName = name.length <= longestName && /^\p{L}[\p{L}\p{N} ()'.-]*$/u.test(name);
  return isName ? `${name}: ${cells.value(cells.cell(row, 1))}` : undefined;
}
