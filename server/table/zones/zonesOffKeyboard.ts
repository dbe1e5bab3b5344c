import { keyBounds } from '../../trade/bounds';
import { readNumber } from '../../trade/readings/numberReading';
import type { ColumnReading } from '../columns/columnReading';
import { shortened } from '../columns/columnReading';
import type { TableNotes } from '../tableNotes';
import type { ZoneList } from './zoneList';

/** Takes out zones from number `first` on that no key can play, as all their keys lie above or below the keyboard, with a note each. */
export function leaveOutOffKeyboard(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  notes: TableNotes,
): void {
  const { cells } = zones;
  const indexOf = (name: string) => columns.find(({ meaning }) => meaning === name)?.index ?? -1;
  const [low, high, key] = [indexOf('lokey'), indexOf('hikey'), indexOf('key')];
  const left = new Set<number>();
  for (let zone = first; zone < zones.count; zone++) {
    const numberIn = (column: number, name: 'lokey' | 'hikey' | 'key') =>
      column < 0 || zones.has(name, zone)
        ? Number.NaN
        : (readNumber(cells.plain(cells.cell(zones.rows[zone], column)))?.number ?? Number.NaN);
    const isAbove = [numberIn(low, 'lokey'), numberIn(key, 'key')].some((one) => one > keyBounds.most);
    const isBelow = [numberIn(high, 'hikey'), numberIn(key, 'key')].some((one) => one < keyBounds.least);
    if (isAbove || isBelow) left.add(zone);
  }
  if (left.size === zones.count - first) return;
  for (const zone of left) {
    const span = zones.rowSpan(zone);
    const message = `${notes.place(span.start)}: all keys of "${shortened(zones.sample(zone))}" lie outside 0..127, so its zone is left out. Correct its keys.`;
    notes.row = zones.rows[zone];
    notes.add('dropped', span, message, 'off keyboard');
  }
  notes.row = -1;
  if (left.size > 0) zones.remove(left, first);
}
