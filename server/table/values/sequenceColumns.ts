import { readSequence } from '../../trade/readings/numberReading';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

const most = 100;

/** Reads round robin positions and lengths. */
export function readSequenceColumns(table: ZoneCells): void {
  for (const meaning of ['seq_position', 'seq_length'] as const) {
    const column = table.column(meaning);
    if (column) readColumn(table, meaning, column);
  }
}

function readColumn(table: ZoneCells, meaning: 'seq_position' | 'seq_length', column: ColumnReading): void {
  const { zones, cells } = table;
  const values = zones.column(meaning);
  const lengths = zones.column('seq_length');
  const readings = new CellReadings(cells, readSequence);
  const isFromZero = meaning === 'seq_position' && countsFromZero(table, column);
  if (isFromZero)
    table.noteColumn(column, 'The round robin numbers count from 0; 1 is added to each.', 'approximated');
  table.each(column, (zone, cell) => {
    const number = cells.digits(cell, 3);
    const reading = number >= 0 ? undefined : table.reading(readings, cell, column);
    const given = number >= 0 ? number : reading?.position;
    const position = given === undefined ? undefined : given + (isFromZero ? 1 : 0);
    if (position === undefined || position < 1 || position > most) {
      table.drop(cell, column, 'is not a round robin number from 1 to 100');
      return;
    }
    values.set(zone, cell, position);
    const length = reading?.length;
    if (meaning === 'seq_position' && length !== undefined && length >= position)
      lengths.set(zone, cell, length);
  });
}

function countsFromZero(table: ZoneCells, column: ColumnReading): boolean {
  let zeros = 0;
  let ones = 0;
  table.each(column, (_, cell) => {
    const number = table.cells.digits(cell, 3);
    if (number === 0) zeros++;
    else if (number === 1) ones++;
  });
  return zeros > 0 && ones > 0;
}
