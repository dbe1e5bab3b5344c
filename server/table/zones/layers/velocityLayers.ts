import { PairNumbers } from '../../../model/overlaps/pairNumbers';
import type { ColumnReading } from '../../columns/columnReading';
import { columnName } from '../../columns/columnReading';
import type { TableNotes } from '../../tableNotes';
import type { ValueColumn, ZoneList } from '../zoneList';

/**
 * Where a table gives one end of the velocities of each layer alone, the other is next to the layer below or above it, of the same
 * keys, round robin position and chance. The lowest layer starts at velocity 1 and the highest ends at 127, which are the defaults
 * and not written. The zones of the table are those from number `first` on.
 */
export function completeLayers(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  notes: TableNotes,
): void {
  const given = (meaning: ColumnReading['meaning']) => columns.find((column) => column.meaning === meaning);
  const [low, high] = [given('lovel'), given('hivel')];
  const column = low ?? high;
  if (!column || (low && high) || given('velocity_range')) return;
  const ends = zones.values(low ? 'lovel' : 'hivel');
  if (!ends) return;
  const others = zones.column(low ? 'hivel' : 'lovel');
  let firstCell = -1;
  for (const layers of layersOf(zones, first, ends)) {
    const velocities = [...new Set(layers.map((zone) => ends.numbers[zone]))].sort((a, b) => a - b);
    for (const zone of layers) {
      const at = velocities.indexOf(ends.numbers[zone]);
      const next = velocities[low ? at + 1 : at - 1];
      if (next === undefined) continue;
      const cell = ends.cells[zone];
      others.set(zone, cell, low ? next - 1 : next + 1);
      if (firstCell < 0 || cell < firstCell) firstCell = cell;
    }
  }
  if (firstCell < 0) return;
  const span = { start: zones.cells.starts[firstCell], end: zones.cells.ends[firstCell] };
  const message = low
    ? `The table gives no high velocities: each layer ends one below the next higher one in ${columnName(column)}.`
    : `The table gives no low velocities: each layer starts one above the next lower one in ${columnName(column)}.`;
  notes.add('assumed', column.headingSpan ?? span, message);
}

/** Zones with a velocity, those of the same keys, round robin position and chance together. */
function layersOf(zones: ZoneList, first: number, ends: ValueColumn): number[][] {
  const [key, lowKey, highKey] = [zones.values('key'), zones.values('lokey'), zones.values('hikey')];
  const position = zones.values('seq_position');
  const numbers = new PairNumbers();
  const layers: number[][] = [];
  for (let zone = first; zone < zones.count; zone++) {
    if (ends.cells[zone] < 0) continue;
    const keys = ((key?.oneMore(zone) ?? 0) * 129 + (lowKey?.oneMore(zone) ?? 0)) * 129;
    const number = numbers.numberOf(keys + (highKey?.oneMore(zone) ?? 0), position?.oneMore(zone) ?? 0);
    if (number === layers.length) layers.push([]);
    layers[number].push(zone);
  }
  return layers;
}
