import type { Assigned } from '../assign';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import type { Rows } from '../values/rows';
import { rowKeyNumber } from './rowKeys';

/** Adds the root key: a place beside the ends of a key range that always lies between them is one, whatever it is called. */
export function withRootsBetween(rows: Rows, all: readonly Assigned[]): Assigned[] {
  if (all.some(({ target }) => target === 'pitch_keycenter' || target === 'key')) return [...all];
  for (const low of all) {
    const { column } = low;
    const high = all.find(
      ({ target, column: other }) =>
        target === 'hikey' && other.level === column.level && other.around.join() === column.around.join(),
    );
    // Both ends may stand in one text, and the high one may be a number of keys.
    const areAlike = high?.part === undefined ? low.part === undefined : high.column === column;
    if (low.target !== 'lokey' || !high || !areAlike) continue;
    const root = rootBetween(rows, low, high, all);
    if (root) return [...all, root];
  }
  return [...all];
}

function rootBetween(
  rows: Rows,
  low: Assigned,
  high: Assigned,
  all: readonly Assigned[],
): Assigned | undefined {
  const { column } = low;
  const lows = low.texts.map(rowKeyNumber);
  const highs = high.texts.map((text, row) => {
    const key = rowKeyNumber(text);
    return high.countedFrom && key !== undefined ? (lows[row] ?? 0) + key - 1 : key;
  });
  // Somebody may have exchanged the ends of a few.
  const isTurned = (row: number) => (lows[row] ?? 0) > (highs[row] ?? 128);
  const turned = lows.filter((_, row) => isTurned(row)).length;
  const isFew = turned * 2 < lows.length;
  const endsOf = (row: number) =>
    isFew && isTurned(row) ? [highs[row], lows[row]] : [lows[row] ?? 128, highs[row] ?? -1];
  for (const place of rows.columns) {
    const isBeside = place.level === column.level && place.around.join() === column.around.join();
    if (place.level !== column.level || all.some((one) => one.column === place)) continue;
    const texts = textsOf(place);
    const keys = texts.map(rowKeyNumber);
    const isBetween = (key: number | undefined, row: number) => {
      const [from = 128, to = -1] = endsOf(row);
      return key === undefined || (key >= from && key <= to);
    };
    const facts = columnFactsOf(texts);
    // Note names say by themselves that they are keys, of which some may be borrowed from beside the range.
    const areNames = facts.notes === facts.filled && keys.filter(isBetween).length * 3 >= keys.length * 2;
    const areKeys =
      areNames || (isBeside && facts.notes + facts.whole === facts.filled && keys.every(isBetween));
    if (!areKeys || !keys.some((key, row) => key !== undefined && key !== lows[row])) continue;
    const evidence = 'Its values lie between the low and the high key in all regions.';
    return {
      ...low,
      column: place,
      part: undefined,
      between: undefined,
      target: 'pitch_keycenter',
      texts,
      facts,
      weight: 0.72,
      evidence,
      others: [],
    };
  }
  return undefined;
}
