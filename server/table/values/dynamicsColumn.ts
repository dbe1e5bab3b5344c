import { dynamicsIn } from '../../trade/dynamicsIn';
import { CellReadings } from '../cells/cellReadings';
import type { ZoneCells } from '../zones/zoneCells';
import type { MergedRows } from './mergedRows';

/** Reads the column of dynamics, if there is one. */
export function readDynamicsColumn(table: ZoneCells, merged: MergedRows): void {
  const column = table.column('dynamics');
  if (!column) return;
  const readings = new CellReadings(table.cells, (text) => {
    const layer = /^[1-9]$|^10$/.test(text) ? Number(text) - 1 : undefined;
    return layer === undefined ? dynamicsIn(text) : { soft: layer, loud: layer };
  });
  const isNumber = (cell: number) => table.cells.digits(cell, 2) >= 0;
  table.zones.areLayersNumbered = table.data.some((row) => isNumber(table.cellOf(row, column)));
  table.each(
    column,
    (zone, cell) => {
      const dynamics = table.reading(readings, cell, column);
      if (dynamics) table.zones.setDynamic(zone, cell, dynamics.soft, dynamics.loud);
      else table.drop(cell, column, 'names no dynamics such as p, mf or ff');
    },
    merged.velocityRows,
  );
}
