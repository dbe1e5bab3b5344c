import { bareWord } from '../../../trade/languages/spelling';
import { keyNumber, readKey } from '../../../trade/readings/keyReading';
import type { ColumnReading } from '../../columns/columnReading';
import { shortened } from '../../columns/columnReading';
import type { TableNotes } from '../../tableNotes';
import type { ValueOptions } from '../zoneCells';
import type { ZoneList } from '../zoneList';

/**
 * Gives zones the key switches that a sentence lists by name, where neither a column nor the names of groups give any: a name is that of a
 * group, or a part of the names of files. Where it stays open which zones are meant, nothing is done, with a note.
 */
export function giveStatedSwitches(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  { statements, naming, keyShift }: Pick<ValueOptions, 'statements' | 'naming' | 'keyShift'>,
  notes: TableNotes,
): void {
  const { named, start } = statements.switches;
  if (!named || first >= zones.count || columns.some(({ meaning }) => meaning === 'keyswitch')) return;
  const given = zones.values('sw_last');
  for (let zone = first; zone < zones.count; zone++) if ((given?.cells[zone] ?? -1) >= 0) return;
  const keys = new Map(
    [...named.keys].map(([name, text]) => [name, keyNumber(readKey(text, naming), keyShift)] as const),
  );
  const samples = zones.column('sample').cells;
  const all = Array.from({ length: zones.count - first }, (_, at) => first + at);
  const tell = (zone: number, what: string) => {
    const span = { start: zones.cells.starts[samples[zone]], end: zones.cells.ends[samples[zone]] };
    notes.row = -2;
    notes.add('assumed', span, `"${shortened(named.text)}": ${what}`);
  };
  const byZone = all.map((zone) => namesOf(zones, zone).filter((name) => keys.has(name)));
  const isTold =
    [...keys].every(([name, key]) => key >= 0 && key <= 127 && byZone.some(([one]) => one === name)) &&
    byZone.every((names) => new Set(names).size < 2);
  if (!isTold) {
    tell(first, 'no key switches are given, as it stays open which zones are meant.');
    return;
  }
  const numbers = [...keys.values()];
  const initial = start && keys.get(bareWord(start.name));
  for (const [at, zone] of all.entries()) {
    const key = keys.get(byZone[at]?.[0] ?? '');
    if (key === undefined) continue;
    const cell = samples[zone];
    zones.column('sw_last').set(zone, cell, key);
    zones.column('sw_lokey').set(zone, cell, Math.min(...numbers));
    zones.column('sw_hikey').set(zone, cell, Math.max(...numbers));
    if (initial !== undefined) zones.column('sw_default').set(zone, cell, initial);
  }
  const list = [...keys].map(([name, key]) => `"${shortened(name)}" by ${key}`).join(', ');
  const others = byZone.filter((names) => names.length === 0).length;
  tell(
    first,
    `zones are switched to by keys: ${list}.${others > 0 ? ` ${others} of the zones belong to none and always sound.` : ''}${initial === undefined ? ' Nothing else sounds before one is pressed, unless sw_default is added.' : ''}`,
  );
}

/** What a zone may be called: its group, or else the parts of the name of its file. */
function namesOf(zones: ZoneList, zone: number): string[] {
  const group = bareWord(zones.groupNames[zones.groups[zone]] ?? '');
  if (group !== '') return [group];
  const file = zones
    .sample(zone)
    .replace(/^.*[/\\]/, '')
    .replace(/\.\w{1,5}$/, '');
  return [...new Set((bareWord(file).match(/\p{L}{2,}/gu) ?? []) as string[])];
}
