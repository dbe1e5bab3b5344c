import type { OneRecording } from '../../trade/statements/oneRecording';
import { oneRecordingIn } from '../../trade/statements/oneRecording';
import { shortened } from '../columns/columnReading';
import { lieInTurn, pieceColumns, piecesOf } from '../headings/pieceHeadings';
import { arrangedCells } from './arrangedCells';
import type { TableCells } from './cells';
import { namesAudioFile } from './namesAudioFile';
import type { TableRows } from './tableRows';

const mostRows = 20_000;
/** The heading of a column that the text does not have. */
export const recordingHeading = 'Sample';

/**
 * Puts the one recording that the texts around a table name into a column of its own, where the rows name no files and give pieces of it:
 * their starts, and their ends or lengths. `undefined` where there is nothing to put in.
 */
export function withRecording(
  cells: TableCells,
  tables: readonly TableRows[],
  texts: readonly string[],
): TableCells | undefined {
  if (cells.rowCount > mostRows) return undefined;
  const filled = tables.filter(({ data }) => data.length > 0);
  const [table] = filled;
  if (!table || filled.length > 1) return undefined;
  const columns = pieceColumns(table);
  const recording = columns && oneRecordingIn(texts);
  if (!columns || !recording) return undefined;
  const zones = table.data.filter((row) => cells.filled(row) > 1);
  if (zones.some((row) => namesFile(cells, row))) return undefined;
  const pieces = piecesOf(cells, zones, columns);
  const areAll = zones.length > 0 && pieces.size * 10 >= zones.length * 9;
  if (!areAll || !(recording.isSaid || lieInTurn(pieces.values()))) return undefined;
  return arranged(cells, table, new Set(zones), recording);
}

function namesFile(cells: TableCells, row: number): boolean {
  for (let cell = cells.rowFirst[row]; cell < cells.rowFirst[row + 1]; cell++)
    if (namesAudioFile(cells, cell)) return true;
  return false;
}

function arranged(
  cells: TableCells,
  { headings, width }: TableRows,
  zones: ReadonlySet<number>,
  { name, text }: OneRecording,
): TableCells | undefined {
  const start = cells.text.indexOf(name);
  const heading = headings.find(({ cell }) => cell >= 0)?.cell;
  if (start < 0 || heading === undefined) return undefined;
  const named = cells.put(start, start + name.length);
  const headed = cells.put(cells.starts[heading], cells.ends[heading]);
  cells.rewritten.set(headed, recordingHeading);
  const rows: number[][] = [];
  for (let row = 0; row < cells.rowCount; row++) {
    const own = Array.from({ length: cells.width(row) }, (_, at) => cells.cell(row, at));
    const added = zones.has(row) ? named : own.includes(heading) ? headed : undefined;
    const missing = Math.max(0, width - own.length);
    rows.push(added === undefined ? own : [...own, ...Array<number>(missing).fill(-1), added]);
  }
  const found = arrangedCells(cells, rows, true);
  found.assumptions = [
    {
      text: `"${shortened(text)}": the rows are taken for pieces of ${shortened(name)}, the only recording that is named.`,
      start,
      end: start + name.length,
    },
    ...cells.assumptions,
  ];
  return found;
}
