import type { ColumnState } from '../columnState';

/**
 * Whether a column names the blocks of rows of a table: names in the first columns, each in rows that stand together, and most of them in
 * several.
 */
export function namesBlocks({ cells, looked, taken, contents }: ColumnState, index: number): boolean {
  const sample = taken.get('sample');
  const { counts, filled } = contents[index];
  if (sample === undefined || index > sample || counts.text < filled * 0.9 || filled < looked.length)
    return false;
  const names = new Set<string>();
  let last: string | undefined;
  for (const row of looked) {
    const name = cells.plain(cells.cell(row, index));
    if (name === last) continue;
    if (names.has(name)) return false;
    names.add(name);
    last = name;
  }
  return names.size > 1 && names.size * 2 <= filled;
}
