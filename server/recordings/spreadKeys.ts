/** The keys that each root answers, by root, the lowest first. */
export type KeySpread = ReadonlyMap<number, { low: number; high: number }>;

/**
 * Spreads roots over the keyboard: each takes the keys that are nearest to it, the lower one that in the middle. Beyond the
 * outermost roots as many are taken as towards their neighbours; a single root takes all keys.
 */
export function spreadKeys(roots: Iterable<number>): KeySpread {
  const sorted = [...new Set(roots)].sort((a, b) => a - b);
  const spread = new Map<number, { low: number; high: number }>();
  if (sorted.length === 1) return new Map([[sorted[0] as number, { low: 0, high: 127 }]]);
  for (const [at, root] of sorted.entries()) {
    const below = sorted[at - 1];
    const above = sorted[at + 1];
    const low =
      below === undefined
        ? root - Math.floor(((above ?? root) - root) / 2)
        : Math.floor((below + root) / 2) + 1;
    const high =
      above === undefined ? root + Math.floor((root - (below ?? root)) / 2) : Math.floor((root + above) / 2);
    spread.set(root, { low: Math.max(0, low), high: Math.min(127, high) });
  }
  return spread;
}
