import { limitWord } from '../../../trade/headings/headingStems';
import type { ColumnMeaning } from '../../../trade/meaning';
import type { ColumnContents } from '../columnContents';
import type { ColumnState } from '../columnState';
import { isKeys } from '../columnState';
import { areEnds, orderShare } from './keyOrder';

/** In so many rows an order has to hold (our choice). */
const holds = 0.95;
/** In so many rows a range has to end right below that of another row (our choice). */
const meets = 0.5;
const mostColumns = 10;

/**
 * Finds the two columns of the ends of the key ranges, and of the velocities, where no heading names them outright: the values
 * rise from the one over the root key to the other, and either the headings hold words such as `od` and `do`, or the ranges meet. Answers
 * whether any were found.
 */
export function findEnds(state: ColumnState): boolean {
  const before = state.taken.size;
  const root = state.contentsOf('pitch_keycenter') ?? state.contentsOf('key');
  findPair(state, ['lokey', 'hikey', 'key_range'], root);
  findPair(state, ['lovel', 'hivel', 'velocity_range'], undefined);
  return state.taken.size > before;
}

function findPair(
  state: ColumnState,
  [low, high, range]: readonly [ColumnMeaning, ColumnMeaning, ColumnMeaning],
  root: ColumnContents | undefined,
): void {
  const { taken, contents, columns } = state;
  if (taken.has(low) || taken.has(high) || taken.has(range)) return;
  const isVelocity = low === 'lovel';
  if (
    isVelocity &&
    (taken.has('dynamics') || !['lokey', 'key', 'key_range'].some((one) => taken.has(one as ColumnMeaning)))
  )
    return;
  const free = state
    .rest()
    .filter((index) => isKeys(contents[index]) && !(isVelocity && contents[index].named))
    .slice(0, mostColumns);
  for (const a of free)
    for (const b of free) {
      if (a === b || isSame(contents[a], contents[b])) continue;
      const words = limitWord(columns[a].heading) === 'low' && limitWord(columns[b].heading) === 'high';
      const isOrdered = orderShare(contents[a], contents[b]) >= holds;
      const isSwapped = !isOrdered && words && root !== undefined && areEnds(contents[a], root, contents[b]);
      if (!isOrdered && !isSwapped) continue;
      const within = root !== undefined && (isSwapped || rises(contents[a], root, contents[b]));
      const isWhole = contents[a].least <= 1 && contents[b].greatest === 127;
      const meet = a < b && meetShare(contents[a], contents[b]) >= meets;
      const evidence = isVelocity
        ? isWhole &&
          (words || meet) &&
          'In all rows the low end is not above the high one, and together they reach from the softest velocity to 127.'
        : (words && (root === undefined || within) && !isWhole) || (within && meet)
          ? within
            ? 'In all rows the root key lies between the two.'
            : 'Its heading and that of the other end say so, and in all rows the low end is not above the high one.'
          : false;
      if (!evidence) continue;
      for (const [index, meaning] of [
        [a, low],
        [b, high],
      ] as const) {
        columns[index].evidence.length = 0;
        state.claim(index, meaning, words ? 0.85 : 0.7, evidence);
      }
      return;
    }
}

function rises(low: ColumnContents, root: ColumnContents, high: ColumnContents): boolean {
  const isAlike = low.named === root.named && root.named === high.named;
  return isAlike && orderShare(low, root) >= holds && orderShare(root, high) >= holds;
}

function isSame(one: ColumnContents, other: ColumnContents): boolean {
  return orderShare(one, other) === 1 && orderShare(other, one) === 1;
}

/** The share of rows whose range ends right below that of another row, or where the last one ends. */
function meetShare(low: ColumnContents, high: ColumnContents): number {
  const starts = new Set(low.values);
  let rows = 0;
  let met = 0;
  for (const end of high.values) {
    if (Number.isNaN(end)) continue;
    rows++;
    if (end === high.greatest || starts.has(end + 1)) met++;
  }
  return rows < 2 || low.distinct < 2 ? 0 : met / rows;
}
