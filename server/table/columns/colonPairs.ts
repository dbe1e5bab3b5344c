/** Two numbers with a colon between them, as in `3:42`. */
export interface ColonPair {
  first: number;
  second: number;
  /** Whether the second has a zero before it, as minutes and seconds have. */
  isPadded: boolean;
  /** How many cells have it. */
  uses: number;
}

/** Below lie no keys that instruments have (our choice). */
const leastKey = 12;
const mostSeconds = 59;
/** So many ranges are compared with one another. */
const mostCompared = 300;

/** The two numbers of a cell that has a colon between them. */
export function colonPairIn(text: string): Omit<ColonPair, 'uses'> | undefined {
  const [, first, second] = /^(\d{1,3}) ?: ?(\d{1,3})$/.exec(text) ?? [];
  if (first === undefined || second === undefined) return undefined;
  return { first: Number(first), second: Number(second), isPadded: /^0\d$/.test(second) };
}

/**
 * Whether the pairs of a column are times of the day, lengths, results of games or verses, and no ranges: some are written as only times are,
 * or fall from the first number to the second; or most begin below all keys; or all may be seconds, and overlap as ranges of keys do not.
 */
export function areNoRanges(pairs: readonly ColonPair[]): boolean {
  const count = (some: readonly ColonPair[]) => some.reduce((sum, { uses }) => sum + uses, 0);
  const all = count(pairs);
  const unlike = pairs.filter(({ first, second, isPadded }) => isPadded || first > second);
  if (all === 0) return false;
  if (count(unlike) * 4 >= all) return true;
  if (pairs.length < 2 || pairs.some(({ second }) => second > mostSeconds)) return false;
  const low = pairs.filter(({ first }) => first < leastKey);
  return count(low) * 2 > all || doOverlap(pairs);
}

/** Whether ranges that differ have keys in common. */
function doOverlap(pairs: readonly ColonPair[]): boolean {
  const sorted = pairs.slice(0, mostCompared).sort((a, b) => a.first - b.first);
  return sorted.some(({ first }, at) => at > 0 && first <= sorted[at - 1].second);
}
