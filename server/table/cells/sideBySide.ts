import { readHeading } from '../../trade/headings/headings';
import { arrangedCells } from './arrangedCells';
import type { TableCells } from './cells';

const mostLooks = 25;
const mostColumns = 100;
/** A line drawn between the two. */
const bar = /^\|\s*/;

/**
 * Puts two tables below one another that stand side by side in the same lines, each with headings of its own: where the headings of
 * samples and most others stand twice in one row. `undefined` for any other text.
 */
export function partTables(cells: TableCells): TableCells | undefined {
  for (let row = 0; row < Math.min(cells.rowCount, mostLooks); row++) {
    const second = secondTableAt(cells, row);
    if (second > 0) return arrangedCells(cells, parted(cells, second));
  }
  return undefined;
}

/** The column that the second of two tables starts with, by a row of headings; 0 where there is one table. */
function secondTableAt(cells: TableCells, row: number): number {
  const width = Math.min(cells.width(row), mostColumns);
  if (width < 6 || cells.filled(row) < 6) return 0;
  const texts = Array.from({ length: width }, (_, column) =>
    cells.value(cells.cell(row, column)).replace(bar, '').toLowerCase(),
  );
  const first = texts.findIndex((text) => text !== '');
  const heading = texts[first] ?? '';
  const second = texts.indexOf(heading, first + 1);
  if (second < 0 || readHeading(heading)?.meaning !== 'sample') return 0;
  const step = second - first;
  let [same, known] = [0, 0];
  for (let column = first; column < second; column++) {
    const text = texts[column] ?? '';
    if (text === '' || readHeading(text) === undefined) continue;
    known++;
    if (texts[column + step] === text) same++;
  }
  return known >= 3 && same === known ? second : 0;
}

/** All rows as far as the second table, and then what stands in that one. */
function parted(cells: TableCells, second: number): number[][] {
  const [left, right]: [number[][], number[][]] = [[], []];
  for (let row = 0; row < cells.rowCount; row++) {
    const all = Array.from({ length: cells.width(row) }, (_, column) => cells.cell(row, column));
    const isWhole = all.length <= 1 || cells.filled(row) === 0;
    left.push(isWhole ? all : all.slice(0, second).filter((cell) => cells.value(cell) !== '|'));
    const behind = isWhole ? [] : all.slice(second);
    const [first] = behind;
    if (first !== undefined) cells.starts[first] += bar.exec(cells.value(first))?.[0].length ?? 0;
    if (behind.some((cell) => cells.value(cell) !== '')) right.push(behind);
  }
  return [...left, [], ...right];
}
