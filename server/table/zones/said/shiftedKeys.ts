import { bareWord } from '../../../trade/languages/spelling';
import type { KeyShift } from '../../../trade/statements/keys/keyShift';
import type { RightRows } from '../../../trade/statements/keys/rightRows';
import type { ColumnReading } from '../../columns/columnReading';
import { shortened } from '../../columns/columnReading';
import type { TableNotes } from '../../tableNotes';
import type { ZoneList } from '../zoneList';
import { RowsSaid } from './rowsSaid';

const keyNames = ['key', 'lokey', 'hikey', 'pitch_keycenter'] as const;
const highest = 127;

/**
 * Moves the keys that the table gives by as much as the text says that they are off, with a note. Nothing is moved where a key would leave
 * the keyboard, or notes have names, whose octaves are settled by themselves. The zones of the table are those from number `first` on.
 */
export function shiftKeys(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  shift: KeyShift | undefined,
  areNamed: boolean,
  notes: TableNotes,
): void {
  if (!shift || zones.count === first) return;
  const { semitones, rows, isOfRoots, isOpen, text, except } = shift;
  const all = Array.from({ length: zones.count - first }, (_, at) => first + at);
  const chosen = rows ? new RowsSaid(zones, first, columns).zonesOf(rows) : all;
  const right = rightZones(zones, first, columns, except);
  const meant = right && chosen?.filter((zone) => !right.has(zone));
  const names = isOfRoots ? (['pitch_keycenter'] as const) : keyNames;
  const moved = (meant ?? []).flatMap((zone) =>
    names.flatMap((name) => {
      const values = zones.values(name);
      return values && values.cells[zone] >= 0 ? [{ values, zone, key: values.numbers[zone] }] : [];
    }),
  );
  // The ends of the keyboard stay what they are.
  const isEnd = (key: number) => (semitones < 0 ? key === 0 : key === highest);
  const leaves = ({ key }: { key: number }) =>
    !isEnd(key) && (key + semitones < 0 || key + semitones > highest);
  const cell = zones.column('sample').cells[meant?.[0] ?? first];
  const span = { start: zones.cells.starts[cell], end: zones.cells.ends[cell] };
  const why = isOpen
    ? 'it says more than is understood'
    : !meant
      ? 'it stays open which rows are meant'
      : areNamed
        ? 'the table names notes, whose octave is settled by itself. If it is another one, say so in the settings, in the preview of the table or with --middle-c'
        : moved.some(leaves)
          ? 'keys would leave the keyboard'
          : undefined;
  notes.row = -2;
  if (why !== undefined || moved.length === 0) {
    notes.add('assumed', span, `"${shortened(text)}": no key is moved, as ${why ?? 'the table gives none'}.`);
    return;
  }
  for (const { values, zone, key } of moved) if (!isEnd(key)) values.numbers[zone] = key + semitones;
  const which = isOfRoots ? 'root keys' : 'keys and root keys';
  const how = `${Math.abs(semitones)} ${semitones < 0 ? 'is taken off' : 'is added to'}`;
  const whose = rows || right?.size ? ` of ${meant?.length} ${meant?.length === 1 ? 'zone' : 'zones'}` : '';
  notes.add('assumed', span, `"${shortened(text)}": ${how} all ${which}${whose}.`);
}

/** The zones whose keys are right, as texts say; `undefined` where it stays open which ones are meant. */
function rightZones(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  except: readonly RightRows[],
): Set<number> | undefined {
  const found = new Set<number>();
  for (const { rows, words } of except) {
    const placed = rows && new RowsSaid(zones, first, columns).zonesOf(rows);
    const named: number[] = [];
    if (!rows)
      for (let zone = first; zone < zones.count; zone++) if (isNamed(zones, zone, words)) named.push(zone);
    const some = placed ?? named;
    if (some.length === 0 || some.length === zones.count - first) return undefined;
    for (const zone of some) found.add(zone);
  }
  return found;
}

/** Whether one of some words stands in the name of a zone's sample or group, as a whole word or the beginning of one. */
function isNamed(zones: ZoneList, zone: number, words: readonly string[]): boolean {
  const name = `${zones.sample(zone)} ${zones.groupNames[zones.groups[zone]] ?? ''}`;
  const parts: readonly string[] = bareWord(name).match(/\p{L}+/gu) ?? [];
  return words.some((word) =>
    parts.some((part) => part === word || part === singular(word) || singular(part) === word),
  );
}

function singular(word: string): string {
  return word.length > 3 ? word.replace(/s$/u, '') : word;
}
