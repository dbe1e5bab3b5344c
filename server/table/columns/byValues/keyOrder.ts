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
/** In more of the rows the ends of ranges stand in their order, where others have them the other way round (our choice). */
export const mostly = 0.5;
const fewestRows = 3;
/** What an order that holds but for ends the other way round counts less (our choice). */
const swapped = 0.3;

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
  return { meanings: best, confidence: clear ? 0.75 : 0.5, evidence: sentence(best, columns) };
}

function sentence(order: readonly ColumnMeaning[], columns: readonly ColumnContents[]): string {
  const parts: string[] = [];
  if (order.includes('lokey'))
    parts.push(order.includes('pitch_keycenter') ? 'low key ≤ root key ≤ high key' : 'low key ≤ high key');
  if (order.includes('lovel')) parts.push('low velocity ≤ high velocity');
  if (parts.length === 0) return 'All its values are keys.';
  const [low, high] = [columns[order.indexOf('lokey')], columns[order.indexOf('hikey')]];
  const but =
    low && high && orderShare(low, high) < holds ? ', but for rows whose ends stand the other way round' : '';
  return `In this order the values agree with ${parts.join(' and ')}${but}.`;
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
    const rises =
      orderShare(low, high) >= holds &&
      (!root || (orderShare(low, root) >= holds && orderShare(root, high) >= holds));
    if (!rises && !(root && areEnds(low, root, high))) return Number.NEGATIVE_INFINITY;
    score += varies(low) || varies(high) ? 0.5 : -0.5;
    if (!rises) score -= swapped;
    if (low.least === 1 && !low.named) score -= 0.5;
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

/**
 * Whether two columns are the ends of ranges though some rows have theirs the other way round: on most rows the low one is not above the
 * high one, and on all rows the root lies between the two.
 */
export function areEnds(low: ColumnContents, root: ColumnContents, high: ColumnContents): boolean {
  if (low.named !== high.named || low.named !== root.named || !(orderShare(low, high) > mostly)) return false;
  let rows = 0;
  for (const [row, a] of low.values.entries()) {
    const [b, own] = [high.values[row], root.values[row]];
    if (Number.isNaN(a) || Number.isNaN(b) || Number.isNaN(own)) continue;
    rows++;
    if (own < Math.min(a, b) || own > Math.max(a, b)) return false;
  }
  return rows >= fewestRows;
}
