import { counted } from '../../model/wording/counted';
import type { KeySpan } from '../../trade/keySpread';
import { spreadKeys } from '../../trade/keySpread';
import type { KeyReading } from '../../trade/readings/keyReading';
import type { KeyReach } from '../../trade/statements/keys/keyReach';
import type { KeySpread } from '../../trade/statements/keys/keySpread';
import type { ColumnReading } from '../columns/columnReading';
import { shortened } from '../columns/columnReading';
import type { TableNotes } from '../tableNotes';
import type { ValueOptions } from '../zones/zoneCells';
import type { ZoneList } from '../zones/zoneList';

const everywhere = 'The table gives no low and high keys, so every region plays on the whole keyboard.';

/** So many different roots share the keys out where the text says nothing of it (our choice). */
const fewestRoots = 3;

/** Where the text says nothing, each zone has the keys that are nearer to its root than to others (common practice). */
const nearest: KeySpread = { is: 'nearest', text: '' };

/**
 * Gives zones of which the table gives nothing but root keys their keys, with a note: as the text around says, from each root up to below
 * the next and so on, else those nearest to it. The zones of the table are those from number `first` on.
 */
export function spreadRoots(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  notes: TableNotes,
  { statements, keyShift }: Pick<ValueOptions, 'statements' | 'keyShift'>,
): void {
  const { outermostKeys } = statements;
  const hasKeys = columns.some(
    ({ meaning, side }) =>
      side?.kind === 'key' || ['lokey', 'hikey', 'key_range', 'key_count'].includes(meaning),
  );
  const name = columns.some(({ meaning }) => meaning === 'pitch_keycenter') ? 'pitch_keycenter' : 'key';
  const roots = zones.values(name);
  const isOpen = name !== 'key' && !columns.some(({ meaning }) => meaning === 'key');
  const keySpread = statements.keySpread ?? (isOpen ? nearest : undefined);
  if (!keySpread || hasKeys) return;
  const keyOf = (key: KeyReading | undefined) =>
    key && (key.number ?? (key.named === undefined ? undefined : key.named + keyShift));
  const isSaid = keySpread.text !== '';
  const ends = {
    low: keyOf(outermostKeys.lowest) ?? (isSaid ? undefined : 0),
    high: keyOf(outermostKeys.highest) ?? (isSaid ? undefined : 127),
  };
  const spans =
    !roots || (!isSaid && haveKeys(zones, first))
      ? new Map<number, KeySpan>()
      : keySpread.is === 'around'
        ? spansAround(zones, first, roots, keySpread)
        : spansOf(rootSets(zones, first, roots, isSaid), roots, keySpread, ends);
  const span =
    columns.find(({ meaning }) => meaning === name)?.headingSpan ?? zones.cells.rowSpan(zones.rows[first]);
  notes.row = -2;
  if (!roots || spans.size === 0) {
    if (isOpen && !haveKeys(zones, first)) notes.add('assumed', span, everywhere);
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
    if (!isSaid) zones.assumedKeys.add(zone);
  }
  const range = [...spans.values()];
  const [least, most] = [
    Math.min(...range.map(({ low }) => low)),
    Math.max(...range.map(({ high }) => high)),
  ];
  const how =
    keySpread.is === 'around'
      ? `Each zone reaches ${keySpread.down} below its root and ${keySpread.up} above it`
      : `The keys are shared out among them from ${least} to ${most}`;
  const why = isSaid
    ? `, as "${shortened(keySpread.text)}" says.`
    : ', each key to the nearest root. If zones reach further, add columns of low and high keys.';
  const rest = zones.count - first - spans.size;
  const others =
    !isSaid && rest > 0
      ? ` ${counted(rest, 'zone plays', 'zones play')} on the whole keyboard, as too few others are in the same group or layer.`
      : '';
  notes.add('assumed', span, `The table gives only root keys. ${how}${why}${others}`);
}

/** Whether some zone has keys already, as a sentence may give them. */
function haveKeys(zones: ZoneList, first: number): boolean {
  const lists = (['key', 'lokey', 'hikey'] as const).map((name) => zones.values(name));
  return lists.some((list) => list?.cells.subarray(first, zones.count).some((cell) => cell >= 0));
}

function spansAround(
  zones: ZoneList,
  first: number,
  roots: { cells: Int32Array; numbers: Float64Array },
  { down, up }: KeyReach,
): Map<number, KeySpan> {
  const spans = new Map<number, KeySpan>();
  for (let zone = first; zone < zones.count; zone++) {
    const root = roots.numbers[zone];
    if (roots.cells[zone] >= 0)
      spans.set(zone, { low: Math.max(0, root - down), high: Math.min(127, root + up) });
  }
  return spans;
}

/**
 * Zones with roots that share the keys out among them: those of one group and trigger, and of one layer where each layer has several
 * roots and nothing is said of it.
 */
function rootSets(
  zones: ZoneList,
  first: number,
  { cells, numbers }: { cells: Int32Array; numbers: Float64Array },
  isSaid: boolean,
): number[][] {
  const setsBy = (nameOf: (zone: number) => string) => {
    const sets = new Map<string, number[]>();
    for (let zone = first; zone < zones.count; zone++) {
      if (cells[zone] < 0) continue;
      const set = sets.get(nameOf(zone));
      if (set) set.push(zone);
      else sets.set(nameOf(zone), [zone]);
    }
    return [...sets.values()];
  };
  const [trigger, low, high] = [zones.values('trigger'), zones.values('lovel'), zones.values('hivel')];
  const kindOf = (zone: number) => `${zones.groups[zone]} ${trigger?.oneMore(zone) ?? 0}`;
  const layerOf = (zone: number) => [low, high, zones.dynamics].map((one) => one?.oneMore(zone) ?? 0).join();
  const byLayer = isSaid ? [] : setsBy((zone) => `${kindOf(zone)} ${layerOf(zone)}`);
  const isEnough = (set: readonly number[]) => new Set(set.map((zone) => numbers[zone])).size >= fewestRoots;
  const sets = byLayer.length > 0 && byLayer.every(isEnough) ? byLayer : setsBy(kindOf);
  return isSaid ? sets : sets.filter(isEnough);
}

function spansOf(
  sets: readonly number[][],
  roots: { cells: Int32Array; numbers: Float64Array },
  { is }: KeySpread,
  ends: { low: number | undefined; high: number | undefined },
): Map<number, KeySpan> {
  const spans = new Map<number, KeySpan>();
  for (const set of sets) {
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
