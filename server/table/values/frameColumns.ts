import type { ZoneCells } from '../zones/zoneCells';

/** Reads where samples start and end: frame counts; 0 is where a sample starts, and no sample ends there. */
export function readFrameColumns(table: ZoneCells): void {
  for (const meaning of ['offset', 'end'] as const) {
    const column = table.column(meaning);
    if (!column) continue;
    const frames = table.zones.column(meaning);
    table.each(column, (zone, cell) => {
      const frame = table.frameIn(zone, cell, column);
      if (frame !== undefined && frame > 0) frames.set(zone, cell, frame);
    });
  }
}
