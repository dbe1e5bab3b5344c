import { byCount, counted } from '../../model/wording/counted';
import type { ColumnMeaning } from '../../trade/meaning';
import { keyNumber } from '../../trade/readings/keyReading';
import type { ColumnReading } from '../columns/columnReading';
import { columnName } from '../columns/columnReading';
import type { TableNotes } from '../tableNotes';
import type { ValueOptions } from '../zones/zoneCells';
import type { ValueColumn, ZoneList } from '../zones/zoneList';

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
  const single = given('key') ?? given('key_range');
  const [low, high] = [given('lokey'), given('hikey')];
  const isOther = given('key_count') || columns.some(({ side }) => side?.kind === 'key');
  if (isOther || (low && high) || (single && (low || high))) return;
  const open = single ? onlyEndGiven(zones, first) : undefined;
  const end = open ?? (single ? endThatKeysAre(zones, first) : low ? 'lokey' : 'hikey');
  const column = single ?? low ?? high;
  if (!column || !end) return;
  if (single && !open) moveKeys(zones, first, end);
  const values = zones.values(end);
  if (!values) return;
  const isLow = end === 'lokey';
  const { lowestKey, outermostKeys } = statements;
  const start = isLow ? Number.NaN : keyNumber(lowestKey, keyShift);
  const last = isLow ? keyNumber(outermostKeys.highest, keyShift) : Number.NaN;
  const sets = alikeZones(zones, first, values);
  const every = sets.flat().map((zone) => values.numbers[zone]);
  const outermost = every.reduce(
    (one, other) => (isLow ? Math.min(one, other) : Math.max(one, other)),
    every[0] ?? 0,
  );
  let count = 0;
  let alone = 0;
  for (const alike of sets) {
    const keys = [...new Set(alike.map((zone) => values.numbers[zone]))].sort((a, b) => a - b);
    if (keys.length < 2) {
      // One zone for all others, as the sound of letting a key go, starts where they start and ends where they end.
      const end = isLow ? last : start;
      if (sets.length < 2 || keys[0] !== outermost || !(isLow ? end >= outermost : end <= outermost))
        continue;
      for (const zone of alike) zones.column(isLow ? 'hikey' : 'lokey').set(zone, values.cells[zone], end);
      alone += alike.length;
      continue;
    }
    for (const zone of alike) {
      const at = keys.indexOf(values.numbers[zone]);
      const [below, above] = [keys[at - 1], keys[at + 1]];
      const cell = values.cells[zone];
      const lowest = below === undefined ? start : below + 1;
      const highest = above === undefined ? last : above - 1;
      if (!isLow && lowest <= keys[at]) zones.column('lokey').set(zone, cell, lowest);
      if (isLow && highest >= keys[at]) zones.column('hikey').set(zone, cell, highest);
      count++;
    }
  }
  if (count === 0) return;
  const how = isLow
    ? 'no high keys: each zone ends one below the next'
    : 'no low keys: each zone begins one above the next lower one';
  const span = {
    start: zones.cells.starts[values.cells[first]] ?? 0,
    end: zones.cells.ends[values.cells[first]] ?? 0,
  };
  const from = start >= 0 ? `, the lowest at ${start}` : last >= 0 ? `, the last at ${last}` : '';
  notes.row = -2;
  const others =
    alone > 0
      ? ` ${counted(alone, 'zone')} of another kind ${byCount(alone, 'has', 'have')} the keys of all of them.`
      : '';
  const message = `The table gives ${how} in ${columnName(column)}${from}.${others}`;
  notes.add('assumed', column.headingSpan ?? span, message);
}

/**
 * The end that the ranges of all zones give alone, as `up to 33` does, where each root lies between it and that of the next zone.
 * `undefined` for other ranges, and where several zones end alike.
 */
