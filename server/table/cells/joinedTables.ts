import { nameWithoutEnding } from '../../model/paths';
import type { ColumnMeaning } from '../../trade/meaning';
import { readColumns } from '../columns/columnMeaning';
import type { ColumnReading } from '../columns/columnReading';
import { shortened } from '../columns/columnReading';
import { arrangedCells } from './arrangedCells';
import type { TableCells } from './cells';
import type { TableRows } from './tableRows';

const mostTables = 20;
const mostRows = 20_000;
const keys: ReadonlySet<ColumnMeaning> = new Set(['key', 'lokey', 'hikey', 'key_range', 'key_count']);
/** What says nothing of a zone. */
const silent: ReadonlySet<ColumnMeaning> = new Set(['sample', 'unknown', 'comment', 'row_number', 'group']);

/** A table and the column of its samples. */
interface Named {
  rows: TableRows;
  sample: number;
  hasKeys: boolean;
  hasValues: boolean;
}

/**
 * Joins tables of one text that speak of the same samples, where one gives keys and another, in any order of its rows, more values
 * without keys: each row of the first is followed by what the others give for its sample. `undefined` where there is nothing to join.
 */
export function joinTables(cells: TableCells, tables: readonly TableRows[]): TableCells | undefined {
  if (tables.length < 2 || tables.length > mostTables || cells.rowCount > mostRows) return undefined;
  const named = tables.map((rows) => namedTable(rows, readColumns(cells, rows)));
  const first = named.find((one) => one?.hasKeys);
  if (!first) return undefined;
  const names = new Set(first.rows.data.map((row) => nameIn(cells, row, first)));
  const others = named.filter((one) => {
    if (!one || one.hasKeys || !one.hasValues) return false;
    const own = one.rows.data.map((row) => nameIn(cells, row, one)).filter((name) => name !== '');
    const shared = own.filter((name) => names.has(name)).length;
    return own.length > 0 && shared * 2 >= own.length && new Set(own).size === own.length;
  }) as Named[];
  return others.length === 0 ? undefined : joined(cells, first, others);
}

function namedTable(rows: TableRows, columns: readonly ColumnReading[]): Named | undefined {
  const sample = columns.find(({ meaning }) => meaning === 'sample')?.index;
  if (sample === undefined || rows.data.length === 0) return undefined;
  const has = (test: (meaning: ColumnMeaning) => boolean) => columns.some(({ meaning }) => test(meaning));
  return {
    rows,
    sample,
    hasKeys: has((meaning) => keys.has(meaning)),
    hasValues: has((meaning) => !silent.has(meaning)),
  };
}

/** The name of a sample as the tables share it: without folder, ending and letter case. */
function nameIn(cells: TableCells, row: number, { sample }: Named): string {
  const text = cells.value(cells.cell(row, sample)).replaceAll('\\', '/');
  return nameWithoutEnding(text.slice(text.lastIndexOf('/') + 1))
    .trim()
    .toLowerCase();
}

function joined(cells: TableCells, first: Named, others: readonly Named[]): TableCells {
  const cellsOf = (row: number) => Array.from({ length: cells.width(row) }, (_, at) => cells.cell(row, at));
  const without = (row: number, column: number) => cellsOf(row).filter((_, at) => at !== column);
  const taken = new Set<number>();
  const left: { text: string; start: number; end: number }[] = [];
  const byRow = new Map<number, number[]>();
  const headings = headingRowOf(cells, first.rows);
  const wide = (row: number[], width: number) => [
    ...row,
    ...Array<number>(Math.max(0, width - row.length)).fill(-1),
  ];
  let width = first.rows.width;
  const names = new Set(first.rows.data.map((row) => nameIn(cells, row, first)));
  for (const other of others) {
    const own = new Map(other.rows.data.map((row) => [nameIn(cells, row, other), row]));
    const heading = headingRowOf(cells, other.rows);
    if (headings >= 0 && heading >= 0)
      byRow.set(headings, [
        ...wide(byRow.get(headings) ?? cellsOf(headings), width),
        ...without(heading, other.sample),
      ]);
    if (heading >= 0) taken.add(heading);
    for (const row of first.rows.data) {
      const found = own.get(nameIn(cells, row, first));
      if (found !== undefined)
        byRow.set(row, [...wide(byRow.get(row) ?? cellsOf(row), width), ...without(found, other.sample)]);
    }
    for (const [name, row] of own) {
      taken.add(row);
      if (names.has(name) || name === '') continue;
      const cell = cells.cell(row, other.sample);
      const text = `"${shortened(cells.value(cell))}" stands only in a table without keys, so it is left out.`;
      left.push({ text, start: cells.starts[cell], end: cells.ends[cell] });
    }
    width += other.rows.width - 1;
  }
  const rows: number[][] = [];
  for (let row = 0; row < cells.rowCount; row++)
    if (!taken.has(row)) rows.push(byRow.get(row) ?? cellsOf(row));
  const arranged = arrangedCells(cells, rows, true);
  const cell = cells.cell(others[0]?.rows.data[0] ?? 0, others[0]?.sample ?? 0);
  const span = { start: cells.starts[cell] ?? 0, end: cells.ends[cell] ?? 0 };
  const text =
    'Tables that name the same samples are joined: each zone has the values that they give for its sample.';
  arranged.assumptions = [{ text, ...span }, ...cells.assumptions, ...left];
  return arranged;
}

/** The row of the headings of a table; −1 where it has none. */
function headingRowOf(cells: TableCells, { headings }: TableRows): number {
  const cell = headings.find((one) => one.cell >= 0)?.cell;
  if (cell === undefined) return -1;
  let row = 0;
  while (row < cells.rowCount && cells.rowFirst[row + 1] <= cell) row++;
  return row < cells.rowCount ? row : -1;
}
