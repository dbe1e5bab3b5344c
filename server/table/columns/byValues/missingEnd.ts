import { readHeading } from '../../../trade/headings/headings';
import type { ColumnMeaning } from '../../../trade/meaning';
import { meaningNames } from '../../../trade/meaning';
import type { ColumnContents } from '../columnContents';
import type { ColumnState } from '../columnState';
import { isKeys } from '../columnState';

/** So many different ranges tell that a column is the other end of them; fewer where each range meets the next (our choice). */
const leastRanges = 3;
const leastMeeting = 2;
const others: readonly ColumnMeaning[] = ['key', 'key_range', 'key_count'];

interface Range {
  low: number;
  high: number;
  root: number | undefined;
}

/**
 * Finds the one column that can only be the low or the high key that no heading gives, where the other one is known: on all rows it lies
 * on the other side of the root key, and the zones that it makes do not cross. None where several columns could be it.
 */
export function findMissingEnd(state: ColumnState): void {
  const { taken, contents, columns } = state;
  const missing = !taken.has('lokey') ? 'lokey' : !taken.has('hikey') ? 'hikey' : undefined;
  const given = state.contentsOf(missing === 'lokey' ? 'hikey' : 'lokey');
  if (!missing || !given || others.some((meaning) => taken.has(meaning))) return;
  const root = state.contentsOf('pitch_keycenter');
  const fitting = state.rest().filter((index) => {
    const one = contents[index];
    if (!isKeys(one) || one.named !== given.named || isKnownOtherwise(columns[index].heading, missing))
      return false;
    const ranges = missing === 'lokey' ? rangesOf(one, given, root) : rangesOf(given, one, root);
    return ranges !== undefined && fitTogether(ranges, missing, root !== undefined);
  });
  const [only] = fitting;
  if (only === undefined || fitting.length > 1) return;
  columns[only].evidence.length = 0;
  const evidence = `No heading gives the ${meaningNames[missing]}, and on all rows its keys lie where that has to be.`;
  state.claim(only, missing, 0.7, evidence);
}

/** Whether the words of a heading are known and say something else. */
function isKnownOtherwise(heading: string, missing: ColumnMeaning): boolean {
  const said = readHeading(heading);
  return said !== undefined && said.likeness === undefined && said.meaning !== missing;
}

/** The different ranges of the rows, the lowest first; `undefined` where a row lacks an end, or holds its root outside. */
function rangesOf(
  lows: ColumnContents,
  highs: ColumnContents,
  roots: ColumnContents | undefined,
): Range[] | undefined {
  if (roots && roots.named !== lows.named) return undefined;
  const ranges = new Map<string, Range>();
  for (const [row, low] of lows.values.entries()) {
    const high = highs.values[row];
    if (Number.isNaN(low) && Number.isNaN(high)) continue;
    const root = roots?.values[row];
    const known = root === undefined || Number.isNaN(root) ? undefined : root;
    if (!(low <= high) || (known !== undefined && (known < low || known > high))) return undefined;
    ranges.set(`${low} ${high}`, { low, high, root: known });
  }
  return [...ranges.values()].sort((a, b) => a.low - b.low || a.high - b.high);
}

/** Whether ranges do not cross; without roots, which lie on the same side, each has to meet the next. */
function fitTogether(ranges: readonly Range[], missing: ColumnMeaning, hasRoots: boolean): boolean {
  const gaps = ranges.slice(1).map(({ low }, at) => low - ranges[at].high);
  if (gaps.some((gap) => gap < 1)) return false;
  const meet = gaps.every((gap) => gap === 1);
  if (ranges.length < (meet && hasRoots ? leastMeeting : leastRanges)) return false;
  if (!hasRoots) return meet;
  // What says the same as the root key on all rows is another column of roots, unless the zones meet there.
  return meet || ranges.some(({ low, high, root }) => root !== (missing === 'lokey' ? low : high));
}
