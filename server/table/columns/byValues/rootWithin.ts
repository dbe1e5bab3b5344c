import { pieceHeading } from '../../../trade/headings/pieceHeadings';
import { readKeyRange } from '../../../trade/readings/keyReading';
import type { ColumnContents } from '../columnContents';
import type { ColumnState } from '../columnState';
import { isKeys } from '../columnState';
import { areEnds, orderShare } from './keyOrder';

/** So many roots tell that a column holds them (our choice). */
const leastRoots = 3;

/** The one column whose numbers lie between the low and the high key on every row, where no heading gives the root. */
export function findRoot(state: ColumnState): void {
  const { contents, taken } = state;
  if (taken.has('pitch_keycenter') || taken.has('key')) return;
  const fits = fitWithin(state);
  if (!fits) return;
  const within = state.rest().filter((index) => {
    const one = contents[index];
    if (pieceHeading(state.columns[index].heading) === 'pace') return false;
    return one.filled >= leastRoots && one.distinct >= leastRoots && isKeys(one) && fits(index);
  });
  const [root] = within;
  if (root === undefined || within.length > 1) return;
  state.columns[root].evidence.length = 0;
  const evidence = 'Its numbers lie between the low and the high key on all rows.';
  state.claim(root, 'pitch_keycenter', 0.7, evidence);
}

/** Tells whether the keys in a column lie within the key ranges; `undefined` where the table has none, or all are the same. */
function fitWithin(state: ColumnState): ((index: number) => boolean) | undefined {
  const { contents, taken } = state;
  const range = taken.get('key_range');
  if (range !== undefined)
    return contents[range].distinct < 2
      ? undefined
      : (index) => contents[index].filled >= contents[range].filled && holdsKeys(state, range, index);
  const [low, high] = [state.contentsOf('lokey'), state.contentsOf('hikey')];
  if (!low || !high || (low.distinct < 2 && high.distinct < 2)) return undefined;
  return (index) => contents[index].filled >= low.filled && areBetween(low, contents[index], high);
}

function areBetween(low: ColumnContents, one: ColumnContents, high: ColumnContents): boolean {
  return (orderShare(low, one) === 1 && orderShare(one, high) === 1) || areEnds(low, one, high);
}

/**
 * Whether the ranges in a column hold the keys in another on all rows where both are given, and on most rows they are.
 */
export function holdsKeys({ cells, looked }: ColumnState, range: number, root: number): boolean {
  let known = 0;
  for (const row of looked) {
    const keys = readKeyRange(cells.plain(cells.cell(row, range)));
    const key = readKeyRange(cells.plain(cells.cell(row, root)))?.low;
    const [low, high, own] = [keys?.low, keys?.high, key].map((one) => one?.number ?? one?.named);
    if (low === undefined || high === undefined || own === undefined) continue;
    if (own < low || own > high) return false;
    known++;
  }
  return known * 2 > looked.length;
}
