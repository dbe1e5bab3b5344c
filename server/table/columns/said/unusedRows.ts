import { leavesOut } from '../../../trade/statements/leavesOut';
import type { MarkLegend } from '../../../trade/statements/nameMarks';
import { legendOf, nameMarksIn, saysLeftOut } from '../../../trade/statements/nameMarks';
import type { TableCells } from '../../cells/cells';
import type { TableRows } from '../../cells/tableRows';
import type { ColumnReading } from '../columnReading';
import { linesAround } from './linesAround';
import { namesIn, rowsByName, spacedOut, withoutNames } from './namedRows';
import { useRowMarks } from './rowMarks';

const sentences = /[.!?;\u3002](?=\s|$|\P{ASCII})|\n|\s[-*\u2022]\s/u;

/**
 * Finds rows that a sentence around their table says not to use, by the samples that it names, `b_2.wav is not to be used`, or by marks
 * behind these or in a column. Where all rows were meant none is left out.
 */
export function passOverUnused(
  cells: TableCells,
  { rows, columns }: { rows: TableRows; columns: readonly ColumnReading[] },
): void {
  const sample = columns.find(({ meaning }) => meaning === 'sample');
  const lines = sample ? linesAround(cells, rows, sample) : [];
  if (!sample || lines.length === 0) return;
  const table = [{ rowsOf: rowsByName(cells, rows, sample) }];
  const marks = nameMarksIn(
    lines.flatMap(({ span }) => cells.text.slice(span.start, span.end).split(/[\r\n]+/u)),
  );
  useRowMarks(cells, { rows, columns }, sample, marks);
  const unused = new Set(
    cells.nameRemarks.size === 0
      ? []
      : rows.data.filter((row) => isMarkedUnused(cells, cells.cell(row, sample.index), marks)),
  );
  for (const { text } of lines)
    for (const sentence of text.split(sentences)) {
      const written = [sentence, spacedOut(sentence)].find((one) => namesIn(one, table).size > 0);
      if (written === undefined) continue;
      const names = namesIn(written, table);
      const rest = withoutNames(written, (name) => names.has(name));
      if (!leavesOut(rest, names.size > 1)) continue;
      for (const name of names) for (const row of table[0].rowsOf.get(name) ?? []) unused.add(row);
    }
  const zones = rows.data.filter((row) => !cells.isEmpty(row, sample.index) && cells.filled(row) > 1);
  if (zones.every((row) => unused.has(row))) return;
  for (const row of unused) cells.unusedRows.add(row);
}

/** Whether the mark behind a name means that the sample is not used. */
function isMarkedUnused(cells: TableCells, cell: number, marks: ReadonlyMap<string, MarkLegend>): boolean {
  const remark = cells.nameRemarks.get(cell);
  const legend = remark === undefined ? undefined : legendOf(remark, marks);
  return legend !== undefined && saysLeftOut(legend.says);
}
