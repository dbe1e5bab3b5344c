import type { Assigned } from '../assign';
import { rowKeyNumber } from './rowKeys';

/**
 * Two places of one element that are named like low ends, as `under` and `over`, where the second one is never below the first and
 * the next range starts right above it: they are the low and the high key.
 */
export function withPairedEnds(all: readonly Assigned[]): Assigned[] {
  const has = (target: string) => all.some((one) => one.target === target);
  const low = all.find(({ target, part }) => target === 'lokey' && part === undefined);
  const other = all.find(
    ({ target, column, part }) =>
      target === 'lovel' && part === undefined && column.level === low?.column.level,
  );
  if (!low || !other || has('hikey') || has('hivel')) return [...all];
  const lows = low.texts.map(rowKeyNumber);
  const highs = other.texts.map(rowKeyNumber);
  const isAbove = highs.every((high, row) => high !== undefined && high >= (lows[row] ?? 128));
  const starts = new Set(lows);
  const follow = highs.filter((high) => high !== undefined && starts.has(high + 1)).length;
  if (!isAbove || starts.size < 3 || follow * 2 < starts.size) return [...all];
  const evidence = 'Its values lie above the low keys, and the next range starts right above each.';
  return all.map((one) =>
    one === other ? { ...one, target: 'hikey', weight: 0.72, evidence, others: ['lovel'] } : one,
  );
}
