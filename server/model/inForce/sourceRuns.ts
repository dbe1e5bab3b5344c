import type { SourceRun } from '../instrumentParts';

/** The source that a header or parameter stands in. */
export function sourceAt(runs: readonly SourceRun[], position: number): number {
  let at = runs.length - 1;
  if (at <= 0) return 0;
  let low = 0;
  while (at > low) {
    const middle = (low + at + 1) >> 1;
    if (runs[middle].first <= position) low = middle;
    else at = middle - 1;
  }
  return runs[low].source;
}

/** The last position in the runs of a source for which `holds`; it holds for none, or up to some position, within a source. */
export function lastAt(
  runs: readonly SourceRun[],
  count: number,
  source: number,
  holds: (position: number) => boolean,
): number {
  for (let run = runs.length - 1; run >= 0; run--) {
    const { first, source: file } = runs[run];
    if (file !== source) continue;
    let low = first;
    let high = runs[run + 1]?.first ?? count;
    if (low >= high || !holds(low)) continue;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (holds(middle)) low = middle;
      else high = middle;
    }
    return low;
  }
  return -1;
}
