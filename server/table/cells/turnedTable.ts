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
  // A column that names samples has many texts that differ.
  return rows.slice(0, 25).every((row) => {
    let inRow = 0;
    const width = Math.min(cells.width(row), 100);
    for (let column = 0; column < width && inRow < different; column++) if (isKnown(row, column)) inRow++;
    return inRow < different;
  });
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
