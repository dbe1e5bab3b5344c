import type { MiddleC } from '../../../model/keys';
import { wordsOf } from '../../../trade/languages/spelling';
import type { ColumnMeaning } from '../../../trade/meaning';
import { conventions, octaveShifts } from '../../../trade/middleC';
import type { NoteNaming } from '../../../trade/readings/keyReading';
import { readKeyRange } from '../../../trade/readings/keyReading';
import { CellReadings } from '../../cells/cellReadings';
import type { TableCells } from '../../cells/cells';
import type { ColumnReading } from '../columnReading';

const mostColumns = 50;
/** What a column may be taken for that holds the number of a key beside its name. */
const free: ReadonlySet<ColumnMeaning> = new Set([
  'unknown',
  'comment',
  'row_number',
  'key',
  'pitch_keycenter',
]);
/** A number in one row alone tells only where its heading is like that of the name. */
const fewestRows = 2;

/** A column of numbers that lie one and the same distance from note names, and on how many rows. */
export interface Witness {
  column: ColumnReading;
  middleC: MiddleC;
  count: number;
}

/**
 * Finds a column of plain numbers which are the keys that another column names, by one convention on all rows: `base_no` beside
 * `base`. `names` are the columns of note names by position; −1 for none.
 */
export function numberColumnWitness(
  cells: TableCells,
  data: readonly number[],
  columns: readonly ColumnReading[],
  names: readonly number[],
  naming: NoteNaming,
): Witness | undefined {
  const keys = new CellReadings(cells, (text) => readKeyRange(text, naming)?.low.named);
  const named = [...new Set(names)].filter((index) => index >= 0);
  let best: Witness | undefined;
  for (const column of columns.slice(0, mostColumns)) {
    if (named.includes(column.index) || !free.has(column.meaning)) continue;
    for (const index of named) {
      const found = distanceOf(cells, data, column.index, index, keys);
      if (!found || (found.count < fewestRows && !isAkin(column, columns[index]))) continue;
      if (best === undefined || found.count > best.count) best = { column, ...found };
    }
  }
  return best;
}

function distanceOf(
  cells: TableCells,
  data: readonly number[],
  numbers: number,
  names: number,
  keys: CellReadings<number | undefined>,
): { middleC: MiddleC; count: number } | undefined {
  let distance: number | undefined;
  const seen = new Set<number>();
  for (const row of data) {
    const cell = cells.cell(row, numbers);
    if (cell < 0 || cells.starts[cell] === cells.ends[cell]) continue;
    const number = cells.digits(cell, 3);
    if (number < 0 || number > 127) return undefined;
    const other = cells.cell(row, names);
    const key = other < 0 || cells.digits(other, 3) >= 0 ? undefined : keys.of(other);
    if (key === undefined) continue;
    distance ??= number - key;
    if (number - key !== distance) return undefined;
    seen.add(number);
  }
  const middleC = conventions.find((one) => octaveShifts[one] === distance);
  return middleC && { middleC, count: seen.size };
}

/** Whether two headings share a word. */
function isAkin(one: ColumnReading, other: ColumnReading | undefined): boolean {
  const words = new Set(wordsOf(other?.heading ?? ''));
  return wordsOf(one.heading).some((word) => word.length > 1 && words.has(word));
}
