/** Keys from the lowest to the highest. */
export interface KeySpan {
  low: number;
  high: number;
}

/** The highest key that the lower of two roots answers: keys go to the nearer root, the one in the middle to the lower. */
export function lastKeyOf(lowerRoot: number, higherRoot: number): number {
  return Math.floor((lowerRoot + higherRoot) / 2);
}

/**
 * The keys that each of some roots answers, by root, the lowest first. `ends` are the lowest and the highest key of all; without
 * them the outermost roots take as many keys outwards as towards their neighbours, and a single root takes all keys.
 */
export function spreadKeys(roots: Iterable<number>, ends?: KeySpan): ReadonlyMap<number, KeySpan> {
  const sorted = [...new Set(roots)].sort((a, b) => a - b);
  const { low, high } = ends ?? endsAround(sorted);
  return new Map(
    sorted.map((root, at) => [
      root,
      {
        low: at === 0 ? low : lastKeyOf(sorted[at - 1], root) + 1,
        high: at + 1 < sorted.length ? lastKeyOf(root, sorted[at + 1]) : high,
      },
    ]),
  );
}

function endsAround(sorted: readonly number[]): KeySpan {
  if (sorted.length < 2) return { low: 0, high: 127 };
  const [lowest, next] = sorted;
  const [before, highest] = sorted.slice(-2);
  return {
    low: Math.max(0, lowest - Math.floor((next - lowest) / 2)),
    high: Math.min(127, highest + Math.floor((highest - before) / 2)),
  };
}
