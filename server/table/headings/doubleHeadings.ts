import { readHeading } from '../../trade/headings/headings';
import type { ColumnMeaning } from '../../trade/meaning';
import type { Assumption, TableCells } from '../cells/cells';
import { orderedPairs } from '../cells/rowFit';
import { isRuling } from '../cells/split/delimiter';
import { lookAt } from '../columns/cellKinds';
import { shortened } from '../columns/columnReading';
import { isHeadingRow } from './headingRows';

/** So many known headings make a row complete, and so many rows are looked at. */
const fewestKnown = 3;
const mostRows = 300;
const mostColumns = 60;

/** Two rows of headings, one of which counts, and what is told of that. */
interface DoubleHeadings {
  used: number;
  other: number;
  told: Assumption;
}

/**
 * Whether beside a row of headings stands another one that gives the same columns in another order, as in two languages: that one counts
 * by which low ends lie below high ones and roots between them in more rows; the upper one where both do as well.
 */
export function doubleHeadings(cells: TableCells, row: number): DoubleHeadings | undefined {
  for (const [upper, lower] of [
    [row, beside(cells, row, 1)],
    [beside(cells, row, -1), row],
  ] as const) {
    if (upper < 0 || lower >= cells.rowCount) continue;
    const [one, two] = [meaningsOf(cells, upper), meaningsOf(cells, lower)];
    if (one === undefined || two === undefined || !contradict(one, two)) continue;
    const below = rowsBelow(cells, lower);
    const [first, second] = [faults(cells, below, one), faults(cells, below, two)];
    const [used, other] = second < first ? [lower, upper] : [upper, lower];
    const why =
      first === second
        ? `"${textOf(cells, used)}" is used, as it is the first and the numbers fit neither better. Check the columns.`
        : `"${textOf(cells, used)}" is used, as the numbers agree with it better than with "${textOf(cells, other)}".`;
    const told = { text: `Two rows of headings contradict each other: ${why}`, ...cells.rowSpan(other) };
    return { used, other, told };
  }
  return undefined;
}

/** The row before or after one, but for a line drawn between them. */
function beside(cells: TableCells, row: number, step: 1 | -1): number {
  const next = row + step;
  return next >= 0 && next < cells.rowCount && isRuling(cells, next) ? next + step : next;
}

/** What the headings of a row mean; `undefined` where more than one is not known, one comes twice, or they are too few. */
function meaningsOf(cells: TableCells, row: number): (ColumnMeaning | undefined)[] | undefined {
  const width = cells.width(row);
  if (width > mostColumns || cells.filled(row) < fewestKnown || !isHeadingRow(cells, row)) return undefined;
  const meanings = Array.from(
    { length: width },
    (_, column) => readHeading(cells.value(cells.cell(row, column)))?.meaning,
  );
  const known = meanings.filter((meaning) => meaning !== undefined);
  const isComplete =
    known.length >= Math.max(fewestKnown, cells.filled(row) - 1) && new Set(known).size === known.length;
  return isComplete ? meanings : undefined;
}

/** Whether some columns have each other's meanings in the two rows. */
function contradict(
  one: readonly (ColumnMeaning | undefined)[],
  two: readonly (ColumnMeaning | undefined)[],
): boolean {
  const moved = [...one.keys()].filter((at) => one[at] && two[at] && one[at] !== two[at]);
  const there = new Set(moved.map((at) => one[at]));
  return moved.length > 1 && moved.every((at) => there.has(two[at]));
}

function rowsBelow(cells: TableCells, heading: number): number[] {
  const rows: number[] = [];
  for (let row = heading + 1; row < cells.rowCount && rows.length < mostRows; row++) {
    if (isHeadingRow(cells, row)) break;
    if (cells.filled(row) > 1) rows.push(row);
  }
  return rows;
}

/** How often rows contradict what their columns are said to mean. */
function faults(
  cells: TableCells,
  rows: readonly number[],
  meanings: readonly (ColumnMeaning | undefined)[],
): number {
  const sample = meanings.indexOf('sample');
  const low = meanings.indexOf('lokey');
  const lows = rows.map((row) => cells.value(cells.cell(row, low)));
  // Rows that all lie on the same keys are no map of a keyboard.
  let count = low >= 0 && rows.length > 1 && new Set(lows).size === 1 ? 1 : 0;
  for (const row of rows) {
    const numberIn = (column: number) =>
      column < 0 ? Number.NaN : lookAt(cells.plain(cells.cell(row, column))).value;
    if (!Number.isNaN(numberIn(sample))) count++;
    for (const [from, to] of orderedPairs)
      if (numberIn(meanings.indexOf(from)) > numberIn(meanings.indexOf(to))) count++;
  }
  return count;
}

function textOf(cells: TableCells, row: number): string {
  const texts = Array.from({ length: cells.width(row) }, (_, column) => cells.value(cells.cell(row, column)));
  return shortened(texts.join(', '));
}
