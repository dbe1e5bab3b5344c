import { isDitto, longestDitto, mayBeDitto } from '../../trade/languages/cellWords';
import type { TableCells } from './cells';

/** Columns behind so many are not looked at. */
const mostColumns = 2000;

/** Gives cells that say "the same as above" in any way the value of the nearest cell above them. */
export function fillDittoMarks(cells: TableCells, data: readonly number[]): void {
  const { starts, ends, codes, rowFirst } = cells;
  for (let place = 0; place < data.length; place++) {
    const row = data[place];
    const first = rowFirst[row];
    const end = Math.min(rowFirst[row + 1], first + mostColumns);
    for (let cell = first; cell < end; cell++) {
      const start = starts[cell];
      const length = ends[cell] - start;
      if (length === 0 || length > longestDitto) continue;
      const code = codes[start];
      // Brackets, signs and digits start no mark, but a dash may.
      if (code >= 40 && code < 58 && code !== 45) continue;
      if (!cells.isRewritten(cell) && !mayBeDitto(codes, start, length)) continue;
      if (!isDitto(cells.value(cell))) continue;
      const source = filledAbove(cells, data, place, cell - first);
      if (source >= 0) cells.rewritten.set(cell, cells.value(source));
    }
  }
}

/**
 * The nearest cell above that holds something; −1 where there is none. A mark that was filled ends the way up, so that
 * all ways in a column together are no longer than it.
 */
function filledAbove(cells: TableCells, data: readonly number[], place: number, column: number): number {
  for (let above = place - 1; above >= 0; above--) {
    const cell = cells.cell(data[above], column);
    if (cell >= 0 && cells.starts[cell] !== cells.ends[cell]) return cell;
  }
  return -1;
}
