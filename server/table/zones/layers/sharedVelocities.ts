import { counted } from '../../../model/wording/counted';
import type { TableNotes } from '../../tableNotes';
import type { ZoneList } from '../zoneList';
import { firstAlike } from './firstAlike';

const greatest = 127;
/** So many zones are looked at. */
const mostLooks = 2000;
/** More than there are velocities, 0..127. */
const perZone = 128;
const conditions = ['key', 'lokey', 'hikey', 'seq_position', 'trigger'] as const;

/** Notes where a layer ends at the velocity that the next one of the same keys begins with, so that both sound there. Zones from number `first` on are looked at. */
export function noteSharedVelocities(zones: ZoneList, first: number, notes: TableNotes): void {
  const [lows, highs] = [zones.values('lovel'), zones.values('hivel')];
  if (!lows || !highs) return;
  const end = Math.min(zones.count, first + mostLooks);
  const alike = firstAlike(zones, conditions, first, end);
  const place = (zone: number, velocity: number) => alike[zone - first] * perZone + velocity;
  /** The last zone of the same keys that ends at a velocity. */
  const ends = new Map<number, number>();
  for (let zone = first; zone < end; zone++)
    if (highs.cells[zone] >= 0 && highs.numbers[zone] < greatest)
      ends.set(place(zone, highs.numbers[zone]), zone);
  let count = 0;
  let example: readonly [number, number] | undefined;
  for (let zone = first; zone < end; zone++) {
    if (lows.cells[zone] < 0) continue;
    const other = ends.get(place(zone, lows.numbers[zone]));
    if (other === undefined || other === zone || !(lows.oneMore(other) <= lows.numbers[zone])) continue;
    count++;
    example ??= [other, zone];
  }
  if (!example) return;
  const [one, other] = example.map((zone) => zones.cells.rowSpan(zones.rows[zone]));
  const velocity = lows.numbers[example[1]];
  const more = count > 1 ? `, and likewise in ${counted(count - 1, 'more place')}` : '';
  notes.row = -1;
  notes.add(
    'assumed',
    other,
    `Velocity ${velocity} lies in both ${notes.place(one.start).toLowerCase()} and ${notes.place(other.start).toLowerCase()}, on the same keys, so both sound there${more}. Start the louder one at ${velocity + 1} if that is not meant.`,
  );
}
