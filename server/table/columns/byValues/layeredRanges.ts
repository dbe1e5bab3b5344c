import { unitInHeading } from '../../../trade/headings/headings';
import { limitsOfLayers } from '../../../trade/layerLimits';
import type { ColumnMeaning } from '../../../trade/meaning';
import { meansAll } from '../../../trade/readings/limits';
import { readVelocities } from '../../../trade/readings/velocityReading';
import { shareOf } from '../columnContents';
import type { ColumnState } from '../columnState';

/** What the loudest velocity may be called (common practice: MIDI 1.0, shares, bytes). */
const loudest: ReadonlySet<number> = new Set([127, 1, 100, 128, 255]);
/** In so many groups of rows of the same keys the ranges have to share out all velocities (our choice). */
const mostGroups = 0.75;
const nearlyAll = 0.9;
/** A gap between two shares of the loudest that is no hole (our choice). */
const slack = 0.015;
const mostColumns = 10;
const keys = ['key_range', 'lokey', 'hikey', 'key'] as const;

interface Range {
  low: number;
  high: number;
}

/**
 * Finds velocities under headings that are not known by their values: on the same keys, the ranges of one column, or of a low and a
 * high one, share out all velocities without a hole.
 */
export function findLayers(state: ColumnState): void {
  const { taken } = state;
  if ((['velocity_range', 'lovel', 'hivel'] as const).some((meaning) => taken.has(meaning))) return;
  const rows = keysOfRows(state);
  if (!rows) return;
  const free = state
    .rest()
    .filter((index) => mayHold(state, index))
    .slice(0, mostColumns);
  findRange(state, free, rows) || findPair(state, free, rows) || findHighs(state, free, rows);
}

function mayHold({ contents }: ColumnState, index: number): boolean {
  const one = contents[index];
  return !one.named && one.negative === 0 && shareOf(one, 'number', 'number-range', 'text') >= nearlyAll;
}

/** The keys of each row as one text, those of the row above where none are given; `undefined` where no column gives keys. */
function keysOfRows({ taken, cells, looked }: ColumnState): string[] | undefined {
  const given = keys.flatMap((meaning) => taken.get(meaning) ?? []);
  const root = taken.get('pitch_keycenter');
  const columns = given.length > 0 ? given : root === undefined ? [] : [root];
  if (columns.length === 0) return undefined;
  let last = '';
  return looked.map((row) => {
    const texts = columns.map((index) => cells.value(cells.cell(row, index)));
    if (texts.some((text) => text !== '')) last = texts.join(' ');
    return last;
  });
}

/** The range in each row of a column; NaN where none is given. */
function rangesIn({ cells, looked }: ColumnState, index: number): (Range | undefined)[] {
  return looked.map((row) => {
    const text = cells.plain(cells.cell(row, index));
    if (meansAll(text)) return { low: 0, high: Number.POSITIVE_INFINITY };
    const reading = text === '' ? undefined : readVelocities(text);
    return reading && { low: reading.low ?? 0, high: reading.high ?? Number.POSITIVE_INFINITY };
  });
}

function findRange(state: ColumnState, free: readonly number[], rows: readonly string[]): boolean {
  for (const index of free) {
    const { counts, wholes, filled } = state.contents[index];
    if (counts['number-range'] === 0 || (counts['number-range'] + wholes) * 2 < filled) continue;
    const ranges = rangesIn(state, index);
    const shared = sharesOut(ranges, rows);
    if (!shared && !isWhole(ranges)) continue;
    const evidence = shared
      ? 'On the same keys its ranges share out all velocities without a hole.'
      : 'Its ranges lie within the velocities from the softest to the loudest, and other columns give the keys.';
    claim(state, index, 'velocity_range', shared ? 0.8 : 0.6, evidence);
    return true;
  }
  return false;
}

function findPair(state: ColumnState, free: readonly number[], rows: readonly string[]): boolean {
  const single = free.filter((index) => shareOf(state.contents[index], 'number') >= nearlyAll);
  for (const low of single)
    for (const high of single) {
      if (low === high) continue;
      const [lows, highs] = [rangesIn(state, low), rangesIn(state, high)];
      const ranges = lows.map((one, at) => {
        const other = highs[at];
        return one && other && { low: one.low, high: other.high };
      });
      if (!sharesOut(ranges, rows)) continue;
      const evidence = 'On the same keys the two share out all velocities without a hole.';
      claim(state, low, 'lovel', 0.8, evidence);
      claim(state, high, 'hivel', 0.8, evidence);
      return true;
    }
  return false;
}

