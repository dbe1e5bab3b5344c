import { isAudioFileName } from '../../../model/fileNames';
import { countKnown, countValues, findHeading } from '../../headings/headingRows';
import { arrangedCells } from '../arrangedCells';
import type { TableCells } from '../cells';
import { isRuling } from './delimiter';

const mostLooks = 60;

/** Puts the lines of a table together whose rows are split over two lines; `undefined` where none are. */
export function joinSplitRows(cells: TableCells): TableCells | undefined {
  const rows: number[] = [];
  for (let row = 0; row < cells.rowCount; row++) {
    if (cells.filled(row) > 0 && !isRuling(cells, row)) rows.push(row);
  }
  const heading = rows.indexOf(findHeading(cells, rows));
  return joinAlternating(cells, rows, heading) ?? joinSome(cells, rows.slice(heading + 1));
}

/** All rows take two lines: the first names the sample, the second has the rest. Headings may take two lines as well. */
function joinAlternating(
  cells: TableCells,
  rows: readonly number[],
  heading: number,
): TableCells | undefined {
  const start = rows.findIndex((row) => holdsFile(cells, row));
  const data = rows.slice(start).slice(0, mostLooks);
  const paired = data.length - (data.length % 2);
  if (start < 0 || paired < 2) return undefined;
  for (let at = 0; at < paired; at++) {
    const row = data[at];
    if (holdsFile(cells, row) !== (at % 2 === 0)) return undefined;
    if (at % 2 === 1 && (row !== data[at - 1] + 1 || countValues(cells, row) === 0)) return undefined;
  }
  const [first, second] = [data[0], data[1]];
  const headings = heading < 0 ? [] : rows.slice(heading, start);
  const two = headings.length === 2 && headings.every((row) => countKnown(cells, row) > 0);
  const wide = cells.width(headings[0] ?? -1) >= cells.width(first) + cells.width(second) - 1;
  if (headings.length === 1 && !wide) return undefined;
  if (headings.length > 0 && !two && headings.length !== 1) return undefined;
  if (headings.length === 0 && paired < 4) return undefined;
  const width = Math.max(...data.filter((_, at) => at % 2 === 0).map((row) => cells.width(row)));
  const joined: number[][] = [];
  const starts = new Set<number>(two ? [headings[0]] : []);
  for (let at = start; at + 1 < rows.length; at++) {
    if (holdsFile(cells, rows[at]) && rows[at + 1] === rows[at] + 1) starts.add(rows[at]);
  }
  for (let row = 0; row < cells.rowCount; row++) {
    if (!starts.has(row)) joined.push(cellsOf(cells, row));
    else {
      const left = cellsOf(cells, row);
      // An empty cell behind the last delimiter of the first line is where the second goes on.
      const trailing = left.length > 1 && cells.isEmpty(row, left.length - 1) && left.length === width;
      const fill = two ? width : trailing ? width - 1 : left.length;
      while (left.length < fill) left.push(-1);
      joined.push([
        ...left.slice(0, Math.max(fill, trailing ? fill : left.length)),
        ...cellsOf(cells, row + 1),
      ]);
      row++;
    }
  }
  return arrangedCells(cells, joined);
}

/** Some rows take two lines: the second fills cells that the first leaves empty, under the same columns. */
function joinSome(cells: TableCells, data: readonly number[]): TableCells | undefined {
  const counts = new Map<number, number>();
  for (const row of data) {
    const filled = cells.filled(row);
    counts.set(filled, (counts.get(filled) ?? 0) + 1);
  }
  const usual = Math.max(0, ...counts.keys());
  const starts = new Set<number>();
  for (let at = 0; at + 1 < data.length; at++) {
    const [row, next] = [data[at], data[at + 1]];
    if (next !== row + 1 || starts.has(row - 1)) continue;
    const filled = cells.filled(row);
    if (filled >= usual || filled + cells.filled(next) > usual) continue;
    const whole = filled === 1 && usual > 2 && cells.filled(next) === usual - 1;
    if (!whole && !holdsFile(cells, row)) continue;
    if (!holdsFile(cells, next) && areApart(cells, row, next)) starts.add(row);
  }
  if (starts.size === 0) return undefined;
  const joined: number[][] = [];
  for (let row = 0; row < cells.rowCount; row++) {
    const left = cellsOf(cells, row);
    if (!starts.has(row)) joined.push(left);
    else {
      for (const [column, cell] of cellsOf(cells, row + 1).entries()) {
        if (left[column] === undefined || cells.isEmpty(row, column)) left[column] = cell;
      }
      joined.push(left);
      row++;
    }
  }
  return arrangedCells(cells, joined);
}

/** Whether a row has values, and only behind the cells that hold something in the row above it. */
function areApart(cells: TableCells, row: number, next: number): boolean {
  if (countValues(cells, next) === 0) return false;
  for (let column = 0; column < cells.width(next); column++) {
    if (!cells.isEmpty(next, column) && !cells.isEmpty(row, column)) return false;
  }
  return true;
}

function holdsFile(cells: TableCells, row: number): boolean {
  for (let column = 0; column < Math.min(cells.width(row), 100); column++) {
    if (isAudioFileName(cells.value(cells.cell(row, column)))) return true;
  }
  return false;
}

function cellsOf(cells: TableCells, row: number): number[] {
  return Array.from({ length: cells.width(row) }, (_, column) => cells.cell(row, column));
}
