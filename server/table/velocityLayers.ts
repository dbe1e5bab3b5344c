import type { TableCells } from './cells';
import type { ColumnReading } from './meaning';
import { columnName } from './meaning';
import type { TableNotes } from './tableNotes';
import type { Zone, ZoneValue } from './zone';

/**
 * Where a table gives the highest velocity of each layer alone, the lowest is one above the next lower layer of the
 * same keys and round robin position. The lowest layer starts at velocity 1, which is the default and not written.
 */
export function completeLayers(
  zones: readonly Zone[],
  columns: readonly ColumnReading[],
  cells: TableCells,
  notes: TableNotes,
): void {
  const column = columns.find(({ meaning }) => meaning === 'hivel');
  if (!column || columns.some(({ meaning }) => meaning === 'lovel' || meaning === 'velocity_range')) return;
  const layers = new Map<string, { zone: Zone; high: ZoneValue }[]>();
  for (const zone of zones) {
    const high = zone.values.find(({ name }) => name === 'hivel');
    if (!high) continue;
    const keys = conditionsOf(zone);
    const list = layers.get(keys);
    if (list) list.push({ zone, high });
    else layers.set(keys, [{ zone, high }]);
  }
  let first = -1;
  for (const list of layers.values()) {
    list.sort((a, b) => Number(a.high.text) - Number(b.high.text));
    let below = 0;
    let velocity = 0;
    for (const { zone, high } of list) {
      if (Number(high.text) !== velocity) {
        below = velocity;
        velocity = Number(high.text);
      }
      if (below === 0) continue;
      const at = zone.values.indexOf(high);
      zone.values.splice(at, 0, { name: 'lovel', cell: high.cell, text: String(below + 1) });
      if (first < 0 || high.cell < first) first = high.cell;
    }
  }
  if (first < 0) return;
  const span = { start: cells.starts[first] as number, end: cells.ends[first] as number };
  const message = `The table gives no low velocities: each layer starts one above the next lower one in ${columnName(column)}.`;
  notes.add('assumed', column.headingSpan ?? span, message);
}

const conditions = ['key', 'lokey', 'hikey', 'seq_position'];

function conditionsOf({ values }: Zone): string {
  return conditions.map((condition) => values.find(({ name }) => name === condition)?.text ?? '').join(' ');
}
