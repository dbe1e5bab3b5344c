import { arrangedCells } from '../arrangedCells';
import type { TableCells } from '../cells';
import { isRuling } from './delimiter';

const fewestLines = 3;

/**
 * Puts the lines between two drawn ones together, where lines are drawn between all rows of a table and a cell may take several
 * lines; `undefined` for any other table.
 */
export function joinRuledRows(cells: TableCells): TableCells | undefined {
  const groups: number[][] = [[]];
  let drawn = 0;
  for (let row = 0; row < cells.rowCount; row++) {
    if (cells.filled(row) > 0 && isRuling(cells, row)) {
      drawn++;
      groups.push([]);
    } else groups.at(-1)?.push(row);
  }
  const rows = groups.filter((group) => group.some((row) => cells.filled(row) > 0));
  const several = rows.filter((group) => group.length > 1);
  if (drawn < fewestLines || several.length === 0 || several.length * 2 > rows.length) return undefined;
  // Lines that go on fill fewer cells than the first, and none that is new.
  if (!several.every(([first = 0, ...others]) => others.every((row) => goesOn(cells, first, row))))
    return undefined;
  const arranged: number[][] = [];
  for (const group of rows) {
    const [first = 0, ...others] = group;
    const joined = cellsOf(cells, first);
    for (const row of others) {
      for (const [column, cell] of cellsOf(cells, row).entries()) {
        const more = cells.value(cell);
        const own = joined[column];
        if (more !== '' && own !== undefined) cells.rewritten.set(own, `${cells.value(own)} ${more}`);
      }
    }
    arranged.push(joined);
  }
  return arrangedCells(cells, arranged);
}

function goesOn(cells: TableCells, first: number, row: number): boolean {
  if (cells.filled(row) >= cells.filled(first)) return false;
  for (let column = 0; column < cells.width(row); column++)
    if (!cells.isEmpty(row, column) && cells.isEmpty(first, column)) return false;
  return true;
}

function cellsOf(cells: TableCells, row: number): number[] {
  return Array.from({ length: cells.width(row) }, (_, column) => cells.cell(row, column));
}
