import type { StatedFolder } from '../../../trade/statements/folders';
import { folderIn, folderPath, headsFolder } from '../../../trade/statements/folders';
import type { TableCells } from '../../cells/cells';
import type { TableRows } from '../../cells/tableRows';
import { takesInCell } from '../../zones/takesInCell';
import type { ColumnReading } from '../columnReading';
import { columnName, shortened } from '../columnReading';

/** Puts the folders that a column or the titles of sections name before the samples of their rows, where these have none of their own. */
export function useFolders(
  cells: TableCells,
  { rows, columns }: { rows: TableRows; columns: readonly ColumnReading[] },
): void {
  const samples = columns.filter(({ meaning }) => meaning === 'sample');
  if (samples.length === 0) return;
  const column = columns.find((one) => holdsFolders(cells, rows.data, one));
  const ofTitles = new Map<number, StatedFolder | undefined>();
  for (const title of new Set(column ? [] : rows.sections.values()))
    ofTitles.set(title, folderIn([cells.plain(title)]));
  const said = new Map<string, number>();
  for (const row of rows.data) {
    const title = rows.sections.get(row) ?? -1;
    const of = column ? cells.cell(row, column.index) : title;
    const folder = column ? folderPath(cells.value(of)) : ofTitles.get(title)?.path;
    if (folder === undefined) continue;
    const placed = samples.map(({ index }) => putBefore(cells, cells.cell(row, index), folder));
    if (placed.includes(true) && !said.has(folder)) said.set(folder, of);
  }
  const [[folder, cell] = ['', -1]] = said;
  if (cell < 0) return;
  const text = column
    ? `The folders in ${columnName(column)} are put before the sample names, as "${shortened(folder)}".`
    : `The folder ${folder} is put before the samples, as "${shortened(cells.plain(cell))}" names it.`;
  cells.assumptions = [...cells.assumptions, { text, start: cells.starts[cell], end: cells.ends[cell] }];
  if (column) {
    column.isUsed = true;
    column.evidence = ['Its folders are put before the sample names.'];
  }
}

/** Whether a column that has no other meaning is headed by a word for a folder, and its cells can be some. */
function holdsFolders(
  cells: TableCells,
  data: readonly number[],
  { index, heading, meaning }: ColumnReading,
): boolean {
  if (meaning !== 'unknown' || heading === '') return false;
  const texts = data.map((row) => cells.value(cells.cell(row, index))).filter((text) => text !== '');
  return (
    texts.length > 0 &&
    headsFolder(
      heading,
      texts.every((text) => /[/\\]$/.test(text)),
    )
  );
}

/** Puts a folder before the name of a sample without one; answers whether it could be. */
function putBefore(cells: TableCells, cell: number, folder: string): boolean {
  const name = cells.value(cell);
  if (name === '' || /[/\\]/.test(name) || takesInCell(cells, cell).length > 1) return false;
  cells.rewritten.set(cell, `${folder}${name}`);
  return true;
}
