import { keyMeanings } from '../../../trade/meaning';
import type { ColumnState } from '../columnState';

/**
 * The rows that were looked at, those with the same keys together, as positions among them: by all columns of keys that are known.
 * `undefined` where none is.
 */
export function rowsOfSameKeys({ taken, cells, looked }: ColumnState): number[][] | undefined {
  const columns = keyMeanings.flatMap((meaning) => taken.get(meaning) ?? []);
  if (columns.length === 0) return undefined;
  const sets = new Map<string, number[]>();
  for (const [at, row] of looked.entries()) {
    const keys = columns.map((column) => cells.plain(cells.cell(row, column)).trim()).join('\t');
    if (keys.trim() === '') continue;
    const set = sets.get(keys);
    if (set) set.push(at);
    else sets.set(keys, [at]);
  }
  return [...sets.values()];
}

/** Whether a column says something else in each of the rows that have the same keys, and most rows have others beside them. */
export function tellsApart(state: ColumnState, index: number): boolean {
  const { cells, looked } = state;
  const several = (rowsOfSameKeys(state) ?? []).filter((set) => set.length > 1);
  const count = several.reduce((sum, set) => sum + set.length, 0);
  return (
    count * 2 > looked.length &&
    several.every((set) => {
      const texts = set.map((at) => cells.plain(cells.cell(looked[at], index)).trim().toLowerCase());
      return new Set(texts).size === texts.length;
    })
  );
}
