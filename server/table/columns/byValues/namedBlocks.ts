import { readHeading } from '../../../trade/headings/headings';
import type { ColumnState } from '../columnState';

/**
 * Whether a column whose heading says nothing known names the blocks of rows of a table: names in the first columns, each in rows that stand together, and most of them in
 * several.
 */
export function namesBlocks(state: ColumnState, index: number): boolean {
  const { cells, looked, taken, contents, columns } = state;
  const said = readHeading(columns[index].heading);
  if (said && !said.likeness) return false;
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
