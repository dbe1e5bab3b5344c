import { counted } from '../../../model/wording/counted';
import type { ColumnReading } from '../../columns/columnReading';
import type { TableNotes } from '../../tableNotes';
import type { ZoneList } from '../zoneList';

/** So many zones tell whether some sound together. */
const mostLooks = 2000;
const conditions = ['key', 'lokey', 'hikey', 'lovel', 'hivel', 'seq_position', 'trigger', 'pan'] as const;

/**
 * Notes where zones of one group answer the same keys and velocities in every way, which may be meant as round robins. Zones from
 * number `first` on are looked at.
 */
export function noteSameConditions(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  notes: TableNotes,
): void {
  if (columns.some(({ side }) => side !== undefined)) return;
  const values = conditions.map((name) => zones.values(name));
  const [key, low, high] = values;
  const seen = new Map<string, number>();
  let alike = 0;
  let example: readonly [number, number] | undefined;
  for (let zone = first; zone < Math.min(zones.count, first + mostLooks); zone++) {
    const isEverywhere = [key, low, high].every((one) => (one?.oneMore(zone) ?? 0) === 0);
    if (isEverywhere) continue;
    const text = `${zones.groups[zone]} ${values.map((one) => one?.oneMore(zone) ?? 0).join(' ')}`;
    const before = seen.get(text);
    if (before === undefined) seen.set(text, zone);
    else if (zones.sample(before) !== zones.sample(zone)) {
      alike++;
      example ??= [before, zone];
    }
  }
  if (!example) return;
  const { cells } = zones;
  const [one, other] = example.map((zone) => cells.rowSpan(zones.rows[zone]));
  const count = counted(alike, 'row has', 'rows have');
  notes.row = -1;
  notes.add(
    'assumed',
    other,
    `${count} the same keys and velocities as another one, such as ${notes.place(one.start).toLowerCase()} and ${notes.place(other.start).toLowerCase()}: they are taken to sound together. If they take turns, give them round robin numbers.`,
  );
}
