import { readNumber } from '../../trade/readings/numberReading';
import type { ColumnReading } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

/** So many of the pieces that others follow have to end where these start (our choice). */
const mostTouching = 0.8;

/** Whether the ends of pieces of one recording are the starts of others, and so the frames behind their last ones. */
export function endsAreStarts(table: ZoneCells, column: ColumnReading): boolean {
  const start = table.column('offset');
  if (!start) return false;
  const starts = new Set<string>();
  const ends: string[] = [];
  table.each(column, (zone, cell) => {
    const sample = table.zones.sample(zone);
    const from = readNumber(table.cells.plain(table.cellOf(table.zones.rows[zone], start)), 'time')?.number;
    const to = readNumber(table.cells.plain(cell), 'time')?.number;
    if (from === undefined || to === undefined || to <= from) return;
    starts.add(`${from} ${sample}`);
    ends.push(`${to} ${sample}`);
  });
  const touching = ends.filter((end) => starts.has(end)).length;
  // The last piece has none behind it.
  return touching > 1 && touching >= (ends.length - 1) * mostTouching;
}
