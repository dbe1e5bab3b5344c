import { namesAudioFileIn } from '../../model/fileNames';
import type { TableCells } from './cells';
import type { CutEnd } from './cutPlace';

/** So many rows before the last one tell what a row has. */
const mostRows = 50;
const fewestRows = 2;
/** What may stand behind the last value of a row that is cut off: a sign between cells, or the start of a tag. */
const rest = /^\s*(?:[,;|\t]|<[^>]*)?[^\S\r\n]*$/;
/** A value that only ends a range where it is whole. */
const greatestValue = '127';
const number = /^[-+]?\d+(?:[.,]\d+)?$/;

/**
 * Leaves out the last row where the text ends in the middle of it: no line break follows, it lacks cells that all rows above it fill, and
 * its last value is shorter than all above it, or does not reach the value before it. `undefined` where the last row is whole, or may be.
 */
export function leaveOutCutRow(cells: TableCells): CutEnd | undefined {
  const row = cells.rowCount - 1;
  if (row < fewestRows) return undefined;
  const last = lastFilled(cells, row);
  if (last < 0 || !rest.test(cells.text.slice(cells.ends[cells.cell(row, last)]))) return undefined;
  const above = rowsAbove(cells, row);
  if (above.length < fewestRows || !isRowLike(cells, row, last, above)) return undefined;
  return leaveOutLastRow(cells);
}

/** Leaves out the last row, which the text ends in the middle of. */
export function leaveOutLastRow(cells: TableCells): CutEnd {
  const { start } = cells.rowSpan(cells.rowCount - 1);
  cells.rowCount--;
  cells.cellCount = cells.rowFirst[cells.rowCount];
  return { start, end: cells.text.trimEnd().length, isZone: true };
}

/** The rows straight above a row, without headings, that name files. */
function rowsAbove(cells: TableCells, row: number): number[] {
  const above: number[] = [];
  for (let at = row - 1; at >= Math.max(0, row - mostRows) && cells.filled(at) > 0; at--) {
    if (columnOfFile(cells, at) < 0) break;
    above.push(at);
  }
  return above;
}

function columnOfFile(cells: TableCells, row: number): number {
  for (let column = 0; column < cells.width(row); column++)
    if (namesAudioFileIn(cells.value(cells.cell(row, column)))) return column;
  return -1;
}

/** Whether a row starts as those above it do, and ends before them. */
function isRowLike(cells: TableCells, row: number, last: number, above: readonly number[]): boolean {
  const text = (one: number, column: number) => cells.value(cells.cell(one, column)).trim();
  const ends = text(row, last);
  if (last === 0) return /^"[^"]*$/.test(ends) && above.every((one) => cells.width(one) > 1);
  const file = columnOfFile(cells, above[0]);
  for (let column = 0; column < last; column++) {
    const isOdd =
      column === file
        ? !namesAudioFileIn(text(row, column))
        : above.every((one) => number.test(text(one, column))) && !number.test(text(row, column));
    if (isOdd) return false;
  }
  const usual = above.map((one) => text(one, last));
  if (last === file) return !namesAudioFileIn(ends) && usual.every((one) => namesAudioFileIn(one));
  if (!number.test(ends) || !usual.every((one) => number.test(one))) return false;
  const isStart = above.length > fewestRows && usual.every((one) => one === greatestValue);
  if (isStart && ends.length < greatestValue.length && greatestValue.startsWith(ends)) return true;
  const isShort =
    (cells.rowSpans !== undefined || above.every((one) => cells.width(one) > cells.width(row))) &&
    columnsBehind(cells, last, above).some((column) => above.every((one) => !cells.isEmpty(one, column)));
  if (!isShort) return false;
  const isOrdered = (one: number) => !(Number(text(one, last - 1)) > Number(text(one, last)));
  return usual.every((one) => one.length > ends.length) || (above.every(isOrdered) && !isOrdered(row));
}

/** The columns of the narrowest row that stand behind one. */
function columnsBehind(cells: TableCells, last: number, above: readonly number[]): number[] {
  const width = Math.min(...above.map((one) => cells.width(one)));
  return Array.from({ length: Math.max(0, width - last - 1) }, (_, at) => last + 1 + at);
}

function lastFilled(cells: TableCells, row: number): number {
  for (let column = cells.width(row) - 1; column >= 0; column--)
    if (!cells.isEmpty(row, column)) return column;
  return -1;
}
