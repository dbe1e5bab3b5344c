import { dynamicIn } from '../../trade/dynamics';
import { CellReadings } from '../cells/cellReadings';
import type { ZoneCells } from '../zones/zoneCells';

/** Reads the dynamics that zones were played with. */
export function readDynamicsColumn(table: ZoneCells): void {
  const column = table.column('dynamics');
  if (!column) return;
  const readings = new CellReadings(table.cells, dynamicIn);
  table.each(column, (zone, cell) => {
    const dynamic = readings.of(cell);
    if (dynamic >= 0) table.zones.setDynamic(zone, cell, dynamic);
    else table.drop(cell, column, 'names no dynamics such as p, mf or ff');
  });
}
