import type { TableCells } from './cells';

/** The cells of a row. */
export function cellsOfRow(cells: TableCells, row: number): number[] {
  return Array.from({ length: cells.width(row) }, (_, column) => cells.cell(row, column));
}

/** How many cells a row has up to the last that holds something. */
export function filledWidth(cells: TableCells, row: number): number {
  let width = cells.width(row);
  while (width > 0 && cells.isEmpty(row, width - 1)) width--;
  return width;
}
