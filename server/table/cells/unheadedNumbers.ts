import { readHeading } from '../../trade/headings/headings';
import type { ColumnMeaning } from '../../trade/meaning';
import { findHeading } from '../headings/headingRows';
import { arrangedCells } from './arrangedCells';
import type { TableCells } from './cells';
import { namesAudioFile } from './namesAudioFile';
import { isRuling } from './split/delimiter';

/** Rows that are looked at for headings, and the widest table. */
const looked = 60;
const mostColumns = 40;
/** So many rows have to be counted, so that the numbers are no values by chance (our choice). */
const leastRows = 2;
/** What running numbers may be by the heading above them: then they stand where they should. */
const numbered: ReadonlySet<ColumnMeaning> = new Set([
  'unknown',
  'row_number',
  'group',
  'mute_group',
  'comment',
  'seq_position',
  'key_range',
  'dynamics',
  'velocity_range',
]);
const rowNumber = /^[#(]?(\d{1,6})[.):]?$/;
const told =
  'The rows have one cell more than there are headings, and start with a running number: it is taken for a column without a heading, in front of the others.';

/**
 * Puts an empty heading in front of the others where all rows start with a running number that the line of headings lacks, as
 * `1;a.wav;55` under `Sample;Root` does. This is told. `undefined` where the headings stand above their cells.
 */
export function unheadedNumbers(cells: TableCells): TableCells | undefined {
  const first: number[] = [];
  for (let row = 0; row < cells.rowCount && first.length < looked; row++)
    if (cells.filled(row) > 0 && !isRuling(cells, row)) first.push(row);
  const heading = findHeading(cells, first);
  const width = heading < 0 ? 0 : headingCount(cells, heading);
  if (width < 2 || width > mostColumns) return undefined;
  const headings = headingsBesideNumbers(cells, heading, width);
  if (!headings) return undefined;
  const rows = Array.from({ length: cells.rowCount }, (_, row) => {
    const own = Array.from({ length: cells.width(row) }, (_, column) => cells.cell(row, column));
    return headings.has(row) ? [-1, ...own] : own;
  });
  const arranged = arrangedCells(cells, rows);
  arranged.assumptions = [...cells.assumptions, { text: told, ...cells.rowSpan(heading) }];
  return arranged;
}

/** How many cells the headings fill, without empty ones behind them; none where one between them is empty. */
function headingCount(cells: TableCells, heading: number): number {
  const count = cells.filled(heading);
  return cells.isEmpty(heading, count - 1) ? 0 : count;
}

/** The heading that samples stand under; the first one where none is known to say so. −1 where the numbers may stand under the first. */
function fileHeading(cells: TableCells, heading: number, width: number): number {
  const meanings = Array.from(
    { length: width },
    (_, column) => readHeading(cells.value(cells.cell(heading, column)))?.meaning ?? 'unknown',
  );
  const [first = 'unknown'] = meanings;
  const found = meanings.indexOf('sample');
  if (found > 0) return numbered.has(first) ? -1 : found;
  return found < 0 && first !== 'unknown' ? -1 : 0;
}

/**
 * The rows of headings, and of units above or below them, where all others count from 0 or 1 and have their samples one cell further
 * right than the headings say; `undefined` where they do not.
 */
function headingsBesideNumbers(cells: TableCells, heading: number, width: number): Set<number> | undefined {
  const file = fileHeading(cells, heading, width);
  if (file < 0) return undefined;
  const headings = new Set<number>();
  let [count, wider, next] = [0, 0, Number.NaN];
  for (let row = 0; row < cells.rowCount; row++) {
    // Titles, blank lines, drawn ones and remarks stand between rows.
    if (cells.filled(row) <= 1 || isRuling(cells, row)) continue;
    const isRow = row > heading && isCounted(cells, row, file);
    if (!isRow) {
      const again = count > 0 && isSameRow(cells, row, heading);
      if (count === 0 || again) headings.add(row);
      else if (namesAudioFile(cells, cells.cell(row, file))) return undefined;
      // Below the same headings the numbers may start again.
      if (again) next = Number.NaN;
      continue;
    }
    const number = numberOf(cells, row);
    const isFirst = Number.isNaN(next) && (number <= 1 || number === count + 1);
    if (cells.width(row) <= width || !(isFirst || number === next)) return undefined;
    next = number + 1;
    count++;
    if (namesAudioFile(cells, cells.cell(row, file + 1))) continue;
    // A comma inside of a name parts it.
    if (cells.width(row) === width + 1) return undefined;
    wider++;
  }
  return count >= leastRows && wider * 2 < count ? headings : undefined;
}

/** Whether a row starts with a running number, or has its sample one cell too far right. */
function isCounted(cells: TableCells, row: number, file: number): boolean {
  return !Number.isNaN(numberOf(cells, row)) || namesAudioFile(cells, cells.cell(row, file + 1));
}

function numberOf(cells: TableCells, row: number): number {
  return Number(rowNumber.exec(cells.plain(cells.cell(row, 0)))?.[1] ?? Number.NaN);
}

function isSameRow(cells: TableCells, row: number, other: number): boolean {
  if (cells.width(row) !== cells.width(other)) return false;
  for (let column = 0; column < cells.width(row); column++)
    if (cells.value(cells.cell(row, column)) !== cells.value(cells.cell(other, column))) return false;
  return true;
}
