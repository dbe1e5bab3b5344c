import { spreadKeys } from '../../trade/keySpread';
import type { KeyReading } from '../../trade/readings/keyReading';
import type { KeyReach } from '../../trade/statements/keys/keyReach';
import type { KeySpread } from '../../trade/statements/keys/keySpread';
import type { ColumnReading } from '../columns/columnReading';
import { shortened } from '../columns/columnReading';
import type { TableNotes } from '../tableNotes';
import type { ValueOptions } from '../zones/zoneCells';
import type { ZoneList } from '../zones/zoneList';

/**
 * Gives zones of which the table gives nothing but root keys the keys that the text around says: from each root up to below the next,
 * and so on, with a note. The zones of the table are those from number `first` on.
 */
export function spreadRoots(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  notes: TableNotes,
  { statements, keyShift }: Pick<ValueOptions, 'statements' | 'keyShift'>,
): void {
  const { keySpread, outermostKeys } = statements;
  const hasKeys = columns.some(
    ({ meaning, side }) =>
      side?.kind === 'key' || ['lokey', 'hikey', 'key_range', 'key_count'].includes(meaning),
  );
  const name = columns.some(({ meaning }) => meaning === 'pitch_keycenter') ? 'pitch_keycenter' : 'key';
  const roots = zones.values(name);
  if (!keySpread || hasKeys || !roots) return;
  const keyOf = (key: KeyReading | undefined) =>
    key && (key.number ?? (key.named === undefined ? undefined : key.named + keyShift));
  const ends = { low: keyOf(outermostKeys.lowest), high: keyOf(outermostKeys.highest) };
  const spans =
    keySpread.is === 'around'
      ? spansAround(zones, first, roots, keySpread)
      : spansOf(zones, first, roots, keySpread, ends);
  if (spans.size === 0) return;
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
  const span =
    columns.find(({ meaning }) => meaning === name)?.headingSpan ?? zones.cells.rowSpan(zones.rows[first]);
  const range = [...spans.values()];
  const [least, most] = [
    Math.min(...range.map(({ low }) => low)),
    Math.max(...range.map(({ high }) => high)),
  ];
  notes.row = -2;
  const how =
    keySpread.is === 'around'
      ? `Each zone reaches ${keySpread.down} below its root and ${keySpread.up} above it`
      : `The keys are shared out among them from ${least} to ${most}`;
  notes.add(
    'assumed',
    span,
    `The table gives only root keys. ${how}, as "${shortened(keySpread.text)}" says.`,
  );
}

function spansAround(
  zones: ZoneList,
  first: number,
  roots: { cells: Int32Array; numbers: Float64Array },
  { down, up }: KeyReach,
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
  { is }: KeySpread,
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
