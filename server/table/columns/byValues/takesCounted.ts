import { turnWord } from '../../../trade/headings/turnWord';
import type { ColumnState } from '../columnState';
import { rowsOfSameKeys } from './rowsAlike';

/** So many rows tell (our choice). */
const fewestRows = 3;

/**
 * Numbers under a heading that may mean turns, such as `Take`, count files where they go on from one key to the next: no two rows have the
 * same, though several keys have some. Where each key has one row of its own there is nothing to take turns anyway.
 */
export function giveUpCountedTakes(state: ColumnState): void {
  const { taken, chosen, columns, contents } = state;
  const index = taken.get('seq_position');
  if (index === undefined || chosen.has(index) || turnWord.test(columns[index].heading)) return;
  const sets = rowsOfSameKeys(state);
  const { values, turns } = contents[index];
  if (turns > 0 || !sets || sets.length < 2 || !sets.some((set) => set.length > 1)) return;
  const numbers = sets.flatMap((set) => set.map((at) => values[at])).filter((one) => !Number.isNaN(one));
  if (numbers.length < fewestRows || new Set(numbers).size < numbers.length) return;
  taken.delete('seq_position');
  columns[index].meaning = 'unknown';
  columns[index].evidence = ['Its numbers go on from one key to the next, so they count files and no turns.'];
}
