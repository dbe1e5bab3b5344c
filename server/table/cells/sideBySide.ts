import { readHeading } from '../../trade/headings/headings';
import { arrangedCells } from './arrangedCells';
import type { TableCells } from './cells';

const mostLooks = 25;
const mostColumns = 100;
/** A line drawn between the two. */
const bar = /^\|\s*/;

/**
 * Puts tables below one another that stand side by side in the same lines, each with headings of its own: where the headings of
 * samples and most others stand twice in one row. `undefined` for any other text.
 */
export function partTables(cells: TableCells): TableCells | undefined {
  for (let row = 0; row < Math.min(cells.rowCount, mostLooks); row++) {
    const starts = tablesAt(cells, row);
    if (starts.length > 1) return arrangedCells(cells, parted(cells, starts));
  }
  return undefined;
}

/** The columns that the second and further tables start with, behind 0 for the first, by a row of headings; none where there is one table. */
function tablesAt(cells: TableCells, row: number): number[] {
  const width = Math.min(cells.width(row), mostColumns);
  if (width < 6 || cells.filled(row) < 6) return [];
  const texts = Array.from({ length: width }, (_, column) =>
    cells.value(cells.cell(row, column)).replace(bar, '').toLowerCase(),
  );
  const first = texts.findIndex((text) => text !== '');
  const heading = texts[first] ?? '';
  const second = texts.indexOf(heading, first + 1);
  if (second < 0 || readHeading(heading)?.meaning !== 'sample') return [];
  const step = second - first;
  const starts = [0];
  for (let start = second; areSame(texts, first, start, step); start += step) starts.push(start);
  return starts;
}

/** Whether headings from one column on are those from another on. */
function areSame(texts: readonly string[], first: number, start: number, step: number): boolean {
  let [same, known] = [0, 0];
  for (let column = 0; column < step; column++) {
    const text = texts[first + column] ?? '';
    if (text === '' || readHeading(text) === undefined) continue;
    known++;
    if (texts[start + column] === text) same++;
  }
  return known >= 3 && same === known;
}

/** All rows as far as the second table, and then what stands in each further one. */
function parted(cells: TableCells, starts: readonly number[]): number[][] {
  const tables: number[][][] = starts.map(() => []);
  for (let row = 0; row < cells.rowCount; row++) {
    const all = Array.from({ length: cells.width(row) }, (_, column) => cells.cell(row, column));
    const isWhole = all.length <= 1 || cells.filled(row) === 0;
    for (const [at, table] of tables.entries()) {
      const part = isWhole ? (at === 0 ? all : []) : all.slice(starts[at], starts[at + 1]);
      const own = part.filter((cell) => cells.value(cell) !== '|');
      const [first] = own;
      if (at > 0 && first !== undefined) cells.starts[first] += bar.exec(cells.value(first))?.[0].length ?? 0;
      if (at === 0 || own.some((cell) => cells.value(cell) !== '')) table.push(own);
    }
  }
  return tables.flatMap((table, at) => (at === 0 ? table : [[], ...table]));
}
