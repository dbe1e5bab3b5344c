import { readSequence } from '../../trade/numberReading';
import { CellReadings } from '../cells/cellReadings';
import type { ZoneCells } from '../zones/zoneCells';

/** Reads round robin positions and how many there are. */
export function readSequenceColumns(table: ZoneCells): void {
  for (const meaning of ['seq_position', 'seq_length'] as const) {
    const column = table.column(meaning);
    if (!column) continue;
    const values = table.zones.column(meaning);
    const lengths = table.zones.column('seq_length');
    const readings = new CellReadings(table.cells, readSequence);
    table.each(column, (zone, cell) => {
      const number = table.cells.digits(cell, 3);
      const reading = number >= 0 ? undefined : readings.of(cell);
      const position = number >= 0 ? number : reading?.position;
      if (position === undefined || position < 1 || position > 100) {
        table.drop(cell, column, 'is no round robin number from 1 to 100');
        return;
      }
      values.set(zone, cell, position);
      const length = reading?.length;
      if (meaning === 'seq_position' && length !== undefined && length >= position)
        lengths.set(zone, cell, length);
    });
  }
}
