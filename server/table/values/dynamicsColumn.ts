import { dynamicIn } from '../../trade/dynamics';
import { CellReadings } from '../cells/cellReadings';
import type { ZoneCells } from '../zones/zoneCells';
import type { MergedRows } from './mergedRows';

/** Reads the column of dynamics, if there is one. */
export function readDynamicsColumn(table: ZoneCells, merged: MergedRows): void {
  const column = table.column('dynamics');
  if (!column) return;
  const readings = new CellReadings(table.cells, (text) => {
    const dynamic = /^[1-9]$|^10$/.test(text) ? Number(text) - 1 : dynamicIn(text);
    return dynamic < 0 ? undefined : dynamic;
  });
  const isNumber = (cell: number) => table.cells.digits(cell, 2) >= 0;
  table.zones.areLayersNumbered = table.data.some((row) => isNumber(table.cellOf(row, column)));
  table.each(
    column,
    (zone, cell) => {
      const dynamic = table.reading(readings, cell, column);
      if (dynamic !== undefined) table.zones.setDynamic(zone, cell, dynamic);
      else table.drop(cell, column, 'names no dynamics such as p, mf or ff');
    },
    merged.velocityRows,
  );
}
