import { nameWithoutEnding } from '../../model/paths';
import type { ColumnMeaning } from '../../trade/meaning';
import { readColumns } from '../columns/columnMeaning';
import { shortened } from '../columns/columnReading';
import { arrangedCells } from './arrangedCells';
import type { TableCells } from './cells';
import type { ReadRows } from './layerTable';
import { layerTable } from './layerTable';
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

/** A table that gives more values to the rows of another. */
interface Added {
  rows: TableRows;
  /** The column of the names by which its rows are found, which is left out. */
  column: number;
  byName: ReadonlyMap<string, number>;
  /** The name by which a row of the other is found. */
  nameOf: (row: number) => string;
  how: string;
}

/**
 * Joins tables of one text, where one gives keys and another, in any order of its rows, more values without keys for the same samples or
 * for the layers that they are in: each row of the first is followed by what the others give for it. `undefined` where there is nothing
 * to join.
 */
export function joinTables(cells: TableCells, tables: readonly TableRows[]): TableCells | undefined {
  if (tables.length < 2 || tables.length > mostTables || cells.rowCount > mostRows) return undefined;
  const read = tables.map((rows) => ({ rows, columns: readColumns(cells, rows) }));
  const named = read.map(namedTable);
  const at = named.findIndex((one) => one?.hasKeys);
  const [first, zones] = [named[at], read[at]];
  if (!first || !zones) return undefined;
  const isAlone = named.filter((one) => one?.hasKeys).length === 1;
  const others = read.flatMap((one, place) => {
    if (place === at) return [];
    const layers = isAlone ? layerTable(cells, one, zones) : undefined;
    const how = 'A table of layers gives values to all zones of each';
    return layers ? { ...layers, how } : (sameSamples(cells, named[place], first) ?? []);
  });
  return others.length === 0 ? undefined : joined(cells, first.rows, others);
}

/** A table of values without keys for the samples that another gives keys. */
function sameSamples(cells: TableCells, one: Named | undefined, first: Named): Added | undefined {
  if (!one || one.hasKeys || !one.hasValues) return undefined;
  const names = new Set(first.rows.data.map((row) => nameIn(cells, row, first)));
  const own = one.rows.data.map((row) => [nameIn(cells, row, one), row] as const);
  const filled = own.filter(([name]) => name !== '');
  const byName = new Map(filled);
  const shared = filled.filter(([name]) => names.has(name)).length;
  if (filled.length === 0 || shared * 2 < filled.length || byName.size < filled.length) return undefined;
  const nameOf = (row: number) => nameIn(cells, row, first);
  const how =
    'Tables that name the same samples are joined: each zone has the values that they give for its sample';
  return { rows: one.rows, column: one.sample, byName, nameOf, how };
}

function namedTable({ rows, columns }: ReadRows): Named | undefined {
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

function joined(cells: TableCells, first: TableRows, others: readonly Added[]): TableCells {
  const cellsOf = (row: number) => Array.from({ length: cells.width(row) }, (_, at) => cells.cell(row, at));
  const without = (row: number, column: number) => cellsOf(row).filter((_, at) => at !== column);
  const taken = new Set<number>();
  const notes: { text: string; start: number; end: number }[] = [];
  const left: typeof notes = [];
  const byRow = new Map<number, number[]>();
  const headings = headingRowOf(cells, first);
  const wide = (row: number[], width: number) => [
    ...row,
    ...Array<number>(Math.max(0, width - row.length)).fill(-1),
  ];
  let width = first.width;
  for (const { rows: table, column, byName, nameOf, how } of others) {
    const heading = headingRowOf(cells, table);
    if (headings >= 0 && heading >= 0)
      byRow.set(headings, [
        ...wide(byRow.get(headings) ?? cellsOf(headings), width),
        ...without(heading, column),
      ]);
    if (heading >= 0) taken.add(heading);
    const names = new Set<string>();
    for (const row of first.data) {
      const name = nameOf(row);
      names.add(name);
      const found = byName.get(name);
      if (found !== undefined)
        byRow.set(row, [...wide(byRow.get(row) ?? cellsOf(row), width), ...without(found, column)]);
    }
    for (const row of table.data) taken.add(row);
    for (const [name, row] of byName) {
      const cell = cells.cell(row, column);
      const span = { start: cells.starts[cell], end: cells.ends[cell] };
      if (notes.every(({ text }) => text !== `${how}.`)) notes.push({ text: `${how}.`, ...span });
      if (names.has(name)) continue;
      const text = `"${shortened(cells.value(cell))}" stands only in a table without keys, so it is left out.`;
      left.push({ text, ...span });
    }
    width += table.width - 1;
  }
  const rows: number[][] = [];
  for (let row = 0; row < cells.rowCount; row++)
    if (!taken.has(row)) rows.push(byRow.get(row) ?? cellsOf(row));
  const arranged = arrangedCells(cells, rows, true);
  arranged.assumptions = [...notes, ...cells.assumptions, ...left];
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
