import type { ColumnMeaning } from '../../trade/meaning';
import { readKey } from '../../trade/readings/keyReading';
import type { ColumnReading } from '../columns/columnReading';
import { columnName } from '../columns/columnReading';
import type { TableNotes } from '../tableNotes';
import type { ValueOptions } from './zoneCells';
import type { ValueColumn, ZoneList } from './zoneList';

/**
 * Gives zones the ends of their key ranges that the table leaves out, with a note: beside the highest keys the lowest is one above
 * those of the next zone below, beside the lowest the other way round. The zones of the table are those from number `first` on.
 */
export function completeKeys(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  notes: TableNotes,
  { statements, keyShift }: Pick<ValueOptions, 'statements' | 'keyShift'>,
): void {
  const given = (meaning: ColumnMeaning) => columns.find((column) => column.meaning === meaning);
  const [low, high] = [given('lokey'), given('hikey')];
  if (
    given('key') ||
    given('key_range') ||
    given('key_count') ||
    columns.some(({ side }) => side?.kind === 'key')
  )
    return;
  const column = low ?? high;
  const values = zones.values(low ? 'lokey' : 'hikey');
  if (!column || !values || (low && high)) return;
  const { lowestKey } = statements;
  const named = lowestKey && !low ? readKey(lowestKey.name) : undefined;
  const start = named?.number ?? (named?.named ?? Number.NaN) + keyShift;
  let count = 0;
  for (const alike of alikeZones(zones, first, values)) {
    const keys = [...new Set(alike.map((zone) => values.numbers[zone]))].sort((a, b) => a - b);
    if (keys.length < 2) continue;
    for (const zone of alike) {
      const at = keys.indexOf(values.numbers[zone]);
      const [below, above] = [keys[at - 1], keys[at + 1]];
      const cell = values.cells[zone];
      if (!low && below !== undefined) zones.column('lokey').set(zone, cell, below + 1);
      if (!low && below === undefined && start <= keys[at]) zones.column('lokey').set(zone, cell, start);
      if (!high && above !== undefined) zones.column('hikey').set(zone, cell, above - 1);
      count++;
    }
  }
  if (count === 0) return;
  const how = low
    ? 'no high keys: each zone ends one below the next'
    : 'no low keys: each zone begins one above the next lower one';
  const span = {
    start: zones.cells.starts[values.cells[first]] ?? 0,
    end: zones.cells.ends[values.cells[first]] ?? 0,
  };
  const from = start >= 0 ? `, the lowest at ${start}` : '';
  notes.row = -2;
  notes.add('assumed', column.headingSpan ?? span, `The table gives ${how} in ${columnName(column)}${from}.`);
}

/** Zones with a value, those of one group and of one trigger together. */
export function alikeZones(zones: ZoneList, first: number, values: ValueColumn): number[][] {
  const triggers = zones.values('trigger');
  const sets = new Map<string, number[]>();
  for (let zone = first; zone < zones.count; zone++) {
    if (values.cells[zone] < 0) continue;
    const key = `${zones.groups[zone]} ${triggers?.oneMore(zone) ?? 0}`;
    const set = sets.get(key);
    if (set) set.push(zone);
    else sets.set(key, [zone]);
  }
  return [...sets.values()];
}
