import { readVelocities } from '../../trade/readings/velocityReading';
import { CellReadings } from '../cells/cellReadings';
import type { ZoneCells } from '../zones/zoneCells';

/** Reads the velocities between which a zone comes in and goes out, as for crossfades of layers: `20-40`. */
export function readFadeColumns(table: ZoneCells): void {
  const readings = new CellReadings(table.cells, readVelocities);
  for (const [meaning, low, high] of [
    ['fade_in', 'xfin_lovel', 'xfin_hivel'],
    ['fade_out', 'xfout_lovel', 'xfout_hivel'],
  ] as const) {
    const column = table.column(meaning);
    if (!column) continue;
    const [lows, highs] = [table.zones.column(low), table.zones.column(high)];
    table.each(column, (zone, cell) => {
      const reading = table.reading(readings, cell, column);
      const [from, to] = [reading?.low, reading?.high];
      const isRange =
        from !== undefined && to !== undefined && from < to && to <= 127 && Number.isInteger(from + to);
      if (!isRange || reading?.unit !== undefined) {
        table.drop(cell, column, 'is not a range of velocities from 0 to 127');
        return;
      }
      lows.set(zone, cell, from);
      highs.set(zone, cell, to);
    });
  }
}
