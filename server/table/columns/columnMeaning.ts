import type { ColumnMeaning } from '../../trade/meaning';
import type { TableCells } from '../cells/cells';
import type { TableRows } from '../cells/tableRows';
import { readFromHeadings } from '../headings/fromHeadings';
import { Glossary } from '../headings/glossary';
import type { ColumnReading } from './columnReading';
import { ColumnState } from './columnState';
import { readFromContents } from './fromContents';
import { settleColumns } from './settleColumns';

/**
 * Finds what each column of a table holds: from its heading, unless the cells below contradict it, else from the
 * cells alone. `chosen` gives meanings that a person has set, by column.
 */
export function readColumns(
  cells: TableCells,
  rows: TableRows,
  chosen: ReadonlyMap<number, ColumnMeaning> = new Map(),
  glossary: Glossary = new Glossary(cells, [rows]),
): ColumnReading[] {
  const state = new ColumnState(cells, rows, chosen);
  readFromHeadings(state, glossary);
  settleColumns(state);
  readFromContents(state);
  return state.columns;
}
