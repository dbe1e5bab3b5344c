import { haveOwnStatements } from '../../../trade/statements/ownStatements';
import type { Statements } from '../../../trade/statements/statements';
import { statementsIn } from '../../../trade/statements/statements';
import type { TableCells } from '../../cells/cells';
import type { TableRows } from '../../cells/tableRows';
import { repeatsHeadings } from '../../cells/tableRows';
import { headingRowsOf, linesOver, namesFile } from './linesOver';

/** So many parts of one table are told apart. */
const mostParts = 50;

/**
 * Parts tables whose headings are repeated where the lines over the parts state different things of them, as `middle C = C3` and `middle C = C4`;
 * the same where they do not.
 */
export function partTablesBySaid(cells: TableCells, tables: readonly TableRows[]): TableRows[] {
  if (cells.areRecords) return [...tables];
  const headings = headingRowsOf(cells, tables);
  return tables.flatMap((table) => {
    const starts = startsOfParts(table);
    if (starts.length < 2 || starts.length > mostParts) return [table];
    const over = starts.map((start) => linesOver(cells, firstZone(cells, table.data, start), headings));
    if (!haveOwnStatements(over.map(({ texts }) => statementsIn(texts)))) return [table];
    const used = new Set(over.flatMap(({ rows }) => rows));
    return starts.map((start, at) => partOf(table, at === 0 ? 0 : start, starts[at + 1], used));
  });
}

/** The first row of data, and those behind rows that repeat the headings. */
function startsOfParts({ data, others }: TableRows): number[] {
  const repeated = others
    .filter(({ why }) => why === repeatsHeadings)
    .map(({ row }) => row)
    .slice(0, mostParts + 1);
  const starts = [data[0], ...repeated.map((heading) => data.find((row) => row > heading))];
  return [...new Set(starts.filter((row) => row !== undefined))];
}

/** The first row from one on that names a file; that one where none does. */
function firstZone(cells: TableCells, data: readonly number[], start: number): number {
  return data.find((row) => row >= start && namesFile(cells, row)) ?? start;
}

/** The rows of a table from one up to another. Lines that are used by what they state are no more than lines above zones. */
function partOf(
  table: TableRows,
  start: number,
  end: number | undefined,
  used: ReadonlySet<number>,
): TableRows {
  const isIn = (row: number) => row >= start && (end === undefined || row < end);
  return {
    ...table,
    data: table.data.filter(isIn),
    sections: new Map([...table.sections].filter(([row]) => isIn(row))),
    others: table.others.flatMap(({ row, why }) => {
      if (!isIn(row) || why === repeatsHeadings) return [];
      return [{ row, why: used.has(row) ? 'stands above the zones' : why }];
    }),
    afterBlank: table.afterBlank.filter(isIn),
  };
}

/** What the lines over each table state. */
export function statedOver(cells: TableCells, tables: readonly { rows: TableRows }[]): Statements[] {
  const all = tables.map(({ rows }) => rows);
  const headings = headingRowsOf(cells, all);
  return all.map(({ data }) => {
    if (data.length === 0) return statementsIn([]);
    return statementsIn(linesOver(cells, firstZone(cells, data, data[0]), headings).texts);
  });
}
