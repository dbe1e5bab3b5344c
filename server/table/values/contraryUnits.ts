import { scaleIn } from '../../trade/headings/statedScale';
import type { ColumnMeaning, Unit } from '../../trade/meaning';
import { readNumber } from '../../trade/readings/numberReading';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

const unread: ReadonlySet<ColumnMeaning> = new Set(['sample', 'group', 'comment', 'row_number', 'unknown']);
/** One number with what stands around it; the sum of two, as `1 st 20 ct`, is in the unit of both. */
const oneNumber = /^[^\d]*\d+(?:[.,]\d*)?[^\d]*$/u;

/** Notes, once for a column, that units in cells are others than the one in its heading: those in the cells count. */
export function noteContraryUnits(table: ZoneCells): void {
  for (const column of table.columns) {
    if (unread.has(column.meaning)) continue;
    const said = column.unit ?? scaleIn(column.heading);
    const cell = said === undefined ? undefined : firstContrary(table, column, said);
    if (cell === undefined) continue;
    table.noteColumn(
      column,
      `In ${columnName(column)} the units in cells are not that of the heading, as in "${shortened(table.cells.value(cell))}". Where a cell has a unit, it counts, and not the heading.`,
    );
  }
}

/** The first cell of a column with another unit than its heading gives. */
function firstContrary(
  table: ZoneCells,
  column: ColumnReading,
  said: Unit | { high: number },
): number | undefined {
  const { cells, zones } = table;
  for (let zone = table.first; zone < table.end; zone++) {
    const cell = table.cellOf(zones.rows[zone], column);
    if (cell < 0 || !Number.isNaN(cells.number(cell))) continue;
    const text = cells.plain(cell);
    const unit = oneNumber.test(text) ? readNumber(text)?.unit : undefined;
    if (unit !== undefined && !isSame(unit, said)) return cell;
  }
  return undefined;
}

/** Whether a unit is the one that a heading gives, or counts the values that it gives. */
function isSame(unit: Unit, said: Unit | { high: number }): boolean {
  if (typeof said !== 'string') return unit === 'percent' && said.high === 100;
  return unit === said || (unit === 'kHz' && said === 'Hz') || (unit === 'Hz' && said === 'kHz');
}
