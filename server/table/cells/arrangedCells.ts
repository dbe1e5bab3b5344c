import { TableCells } from './cells';

/**
 * The cells of a table in other rows: each row lists cells of the first table, −1 for an empty one. With `oneCellSpans`
 * a row is known by its first cell that holds something, not by all its text. A row with cells of a struck one is struck too.
 */
export function arrangedCells(
  from: TableCells,
  rows: readonly (readonly number[])[],
  oneCellSpans = false,
): TableCells {
  const cells = new TableCells(from.text, from.codes);
  cells.bySpaces = from.bySpaces;
  cells.hiddenRows = from.hiddenRows;
  cells.around = from.around;
  cells.remarks = from.remarks;
  cells.assumptions = from.assumptions;
  const struck = cellsOf(from, from.struckRows);
  const spans: { start: number; end: number }[] = [];
  for (const row of rows) {
    const filled = row.filter((cell) => cell >= 0 && from.starts[cell] !== from.ends[cell]);
    const first = filled[0] ?? row.find((cell) => cell >= 0);
    const start = first === undefined ? 0 : from.starts[first];
    const end = filled.reduce((most, cell) => Math.max(most, from.ends[cell]), start);
    spans.push({ start, end: oneCellSpans && first !== undefined ? from.ends[first] : end });
    let place = start;
    for (const cell of row) {
      if (cell >= 0) place = from.starts[cell];
      const added = cells.put(place, cell < 0 ? place : from.ends[cell]);
      const value = from.rewritten.get(cell);
      if (value !== undefined) cells.rewritten.set(added, value);
    }
    cells.endRow();
    if (filled.some((cell) => struck.has(cell))) cells.struckRows.add(cells.rowCount - 1);
  }
  cells.rowSpans = spans;
  return cells;
}

function cellsOf(cells: TableCells, rows: ReadonlySet<number>): ReadonlySet<number> {
  const found = new Set<number>();
  for (const row of rows)
    for (let cell = cells.rowFirst[row]; cell < cells.rowFirst[row + 1]; cell++) found.add(cell);
  return found;
}
