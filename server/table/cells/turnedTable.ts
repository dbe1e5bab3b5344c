import { isAudioFileName } from '../../model/fileNames';
import { readHeading } from '../../trade/headings/headings';
import { countKnown } from '../headings/headingRows';
import { arrangedCells } from './arrangedCells';
import type { TableCells } from './cells';
import { namesAudioFile } from './namesAudioFile';

/** A table with more lines than this has no column for each zone. */
const mostRows = 200;
const mostCells = 2_000_000;
const mostBeforeHeadings = 10;
const mostColumns = 100;

/**
 * Turns a table that has a column for each zone, so that each zone has a row; `undefined` where it has rows already.
 * It has columns where its first column holds more known headings than any row, or its sample files stand in one row.
 */
export function turnedTable(cells: TableCells): TableCells | undefined {
  const rows: number[] = [];
  let width = 0;
  for (let row = 0; row < cells.rowCount; row++) {
    if (cells.filled(row) === 0 || cells.struckRows.has(row)) continue;
    rows.push(row);
    if (rows.length > mostRows) return undefined;
    width = Math.max(width, cells.width(row));
  }
  if (rows.length < 2 || width < 2 || rows.length * width > mostCells) return undefined;
  if (!hasLabels(cells, rows) && !hasFileRow(cells, rows)) return undefined;
  const turned: number[][] = [];
  for (let column = 0; column < width; column++) turned.push(rows.map((row) => cells.cell(row, column)));
  const arranged = arrangedCells(cells, turned, true);
  const struck = Array.from(cells.struckRows, (row) => ({
    text: 'A line that is struck out is left out.',
    ...cells.rowSpan(row),
  }));
  arranged.assumptions = [...arranged.assumptions, ...struck];
  return arranged;
}

function hasLabels(cells: TableCells, rows: readonly number[]): boolean {
  // The name of a file is none, and asking for it would ask for the words of all languages.
  const isKnown = (row: number, column: number) => {
    const cell = cells.cell(row, column);
    return !namesAudioFile(cells, cell) && readHeading(cells.value(cell)) !== undefined;
  };
  const labelled = rows.filter((row) => !cells.isEmpty(row, 0));
  const known = labelled.filter((row) => isKnown(row, 0));
  // Headings of rows stand once each, or twice below wider ones; a column of kinds of zones has few words again and again.
  const different = new Set(known.map((row) => cells.value(cells.cell(row, 0)).toLowerCase())).size;
  if (different < 2 || different * 2 < known.length || known.length * 5 < labelled.length * 3) return false;
  if (hasSampleColumn(cells, rows)) return false;
  // A column that names samples has many texts that differ; headings of rows stand once each.
  return rows.slice(0, 25).every((row) => {
    let inRow = 0;
    const width = Math.min(cells.width(row), 100);
    for (let column = 0; column < width && inRow < different; column++) if (isKnown(row, column)) inRow++;
    return inRow < different;
  });
}

/**
 * Whether samples stand below a heading of theirs, so that what stands first in the rows are values, such as groups named
 * `Release`, `Attack` and `Low`, and not headings.
 */
function hasSampleColumn(cells: TableCells, rows: readonly number[]): boolean {
  const meaningAt = (row: number, column: number) =>
    readHeading(cells.value(cells.cell(row, column)))?.meaning;
  const isFile = (row: number, column: number) => isAudioFileName(cells.value(cells.cell(row, column)));
  const top = rows.slice(0, mostBeforeHeadings).findIndex((row) => countKnown(cells, row) > 1);
  if (top < 0) return false;
  const head = rows[top];
  const below = rows.slice(top + 1);
  if (below.some((row) => isFile(row, 1) && isFile(row, 2))) return false;
  const columns = Array.from({ length: Math.min(cells.width(head), mostColumns) }, (_, column) => column);
  if (columns.some((column) => isFile(head, column))) return false;
  if (columns.slice(1).some((column) => below.filter((row) => isFile(row, column)).length > 1)) return true;
  // Names without endings: headings that name samples stand above them and nowhere among the first of the rows.
  const isSample = (row: number, column: number) => meaningAt(row, column) === 'sample';
  const filled = columns.filter((column) => !cells.isEmpty(head, column));
  return (
    filled.length > 2 &&
    filled.every((column) => meaningAt(head, column) !== undefined) &&
    filled.some((column) => column > 0 && isSample(head, column)) &&
    !rows.some((row) => isSample(row, 0))
  );
}

/** Whether one row holds nothing but files, at least two, and no other row any, nor headings for each column. */
function hasFileRow(cells: TableCells, rows: readonly number[]): boolean {
  if (rows.slice(0, mostBeforeHeadings).some((row) => countKnown(cells, row) > 1)) return false;
  let found = false;
  for (const row of rows) {
    let files = 0;
    const width = cells.width(row);
    for (let column = 0; column < width; column++) {
      if (isAudioFileName(cells.value(cells.cell(row, column)))) files++;
    }
    if (files === 0) continue;
    if (found || files < 2 || files < cells.filled(row) - 1) return false;
    found = true;
  }
  return found;
}
