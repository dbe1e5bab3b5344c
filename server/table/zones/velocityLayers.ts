import { PairNumbers } from '../../model/overlaps/pairNumbers';
import type { ColumnReading } from '../columns/columnReading';
import { columnName } from '../columns/columnReading';
import type { TableNotes } from '../tableNotes';
import type { ZoneList } from './zoneList';

/**
 * Where a table gives the highest velocity of each layer alone, the lowest is one above the next lower layer of the
 * same keys and round robin position. The lowest layer starts at velocity 1, which is the default and not written.
 * The zones of the table are those from number `first` on.
 */
export function completeLayers(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  notes: TableNotes,
): void {
  const column = columns.find(({ meaning }) => meaning === 'hivel');
  const high = zones.values('hivel');
  if (!column || !high) return;
  if (columns.some(({ meaning }) => meaning === 'lovel' || meaning === 'velocity_range')) return;
  const { cells } = zones;
  const low = zones.column('lovel');
  let firstCell = -1;
  for (const layers of layersOf(zones, first)) {
    layers.sort((a, b) => high.numbers[a] - high.numbers[b]);
    let below = 0;
    let velocity = 0;
    for (const zone of layers) {
      if (high.numbers[zone] !== velocity) {
        below = velocity;
        velocity = high.numbers[zone];
      }
      if (below === 0) continue;
      const cell = high.cells[zone];
      low.set(zone, cell, below + 1);
      if (firstCell < 0 || cell < firstCell) firstCell = cell;
    }
  }
  if (firstCell < 0) return;
  const span = { start: cells.starts[firstCell], end: cells.ends[firstCell] };
  const message = `The table gives no low velocities: each layer starts one above the next lower one in ${columnName(column)}.`;
  notes.add('assumed', column.headingSpan ?? span, message);
}

/** Zones with a highest velocity, those of the same keys and round robin position together. */
function layersOf(zones: ZoneList, first: number): number[][] {
  const high = zones.values('hivel');
  const [key, lowKey, highKey] = [zones.values('key'), zones.values('lokey'), zones.values('hikey')];
  const position = zones.values('seq_position');
  const numbers = new PairNumbers();
  const layers: number[][] = [];
  for (let zone = first; zone < zones.count; zone++) {
    if (!high || high.cells[zone] < 0) continue;
    const keys = ((key?.oneMore(zone) ?? 0) * 129 + (lowKey?.oneMore(zone) ?? 0)) * 129;
    const number = numbers.numberOf(keys + (highKey?.oneMore(zone) ?? 0), position?.oneMore(zone) ?? 0);
    if (number === layers.length) layers.push([]);
    layers[number].push(zone);
  }
  return layers;
}
