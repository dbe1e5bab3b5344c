import { counted } from '../../../model/wording/counted';
import type { ColumnReading } from '../../columns/columnReading';
import type { TableNotes } from '../../tableNotes';
import type { ZoneList } from '../zoneList';
import { firstAlike } from './firstAlike';

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
  const end = Math.min(zones.count, first + mostLooks);
  const [key, low, high] = conditions.map((name) => zones.values(name));
  const alikeFirst = firstAlike(zones, conditions, first, end);
  let alike = 0;
  let example: readonly [number, number] | undefined;
  for (let zone = first; zone < end; zone++) {
    const before = first + alikeFirst[zone - first];
    if (before === zone) continue;
    const isEverywhere = !(key?.oneMore(zone) || low?.oneMore(zone) || high?.oneMore(zone));
    if (isEverywhere || zones.sample(before) === zones.sample(zone)) continue;
    alike++;
    example ??= [before, zone];
  }
  if (!example) return;
  const { cells } = zones;
  const [one, other] = example.map((zone) => cells.rowSpan(zones.rows[zone]));
  const more =
    alike > 1 ? ` ${counted(alike - 1, 'more row repeats', 'more rows repeat')} those of another.` : '';
  notes.row = -1;
  notes.add(
    'assumed',
    other,
    `${notes.place(one.start)} and ${notes.place(other.start).toLowerCase()} have the same keys and velocities.${more} Such rows are taken to sound together. If they take turns, give them round robin numbers.`,
  );
}
