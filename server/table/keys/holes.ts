import { noteNameOf } from '../../model/keys';
import type { TableRows } from '../cells/tableRows';
import type { ColumnReading } from '../columns/columnReading';
import type { TableNotes } from '../tableNotes';
import type { ZoneList } from '../zones/zoneList';
import { keysOfZones } from './keysOfZones';

/** A keyboard has so many ranges at least, holes at most, and a hole so many times the keys of the widest range beside it (our choice). */
const fewestRanges = 6;
const mostHoles = 2;
const mostWidth = 2;
/** What tells parts of an instrument apart. */
const conditions = ['sw_last', 'trigger'] as const;

/** A range of keys with the first zone that sounds on it. */
interface Range {
  low: number;
  high: number;
  zone: number;
}

/**
 * Notes keys that no zone plays where all other ranges of a table adjoin: a row may be missing. Nothing is told where ranges overlap, where
 * rows were left out, a line is blank, or groups or key switches differ at the gap, nor of single keys, unless running numbers leap there
 * too. The zones of the table are those from number `first` on.
 */
export function noteHoles(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  rows: Pick<TableRows, 'data' | 'afterBlank'>,
  notes: TableNotes,
): void {
  const ranges = rangesOf(zones, first);
  if (ranges.length < fewestRanges) return;
  const pairs = ranges.slice(1).map((after, at) => [ranges[at], after] as const);
  if (pairs.some(([before, after]) => after.low <= before.high)) return;
  const gaps = pairs.filter(([before, after]) => after.low > before.high + 1);
  if (gaps.length === 0 || gaps.length > mostHoles) return;
  const numbers = (zone: number, next: number) => numbersOf(zones, columns, zone, next);
  const areSingle = ranges.every(({ low, high }) => low === high);
  const steps = pairs.filter((pair) => !gaps.includes(pair));
  const leaps = leapsAmong(steps, numbers);
  const holes = gaps.filter(([before, after]) => {
    const doLeap = leaps(before.zone, after.zone);
    if (isMeant(zones, first, rows, before.zone, after.zone) || (areSingle && !doLeap)) return false;
    const widest = Math.max(before.high - before.low, after.high - after.low) + 1;
    return doLeap || after.low - before.high - 1 <= widest * mostWidth;
  });
  const [hole] = holes;
  if (!hole || holes.length < gaps.length) return;
  const listed = holes.map(([before, after]) => {
    const [low, high] = [before.high + 1, after.low - 1];
    const isNamed = zones.cells.digits(keyCell(zones, before.zone), 3) < 0;
    return `${keysText(low, high, isNamed)}, between ${zones.sample(before.zone)} and ${zones.sample(after.zone)}`;
  });
  const areLeaping = holes.every(([before, after]) => leaps(before.zone, after.zone));
  const because = areLeaping ? 'the running numbers leap there too, so ' : '';
  const what = holes.length === 1 ? 'a row may be missing' : 'rows may be missing';
  notes.add(
    'assumed',
    zones.rowSpan(hole[1].zone),
    `No zone plays ${listed.join(', nor ')}; ${because}${what}. Check the table.`,
  );
}

/** The different ranges of keys, lowest first; none where those of a zone are not known. */
function rangesOf(zones: ZoneList, first: number): Range[] {
  const keysOf = keysOfZones(zones);
  const found = new Map<string, Range>();
  for (let zone = first; zone < zones.count; zone++) {
    const keys = keysOf(zone);
    if (!keys || zones.assumedKeys.has(zone)) return [];
    const name = `${keys.low} ${keys.high}`;
    if (!found.has(name)) found.set(name, { ...keys, zone });
  }
  return [...found.values()].sort((one, other) => one.low - other.low);
}

/** Whether groups or conditions differ between two zones, a line between them is blank, or a row there is no zone, which is told already. */
function isMeant(
  zones: ZoneList,
  first: number,
  { data, afterBlank }: Pick<TableRows, 'data' | 'afterBlank'>,
  one: number,
  other: number,
): boolean {
  const [from, to] = [zones.rows[one], zones.rows[other]].sort((a, b) => a - b);
  const used = new Set(zones.rows.subarray(first, zones.count));
  const differs = (name: (typeof conditions)[number]) =>
    zones.values(name)?.oneMore(one) !== zones.values(name)?.oneMore(other);
  return (
    zones.groups[one] !== zones.groups[other] ||
    conditions.some(differs) ||
    afterBlank.some((row) => row > from && row <= to) ||
    data.some((row) => row > from && row < to && !used.has(row))
  );
}

/** How far running numbers rise from a zone to another: those in a column, and the last in the names of samples, unless it is the key. */
function numbersOf(
  zones: ZoneList,
  columns: readonly ColumnReading[],
  zone: number,
  next: number,
): readonly [row: number, name: number] {
  const column = columns.find(({ meaning }) => meaning === 'row_number');
  const inRow = (one: number) =>
    column ? zones.cells.digits(zones.cells.cell(zones.rows[one], column.index), 5) : Number.NaN;
  const keysOf = keysOfZones(zones);
  const inName = (one: number) => {
    const number = lastNumber(zones.sample(one));
    return number === keysOf(one)?.low ? Number.NaN : number;
  };
  return [inRow(next) - inRow(zone), inName(next) - inName(zone)];
}

/** Tells whether running numbers that rise by one between all ranges that adjoin leap between two zones. */
function leapsAmong(
  steps: readonly (readonly [Range, Range])[],
  numbers: (zone: number, next: number) => readonly [row: number, name: number],
): (zone: number, next: number) => boolean {
  const areRunning = [0, 1].map((at) =>
    steps.every(([before, after]) => numbers(before.zone, after.zone)[at] === 1),
  );
  return (zone, next) => numbers(zone, next).some((step, at) => areRunning[at] === true && step > 1);
}

function lastNumber(name: string): number {
  const digits = /(\d{1,6})\D*$/.exec(name.slice(-60).replace(/\.\w{1,5}$/, ''))?.[1];
  return digits === undefined ? Number.NaN : Number(digits);
}

function keyCell(zones: ZoneList, zone: number): number {
  const cells = (['lokey', 'key'] as const).map((name) => zones.values(name)?.cells[zone] ?? -1);
  return cells.find((cell) => cell >= 0) ?? -1;
}

function keysText(low: number, high: number, isNamed: boolean): string {
  const numbers = low === high ? `${low}` : `${low}–${high}`;
  const names = low === high ? noteNameOf(low) : `${noteNameOf(low)}–${noteNameOf(high)}`;
  const keys = isNamed ? `${names} (${numbers})` : numbers;
  return `${low === high ? 'key' : 'keys'} ${keys}`;
}
