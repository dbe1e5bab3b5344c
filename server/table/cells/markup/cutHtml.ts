import type { TableCells } from '../cells';
import { leaveOutLastRow } from '../cutEnd';
import type { CutEnd } from '../cutPlace';

const fewestClosed = 2;

/**
 * Leaves out the last row of a table in HTML where its tag is not closed and those of others are: the text ends in the middle of it. A table
 * that is not closed itself is told.
 */
export function leaveOutCutHtml(cells: TableCells): CutEnd | undefined {
  const text = cells.text.toLowerCase();
  const row = text.lastIndexOf('<tr');
  const closed = text.match(/<\/tr\s{0,9}>/g)?.length ?? 0;
  const close = Math.max(text.lastIndexOf('</tr'), text.lastIndexOf('</table'), text.lastIndexOf('</tbody'));
  if (row > close && closed >= fewestClosed) {
    const last = cells.rowCount - 1;
    const end = text.trimEnd().length;
    if (last > 0 && cells.rowSpan(last).start >= row) return leaveOutLastRow(cells);
    return { start: row, end, isZone: true };
  }
  const table = text.lastIndexOf('<table');
  if (table < 0 || text.indexOf('</table', table) > 0) return undefined;
  return { start: table, end: text.trimEnd().length, isZone: false };
}
