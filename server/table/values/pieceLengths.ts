import type { ColumnReading } from '../columns/columnReading';
import { columnName } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';
import type { Positions } from './positions';

/** Reads the ends of pieces whose lengths a table gives beside their starts: the last frame is the one before the next piece. */
export function readPieceLengths(table: ZoneCells, positions: Positions): void {
  const column = table.column('length');
  if (!column || table.column('end')) return;
  const start = table.column('offset');
  const ends = table.zones.column('end');
  let isNoted = false;
  table.each(column, (zone, cell) => {
    const behind = endOf(zone, cell, column, start, table, positions);
    if (behind === undefined || behind <= 0) return;
    // A time at the very end is taken for the last frame already.
    const end = behind - 1;
    ends.set(zone, cell, end);
    positions.noteBeyond(zone, cell, column, end);
    if (isNoted) return;
    isNoted = true;
    table.noteColumn(
      column,
      `${columnName(column)} gives how long pieces are, so each ends at its start and this length, less the frame behind the last.`,
      'approximated',
    );
  });
}

/** The frame behind a piece; a length of 0 gives none. */
function endOf(
  zone: number,
  cell: number,
  column: ColumnReading,
  startColumn: ColumnReading | undefined,
  table: ZoneCells,
  positions: Positions,
): number | undefined {
  const { cells } = table;
  const startCell = startColumn ? table.cellOf(table.zones.rows[zone], startColumn) : -1;
  const length = positions.numberIn(cells.plain(cell), column);
  const start = startColumn && startCell >= 0 && positions.numberIn(cells.plain(startCell), startColumn);
  if (length?.number === 0) return undefined;
  const unit = length?.unit ?? positions.styleOf(column).unit;
  const startUnit = start && startColumn ? (start.unit ?? positions.styleOf(startColumn).unit) : unit;
  // Added before they are rounded, so that a piece ends where the next one starts.
  if (length && start && unit === startUnit)
    return positions.framesOf(
      { ...length, number: length.number + start.number },
      { zone, cell, column, isEnd: false },
    );
  const frames = positions.frameIn({ zone, cell, column, isEnd: false });
  const from =
    startColumn && startCell >= 0
      ? positions.frameIn({ zone, cell: startCell, column: startColumn, isEnd: false })
      : 0;
  return frames === undefined || from === undefined ? undefined : from + frames;
}
