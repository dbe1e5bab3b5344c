/** How layers share out the velocities up to their greatest: all as wide as one another, or not. */
export type VelocityShares = 'evenly' | 'unevenly';

/** How much wider the widest layer may be where all count as equal (our choice). */
const mostWider = 1.15;

/**
 * How layers share out the velocities from 0 or 1 up to the greatest, by all of their low and high ends: each begins where another one
 * ends, or right behind. `undefined` where they leave holes, or where there are not two of them.
 */
export function velocityShares(
  lows: ReadonlySet<number>,
  highs: ReadonlySet<number>,
): VelocityShares | undefined {
  const starts = [...lows].filter(Number.isFinite).sort((a, b) => a - b);
  const ends = [...highs].filter(Number.isFinite).sort((a, b) => a - b);
  const [least, greatest] = [starts[0] ?? 2, ends.at(-1) ?? 0];
  const isLayer = starts.length > 1 && least <= 1 && greatest > (starts.at(-1) ?? 0);
  if (!isLayer) return undefined;
  const isBefore = (end: number) => end === greatest || lows.has(end) || lows.has(end + 1);
  const isBehind = (start: number) => start === least || highs.has(start) || highs.has(start - 1);
  if (!ends.every(isBefore) || !starts.every(isBehind)) return undefined;
  const first = starts[1] - (starts[0] > 0 && highs.has(starts[1]) ? 0 : starts[0]);
  const widths = [first, ...starts.slice(1).map((start, at) => (starts[at + 2] ?? greatest + 1) - start)];
  const [narrow, wide] = [Math.min(...widths), Math.max(...widths)];
  return wide - narrow <= 1 || wide <= narrow * mostWider ? 'evenly' : 'unevenly';
}
