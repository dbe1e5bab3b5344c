import type { ColumnMeaning } from '../../../trade/meaning';
import type { ColumnContents } from '../columnContents';

/** The usual orders of key and velocity columns (common practice); the first counts where several fit alike. */
const orders: readonly (readonly ColumnMeaning[])[] = [
  ['pitch_keycenter', 'lokey', 'hikey', 'lovel', 'hivel'],
  ['lokey', 'hikey', 'pitch_keycenter', 'lovel', 'hivel'],
  ['lokey', 'pitch_keycenter', 'hikey', 'lovel', 'hivel'],
  ['lovel', 'hivel', 'pitch_keycenter', 'lokey', 'hikey'],
  ['lokey', 'hikey', 'lovel', 'hivel', 'pitch_keycenter'],
  ['lovel', 'hivel', 'lokey', 'hikey', 'pitch_keycenter'],
  ['pitch_keycenter', 'lovel', 'hivel', 'lokey', 'hikey'],
  ['lokey', 'hikey', 'lovel', 'hivel'],
  ['lovel', 'hivel', 'lokey', 'hikey'],
  ['pitch_keycenter', 'lokey', 'hikey'],
  ['lokey', 'hikey', 'pitch_keycenter'],
  ['lokey', 'pitch_keycenter', 'hikey'],
  ['key', 'lovel', 'hivel'],
  ['lokey', 'hikey'],
  ['lovel', 'hivel'],
  ['key'],
  ['pitch_keycenter'],
];

/** The meanings of some columns, by position in the list of candidates. */
export interface KeyOrder {
  meanings: readonly ColumnMeaning[];
  confidence: number;
  evidence: string;
}

/** In so many of the rows an order has to hold. */
const holds = 0.95;

/**
 * Finds what columns of keys and velocities mean from their values alone: low key ≤ root key ≤ high key and low
 * velocity ≤ high velocity hold on nearly all rows, and velocities span 1..127. `taken` lists meanings that other
 * columns have. `undefined` where no usual order fits.
 */
export function findKeyOrder(
  columns: readonly ColumnContents[],
  taken: ReadonlySet<ColumnMeaning>,
): KeyOrder | undefined {
  let best: readonly ColumnMeaning[] | undefined;
  let bestScore = Number.NEGATIVE_INFINITY;
  let second = Number.NEGATIVE_INFINITY;
  for (const order of orders) {
    if (order.length > columns.length || order.some((meaning) => taken.has(meaning))) continue;
    if (order.includes('key') && (taken.has('lokey') || taken.has('hikey'))) continue;
    // A key alone is the one that the region sounds on; it is the root only beside key ranges.
    if (order.length === 1 && order[0] === 'pitch_keycenter' && !taken.has('lokey')) continue;
    const score = scoreOf(order, columns);
    if (score > bestScore) {
      second = bestScore;
      bestScore = score;
      best = order;
    } else if (score > second) second = score;
  }
  if (!best || bestScore < 0) return undefined;
  const clear = bestScore - second > 0.2;
  return { meanings: best, confidence: clear ? 0.75 : 0.5, evidence: sentence(best) };
}

function sentence(order: readonly ColumnMeaning[]): string {
  const parts: string[] = [];
  if (order.includes('lokey'))
    parts.push(order.includes('pitch_keycenter') ? 'low key ≤ root key ≤ high key' : 'low key ≤ high key');
  if (order.includes('lovel')) parts.push('low velocity ≤ high velocity');
  if (parts.length === 0) return 'All its values are keys.';
  return `In this order the values agree with ${parts.join(' and ')}.`;
}

function scoreOf(order: readonly ColumnMeaning[], columns: readonly ColumnContents[]): number {
  const of = (meaning: ColumnMeaning) => columns[order.indexOf(meaning)];
  const low = of('lokey');
  const high = of('hikey');
  const root = of('pitch_keycenter');
  const lowVelocity = of('lovel');
  const highVelocity = of('hivel');
  let score = order.length;
  for (const [at, meaning] of order.entries()) {
    const column = columns[at];
    const velocity = meaning === 'lovel' || meaning === 'hivel';
    if (velocity && column.named) return Number.NEGATIVE_INFINITY;
    if (!velocity && !column.named && columns.some((other) => other.named)) score -= 0.6;
  }
  if (low && high) {
    if (orderShare(low, high) < holds) return Number.NEGATIVE_INFINITY;
    score += varies(low) || varies(high) ? 0.5 : -0.5;
    if (low.least === 1 && !low.named) score -= 0.5;
    if (root && (orderShare(low, root) < holds || orderShare(root, high) < holds))
      return Number.NEGATIVE_INFINITY;
  }
  if (root) score += varies(root) ? 0.5 : 0;
  if (lowVelocity && highVelocity) {
    if (orderShare(lowVelocity, highVelocity) < holds) return Number.NEGATIVE_INFINITY;
    score += highVelocity.greatest === 127 ? 0.5 : -0.5;
    score += lowVelocity.least === 1 ? 0.5 : lowVelocity.least === 0 ? 0.3 : -0.5;
  }
  return score;
}

function varies(column: ColumnContents): boolean {
  return column.distinct > 1;
}

/** The share of rows on which one column is not above another; 1 where they cannot be compared. */
export function orderShare(lower: ColumnContents, upper: ColumnContents): number {
  if (lower.named !== upper.named) return 1;
  let rows = 0;
  let ordered = 0;
  for (let row = 0; row < lower.values.length; row++) {
    const a = lower.values[row];
    const b = upper.values[row];
    if (Number.isNaN(a) || Number.isNaN(b)) continue;
    rows++;
    if (a <= b) ordered++;
  }
  return rows === 0 ? 1 : ordered / rows;
}
