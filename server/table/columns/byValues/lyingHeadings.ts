import type { ColumnMeaning } from '../../../trade/meaning';
import { meaningNames } from '../../../trade/meaning';
import { keyNumbersInFileName, notesInFileName } from '../../../trade/readings/keyReading';
import type { ColumnContents } from '../columnContents';
import type { ColumnState } from '../columnState';
import { orderShare } from './keyOrder';

/** Headings fail where they hold in so few of the rows; two that are only swapped hold in so many (our choice). */
const fails = 0.2;
const holds = 0.8;
const fewestRows = 3;
const octave = 12;

type Three = readonly [low: number, root: number, high: number];

/** Reads headings that stand over one another's columns as the order of the values below them tells. */
export function settleLyingHeadings(state: ColumnState): void {
  if (!settleThree(state)) swapInverted(state, 'lokey', 'hikey');
  swapInverted(state, 'lovel', 'hivel');
}

/**
 * Root, low and high key in another order than their headings say: as headed, they contradict one another in most rows, and one order alone
 * holds in all of them. Where the low keys lie below the high ones as headed, names of samples or neighbours have to tell it too.
 */
function settleThree(state: ColumnState): boolean {
  const { taken, chosen, contents, columns } = state;
  const [low, root, high] = (['lokey', 'pitch_keycenter', 'hikey'] as const).map((one) => taken.get(one));
  if (low === undefined || root === undefined || high === undefined) return false;
  const headed: Three = [low, root, high];
  if (headed.some((index) => chosen.has(index) || contents[index].named !== contents[low].named))
    return false;
  const of = (index: number) => contents[index];
  const isInverted = orderShare(of(low), of(high)) <= fails;
  const isRight = orderShare(of(low), of(root)) > fails && orderShare(of(root), of(high)) > fails;
  if ((isRight && !isInverted) || rowsOf(contents, headed) < fewestRows) return false;
  const found = permutations(headed).filter((order) => rises(contents, order));
  const [order] = found;
  // Where several hold their columns are alike.
  if (!order || (order[1] === root && order[0] === low)) return false;
  const isOnlySwapped = order[0] === high && order[1] === root;
  if (isOnlySwapped || contents[root].distinct < 2) return false;
  // Ends that stand the other way round are wrong as headed, whatever tells so.
  const rival: Three = isInverted ? [high, root, low] : headed;
  if (!(areWitnessed(state, order, rival) ?? isInverted)) return false;
  const because = `The headings ${headed
    .map((index) => `"${columns[index].heading}"`)
    .join(
      ', ',
    )} stand over one another's columns: only read so does each root key lie between its low and its high key. Check them.`;
  const meanings = ['lokey', 'pitch_keycenter', 'hikey'] as const;
  for (const meaning of meanings) taken.delete(meaning);
  for (const [at, index] of order.entries()) {
    columns[index].evidence.length = 0;
    state.claim(index, meanings[at], 0.7, because);
  }
  return true;
}

function permutations([a, b, c]: Three): Three[] {
  return [
    [a, b, c],
    [a, c, b],
    [b, a, c],
    [b, c, a],
    [c, a, b],
    [c, b, a],
  ];
}

function rowsOf(contents: readonly ColumnContents[], [low, root, high]: Three): number {
  const rows = [...contents[low].values.keys()];
  return rows.filter((row) => [low, root, high].every((index) => !Number.isNaN(contents[index].values[row])))
    .length;
}

/** Whether low key ≤ root key ≤ high key holds in all rows. */
function rises(contents: readonly ColumnContents[], [low, root, high]: Three): boolean {
  return orderShare(contents[low], contents[root]) === 1 && orderShare(contents[root], contents[high]) === 1;
}

/** Whether the names of samples give the root keys in one order and not in the other, or ranges meet only in the one; `undefined` where neither tells. */
function areWitnessed(state: ColumnState, order: Three, rival: Three): boolean | undefined {
  const { contents } = state;
  const [named, otherNamed] = [order, rival].map((one) => namedShare(state, one[1]));
  if (named !== otherNamed) return named >= holds && otherNamed <= fails;
  const [met, otherMet] = [order, rival].map((one) => meetShare(contents[one[0]], contents[one[2]]));
  return met === otherMet ? undefined : met >= holds && otherMet <= fails;
}

/** In what share of the rows the name of the sample holds the key in a column, as a number or as a note of any octave. */
function namedShare({ cells, looked, taken, contents }: ColumnState, column: number): number {
  const sample = taken.get('sample');
  if (sample === undefined) return 0;
  const named = looked.filter((row, at) => {
    const key = contents[column].values[at];
    const name = cells.value(cells.cell(row, sample));
    return (
      keyNumbersInFileName(name).includes(key) ||
      notesInFileName(name).some((note) => (note - key) % octave === 0)
    );
  });
  return named.length / Math.max(1, looked.length);
}

/** The share of ranges that end right below another one, but for the last. */
function meetShare(low: ColumnContents, high: ColumnContents): number {
  const starts = new Set(low.values);
  const ends = high.values.filter((end) => !Number.isNaN(end));
  const last = ends.reduce((sum, end) => Math.max(sum, end), 0);
  const others = ends.filter((end) => end !== last);
  return others.filter((end) => starts.has(end + 1)).length / Math.max(1, others.length);
}

function swapInverted(state: ColumnState, low: ColumnMeaning, high: ColumnMeaning): void {
  const { taken, chosen, contents } = state;
  const lower = taken.get(low);
  const upper = taken.get(high);
  if (lower === undefined || upper === undefined || chosen.has(lower) || chosen.has(upper)) return;
  const [a, b]: ColumnContents[] = [contents[lower], contents[upper]];
  if (orderShare(a, b) > fails || orderShare(b, a) < holds) return;
  const because = `The values under "${meaningNames[low]}" lie above those under "${meaningNames[high]}", so the two headings are taken the other way round.${rootBeside(state, lower, upper)}`;
  taken.delete(low);
  taken.delete(high);
  state.claim(lower, high, 0.7, because);
  state.claim(upper, low, 0.7, because);
}

/** What is said of roots that lie outside of the keys though two columns are taken the other way round. */
function rootBeside({ taken, contents }: ColumnState, one: number, other: number): string {
  const root = taken.get('pitch_keycenter');
  if (root === undefined || contents[root].distinct < 2) return '';
  const within = Math.min(
    orderShare(contents[other], contents[root]),
    orderShare(contents[root], contents[one]),
  );
  return within > fails ? '' : ' The root keys lie outside of the keys in most rows. Check the columns.';
}