function onlyEndGiven(zones: ZoneList, first: number): 'lokey' | 'hikey' | undefined {
  const [lows, highs] = [zones.values('lokey'), zones.values('hikey')];
  const isGiven = (values: ValueColumn | undefined, zone: number) => (values?.cells[zone] ?? -1) >= 0;
  const all = Array.from({ length: zones.count - first }, (_, at) => first + at);
  const end = all.every((zone) => isGiven(highs, zone) && !isGiven(lows, zone))
    ? 'hikey'
    : all.every((zone) => isGiven(lows, zone) && !isGiven(highs, zone))
      ? 'lokey'
      : undefined;
  const [values, roots] = [end === 'hikey' ? highs : lows, zones.values('pitch_keycenter')];
  if (!end || !values) return undefined;
  const isBetween = (alike: readonly number[]) => {
    const keys = [...new Set(alike.map((zone) => values.numbers[zone]))].sort((a, b) => a - b);
    return alike.every((zone) => {
      const at = keys.indexOf(values.numbers[zone]);
      const root = isGiven(roots, zone) ? (roots?.numbers[zone] ?? 0) : values.numbers[zone];
      return end === 'hikey'
        ? root <= keys[at] && root > (keys[at - 1] ?? -1)
        : root >= keys[at] && root < (keys[at + 1] ?? 128);
    });
  };
  return alikeZones(zones, first, values).every(isBetween) ? end : undefined;
}

/** Fewer different keys than these tell nothing of what they are. */
const fewestKeys = 3;

/**
 * The end of their ranges that single keys are where each root lies from its own key up to below the next one, or from above the one
 * before up to its own, and most roots are other keys: `undefined` where they are the keys that zones sound on.
 */
function endThatKeysAre(zones: ZoneList, first: number): 'lokey' | 'hikey' | undefined {
  const [values, roots] = [singleKeys(zones, first), zones.values('pitch_keycenter')];
  if (!values || !roots) return undefined;
  let [isLow, isHigh] = [true, true];
  let [others, count] = [0, 0];
  for (const alike of alikeZones(zones, first, values)) {
    const keys = [...new Set(alike.map((zone) => values.numbers[zone]))].sort((a, b) => a - b);
    if (keys.length < fewestKeys) return undefined;
    for (const zone of alike) {
      const [key, root] = [values.numbers[zone], roots.numbers[zone]];
      if (roots.cells[zone] < 0) return undefined;
      const at = keys.indexOf(key);
      isLow &&= root >= key && root < (keys[at + 1] ?? Number.POSITIVE_INFINITY);
      isHigh &&= root <= key && root > (keys[at - 1] ?? Number.NEGATIVE_INFINITY);
      count++;
      if (root !== key) others++;
    }
  }
  if (others * 2 <= count) return undefined;
  return isLow ? 'lokey' : isHigh ? 'hikey' : undefined;
}

/** The keys of zones that have one each; `undefined` where some have ranges. */
function singleKeys(zones: ZoneList, first: number): ValueColumn | undefined {
  const [keys, lows, highs] = [zones.values('key'), zones.values('lokey'), zones.values('hikey')];
  let [asKeys, asRanges] = [0, 0];
  for (let zone = first; zone < zones.count; zone++) {
    const isKey = (keys?.cells[zone] ?? -1) >= 0;
    const [low, high] = [lows?.oneMore(zone) ?? 0, highs?.oneMore(zone) ?? 0];
    if (low !== high || (isKey && low > 0)) return undefined;
    if (isKey) asKeys++;
    else if (low > 0) asRanges++;
  }
  if (asKeys > 0 && asRanges > 0) return undefined;
  return asKeys > 0 ? keys : lows;
}

/** Makes the one key of each zone the end of its range. */
function moveKeys(zones: ZoneList, first: number, end: 'lokey' | 'hikey'): void {
  const from = singleKeys(zones, first);
  const [keys, lows, highs] = [zones.column('key'), zones.column('lokey'), zones.column('hikey')];
  const to = end === 'lokey' ? lows : highs;
  for (let zone = first; zone < zones.count; zone++) {
    const [cell, key] = [from?.cells[zone] ?? -1, from?.numbers[zone] ?? 0];
    for (const column of [keys, lows, highs]) column.cells[zone] = -1;
    if (cell >= 0) to.set(zone, cell, key);
  }
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
