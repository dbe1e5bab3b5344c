import { isAudioFileName } from '../../../model/fileNames';
import type { MarkLegend } from '../../../trade/statements/nameMarks';
import { legendOf, nameMark, rowMark, saysLeftOut, settingsIn } from '../../../trade/statements/nameMarks';
import type { TableCells } from '../../cells/cells';
import type { TableRows } from '../../cells/tableRows';
import type { ColumnReading } from '../columnReading';

const mostMarks = 12;
/** A sign, or letters that can be one: `x`, `(r)`, `†`. */
const markCell = new RegExp(String.raw`^(?:[([]?(\p{L}{1,3})[)\]]?|${nameMark}|${rowMark})$`, 'u');
/** A mark before the name of a file; of letters only with a blank behind it. */
const markBefore = new RegExp(
  String.raw`^(?:([*\u2020\u2021])\s*|(${nameMark}|${rowMark})\s*|[([]?(\p{L}{1,2})[)\]]?\s+)([\p{L}\p{N}_].{0,300}\.\w{2,4})$`,
  'u',
);

/**
 * Takes the cells of a narrow column of marks, of which some are explained by a legend around the table, for marks of the samples in their
 * rows, as if they stood behind their names: `x` before some rows with `x = muted` below.
 */
export function useRowMarks(
  cells: TableCells,
  { rows, columns }: { rows: TableRows; columns: readonly ColumnReading[] },
  sample: ColumnReading,
  legends: ReadonlyMap<string, MarkLegend>,
): void {
  const isKnown = (mark: string) => {
    const says = legendOf(mark, legends)?.says;
    return says !== undefined && (saysLeftOut(says) || settingsIn(says) !== undefined);
  };
  partMarksBefore(cells, rows.data, sample, isKnown);
  for (const column of columns) {
    if (column.meaning !== 'unknown' && column.meaning !== 'comment') continue;
    const marked = rows.data.filter(
      (row) =>
        !cells.isEmpty(row, column.index) && !cells.isEmpty(row, sample.index) && cells.filled(row) > 1,
    );
    const marks = new Map(marked.map((row) => [row, markIn(cells, row, column)]));
    const kinds = new Set(marks.values());
    if (kinds.size === 0 || kinds.size > mostMarks || kinds.has(undefined)) continue;
    if (![...kinds].some((mark) => mark !== undefined && isKnown(mark))) continue;
    if (marked.some((row) => cells.nameRemarks.has(cells.cell(row, sample.index)))) continue;
    for (const [row, mark = ''] of marks) cells.nameRemarks.set(cells.cell(row, sample.index), mark);
    column.isUsed = true;
    column.evidence = ['Its marks are read as the text explains them.'];
  }
}

/** Parts marks before the names of files from these, where they are explained, or no part of a name. */
function partMarksBefore(
  cells: TableCells,
  data: readonly number[],
  { index }: ColumnReading,
  isKnown: (mark: string) => boolean,
): void {
  for (const row of data) {
    const cell = cells.cell(row, index);
    if (cells.isEmpty(row, index) || cells.nameRemarks.has(cell)) continue;
    const [, sure, sign, letters, name = ''] = markBefore.exec(cells.value(cell)) ?? [];
    const mark = sure ?? sign ?? letters;
    if (mark === undefined || !isAudioFileName(name) || (sure === undefined && !isKnown(mark))) continue;
    cells.rewritten.set(cell, name);
    cells.nameRemarks.set(cell, mark);
  }
}

/** The mark that a cell is; `undefined` for one that is something else. */
function markIn(cells: TableCells, row: number, { index }: ColumnReading): string | undefined {
  const text = cells.value(cells.cell(row, index));
  const [mark, letters] = markCell.exec(text) ?? [];
  return letters ?? mark;
}
