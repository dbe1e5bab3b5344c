import { spreadKeys } from '../../trade/keySpread';
import type { KeyReading } from '../../trade/readings/keyReading';
import type { KeyReach } from '../../trade/statements/keys/keyReach';
import type { KeySpread } from '../../trade/statements/keys/keySpread';
import type { ColumnReading } from '../columns/columnReading';
import { shortened } from '../columns/columnReading';
import { noteWholeKeyboard } from '../readingNotes';
import type { TableNotes } from '../tableNotes';
import type { ValueOptions } from '../zones/zoneCells';
import type { ZoneList } from '../zones/zoneList';

/**
 * Gives zones of which the table gives nothing but root keys the keys that the text around says: from each root up to below the next,
 * and so on, with a note; where it says nothing and each root has as many layers, as far as half way to the roots beside. The zones of
 * the table are those from number `first` on.
 */
export function spreadRoots(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  notes: TableNotes,
  { statements, keyShift }: Pick<ValueOptions, 'statements' | 'keyShift'>,
): void {
  const hasKeys = columns.some(
    ({ meaning, side }) =>
      side?.kind === 'key' || ['lokey', 'hikey', 'key_range', 'key_count'].includes(meaning),
  );
  const name = columns.some(({ meaning }) => meaning === 'pitch_keycenter') ? 'pitch_keycenter' : 'key';
  const roots = zones.values(name);
  if (hasKeys) return;
  const headed = columns.find(({ meaning }) => meaning === name);
  const headingSpan = headed?.headingSpan ?? zones.cells.rowSpan(zones.rows[first]);
  const isKeyed = name === 'key' || columns.some(({ meaning }) => meaning === 'key');
  const spans = roots && spansFor(zones, first, roots, name, { statements, keyShift });
  notes.row = -2;
  if (!roots || !spans || spans.size === 0) {
    if (!isKeyed && zones.count > first) noteWholeKeyboard(headingSpan, notes);
    return;
  }
  for (const [zone, { low, high }] of spans) {
    const cell = roots.cells[zone];
    const root = roots.numbers[zone];
    if (name === 'key') {
      roots.cells[zone] = -1;
      zones.column('pitch_keycenter').set(zone, cell, root);
    }
    zones.column('lokey').set(zone, cell, low);
    zones.column('hikey').set(zone, cell, high);
  }
  const range = [...spans.values()];
  const [least, most] = [
    Math.min(...range.map(({ low }) => low)),
    Math.max(...range.map(({ high }) => high)),
  ];
  const { keySpread: said } = statements;
  const how =
    said?.is === 'around'
      ? `Each zone reaches ${said.down} below its root and ${said.up} above it`
      : `The keys are shared out among them from ${least} to ${most}`;
  notes.add(
    'assumed',
    headingSpan,
    said
      ? `The table gives only root keys. ${how}, as "${shortened(said.text)}" says.`
      : `The table gives only root keys. ${how}, each as far as half way to the roots beside it.`,
  );
}

/** The keys of zones by what the text says; where it says nothing, half way to the roots beside where these have as many layers each. */
function spansFor(
  zones: ZoneList,
  first: number,
  roots: { cells: Int32Array; numbers: Float64Array },
  name: 'pitch_keycenter' | 'key',
  { statements, keyShift }: Pick<ValueOptions, 'statements' | 'keyShift'>,
): Map<number, { low: number; high: number }> | undefined {
  // A key without a word for the root may be the only one that a zone sounds on.
  const isOpen = name === 'pitch_keycenter' && areLayered(zones, first, roots);
  const keySpread = statements.keySpread ?? (isOpen ? ({ is: 'nearest' } as const) : undefined);
  if (keySpread?.is === 'around') return spansAround(zones, first, roots, keySpread);
  const keyOf = (key: KeyReading | undefined) =>
    key && (key.number ?? (key.named === undefined ? undefined : key.named + keyShift));
  const { lowest, highest } = statements.outermostKeys;
  const ends = { low: keyOf(lowest), high: keyOf(highest) };
  return keySpread && spansOf(zones, first, roots, keySpread, ends);
}

/** Fewer roots than these tell nothing of how keys are shared out (our choice). */
const fewestRoots = 3;

/** Whether several roots have as many zones each, and more than one: layers of an instrument, that cannot all sound on every key. */
function areLayered(
  zones: ZoneList,
  first: number,
  roots: { cells: Int32Array; numbers: Float64Array },
): boolean {
  const counts = new Map<number, number>();
  for (let zone = first; zone < zones.count; zone++) {
    if (roots.cells[zone] < 0) return false;
    counts.set(roots.numbers[zone], (counts.get(roots.numbers[zone]) ?? 0) + 1);
  }
  const [most = 0] = counts.values();
  return counts.size >= fewestRoots && most > 1 && [...counts.values()].every((count) => count === most);
}

function spansAround(
  zones: ZoneList,
  first: number,
  roots: { cells: Int32Array; numbers: Float64Array },
  { down, up }: Pick<KeyReach, 'down' | 'up'>,
): Map<number, { low: number; high: number }> {
  const spans = new Map<number, { low: number; high: number }>();
  for (let zone = first; zone < zones.count; zone++) {
    const root = roots.numbers[zone];
    if (roots.cells[zone] >= 0)
      spans.set(zone, { low: Math.max(0, root - down), high: Math.min(127, root + up) });
  }
  return spans;
}

function spansOf(
  zones: ZoneList,
  first: number,
  roots: { cells: Int32Array; numbers: Float64Array },
  { is }: Pick<KeySpread, 'is'>,
  ends: { low: number | undefined; high: number | undefined },
): Map<number, { low: number; high: number }> {
  const sets = new Map<string, number[]>();
  for (let zone = first; zone < zones.count; zone++) {
    if (roots.cells[zone] < 0) continue;
    const key = `${zones.groups[zone]} ${zones.values('trigger')?.oneMore(zone) ?? 0}`;
    const set = sets.get(key);
    if (set) set.push(zone);
    else sets.set(key, [zone]);
  }
  const spans = new Map<number, { low: number; high: number }>();
  for (const set of sets.values()) {
    const sorted = [...new Set(set.map((zone) => roots.numbers[zone]))].sort((a, b) => a - b);
    if (sorted.length < 2) continue;
    const spread = is === 'nearest' ? spreadKeys(sorted) : undefined;
    for (const zone of set) {
      const root = roots.numbers[zone];
      const at = sorted.indexOf(root);
      const near = spread?.get(root) ?? { low: root, high: root };
      const [below, above] = [sorted[at - 1], sorted[at + 1]];
      const low = is === 'downward' && below !== undefined ? below + 1 : near.low;
      const high = is === 'upward' && above !== undefined ? above - 1 : near.high;
      spans.set(zone, {
        low: below === undefined && ends.low !== undefined && ends.low <= root ? ends.low : low,
        high: above === undefined && ends.high !== undefined && ends.high >= root ? ends.high : high,
      });
    }
  }
  return spans;
}