/** The upper ends of layers alone; numbers that could be lower ends are often something else, such as delays. */
function findHighs(state: ColumnState, free: readonly number[], rows: readonly string[]): boolean {
  for (const index of free) {
    const { fractional, counts, filled } = state.contents[index];
    if (fractional > 0 || counts.number < filled * nearlyAll) continue;
    const groups = groupsOf(rangesIn(state, index), rows).map((group) => group.map(({ high }) => high));
    const several = groups.filter((group) => group.length > 1);
    if (several.length < 2 || limitsOfLayers(several) !== 'upper') continue;
    claim(state, index, 'hivel', 0.6, 'On the same keys its numbers differ, and the greatest is always 127.');
    return true;
  }
  return false;
}

function claim(
  state: ColumnState,
  index: number,
  meaning: ColumnMeaning,
  confidence: number,
  evidence: string,
): void {
  const column = state.columns[index];
  column.evidence.length = 0;
  if (unitInHeading(column.heading) === 'percent') column.unit = 'percent';
  state.claim(index, meaning, confidence, evidence);
}

/** Whether the ranges of a column reach from the softest velocity to the loudest, as those of keys seldom do. */
export function reachAllVelocities(state: ColumnState, index: number): boolean {
  const ranges = rangesIn(state, index);
  if (isWhole(ranges)) return true;
  const all = ranges.filter((range) => range !== undefined);
  const greatest = Math.max(...all.map(({ high }) => high));
  return all.length * 10 >= ranges.length * 9 && loudest.has(greatest) && all.some(({ low }) => low <= 1);
}

/** Whether ranges are all within the velocities, one starting with the softest and one ending with the loudest. */
function isWhole(ranges: readonly (Range | undefined)[]): boolean {
  const all = ranges.filter((range) => range !== undefined);
  return (
    all.length * 10 >= ranges.length * 9 &&
    all.every(({ low, high }) => low <= high && high <= 127) &&
    all.some(({ low }) => low <= 1) &&
    all.some(({ high }) => high === 127)
  );
}

/** Whether the ranges of the same keys, where there are several, share out all from the softest to the loudest without a hole. */
function sharesOut(ranges: readonly (Range | undefined)[], rows: readonly string[]): boolean {
  const ends = ranges.flatMap((range) => (range && Number.isFinite(range.high) ? [range.high] : []));
  const greatest = Math.max(...ends);
  if (!loudest.has(greatest) || ranges.filter(Boolean).length * 10 < ranges.length * 8) return false;
  const isShare = greatest === 1;
  const layered = groupsOf(ranges, rows)
    .map((group) => distinctOf(group, greatest))
    .filter((group) => group.length > 1);
  const whole = layered.filter((group) =>
    group.every(({ low, high }, at) => {
      const before = group[at - 1];
      if (low > high) return false;
      if (!before) return low <= (isShare ? 0.01 : 1);
      const step = low - before.high;
      return (
        (isShare ? Math.abs(step) <= slack : step === 0 || step === 1 || (step > 0 && step < 1)) &&
        (at < group.length - 1 || high === greatest)
      );
    }),
  );
  return whole.length > 0 && whole.length >= layered.length * mostGroups;
}

/** The different ranges but for those of all velocities, softest first. */
function distinctOf(group: readonly Range[], greatest: number): Range[] {
  const seen = new Map<string, Range>();
  for (const { low, high } of group) {
    const end = Math.min(high, greatest);
    if (low > 1 || end < greatest || greatest === 1) seen.set(`${low} ${end}`, { low, high: end });
  }
  return [...seen.values()].sort((a, b) => a.low - b.low || a.high - b.high);
}

function groupsOf(ranges: readonly (Range | undefined)[], rows: readonly string[]): Range[][] {
  const groups = new Map<string, Range[]>();
  for (const [at, range] of ranges.entries()) {
    if (!range) continue;
    const key = rows[at] ?? '';
    const group = groups.get(key);
    if (group) group.push(range);
    else groups.set(key, [range]);
  }
  return [...groups.values()];
}
