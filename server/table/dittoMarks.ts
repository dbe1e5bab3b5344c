import type { TableCells } from './cells';
import { isDitto, longestDitto, mayBeDitto } from './languages/cellWords';

/** Gives cells that say "the same as above" in any way the value of the nearest cell above them. */
export function fillDittoMarks(cells: TableCells, data: readonly number[]): void {
  const above: number[] = [];
  for (const row of data) {
    const width = Math.min(cells.width(row), 2000);
    for (let column = 0; column < width; column++) {
      const cell = cells.cell(row, column);
      const start = cells.starts[cell] as number;
      const length = (cells.ends[cell] as number) - start;
      if (length === 0) continue;
      const code = cells.codes[start];
      const source = above[column];
      const isValue =
        length > longestDitto ||
        (code >= 40 && code < 58) ||
        source === undefined ||
        (!cells.isRewritten(cell) && !mayBeDitto(cells.codes, start, length));
      if (isValue || !isDitto(cells.value(cell))) above[column] = cell;
      else cells.rewritten.set(cell, cells.value(source));
    }
  }
}
