import type { KeyShift } from '../../../trade/statements/keys/keyShift';
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
  const { semitones, rows, isOfRoots, isOpen, text } = shift;
  const all = Array.from({ length: zones.count - first }, (_, at) => first + at);
  const meant = rows ? new RowsSaid(zones, first, columns).zonesOf(rows) : all;
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
  const whose = rows ? ` of ${meant?.length} ${meant?.length === 1 ? 'zone' : 'zones'}` : '';
  notes.add('assumed', span, `"${shortened(text)}": ${how} all ${which}${whose}.`);
}
