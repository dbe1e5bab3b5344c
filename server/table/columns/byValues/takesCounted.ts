import { turnWord } from '../../../trade/headings/turnWord';
import type { ColumnMeaning } from '../../../trade/meaning';
import { readKeyRange } from '../../../trade/readings/keyReading';
import type { ColumnState } from '../columnState';
import { rowsOfSameKeys } from './rowsAlike';

/** So many rows tell (our choice). */
const fewestRows = 3;
/** What tells zones of the same keys apart, so that they do not sound by turns. */
const apart: readonly ColumnMeaning[] = [
  'lovel',
  'hivel',
  'velocity_range',
  'dynamics',
  'trigger',
  'keyswitch',
];

/**
 * Numbers under a heading that may mean turns, such as `Take`, count files or takes where nothing takes turns: where they go on from one key to
 * the next, so that no two rows have the same though several keys have some, and where no two rows answer the same keys and velocities.
 */
export function giveUpCountedTakes(state: ColumnState): void {
  const { taken, chosen, columns, contents } = state;
  const index = taken.get('seq_position');
  if (index === undefined || chosen.has(index) || turnWord.test(columns[index].heading)) return;
  const sets = rowsOfSameKeys(state);
  const { values, turns } = contents[index];
  if (turns > 0 || !sets || sets.length < 2) return;
  const because = goOn(sets, values)
    ? 'Its numbers go on from one key to the next, so they count files and no turns.'
    : areAllAlone(state, sets)
      ? 'No two rows answer the same keys and velocities, so nothing plays in turn; its numbers are those of the recordings.'
      : undefined;
  if (because === undefined) return;
  taken.delete('seq_position');
  columns[index].meaning = 'unknown';
  columns[index].evidence = [because];
}

function goOn(sets: readonly (readonly number[])[], values: ArrayLike<number>): boolean {
  if (!sets.some((set) => set.length > 1)) return false;
  const numbers = sets
    .flatMap((set) => set.map((at) => values[at] ?? Number.NaN))
    .filter((one) => !Number.isNaN(one));
  return numbers.length >= fewestRows && new Set(numbers).size === numbers.length;
}

/** Whether no two rows have the same keys, or keys in common, and the same velocities. */
function areAllAlone(state: ColumnState, sets: readonly (readonly number[])[]): boolean {
  const { taken, cells, looked } = state;
  const text = (at: number, column: number) => cells.plain(cells.cell(looked[at], column)).trim();
  const columns = apart.flatMap((meaning) => taken.get(meaning) ?? []);
  const conditions = (at: number) => columns.map((column) => text(at, column)).join('\t');
  const rows = sets.flat();
  if (rows.length < fewestRows || sets.some((set) => new Set(set.map(conditions)).size < set.length))
    return false;
  const [low, high] = [taken.get('lokey'), taken.get('hikey')];
  const [first, last] = low === undefined || high === undefined ? [taken.get('key_range')] : [low, high];
  if (first === undefined) return true;
  const ranges = rows.flatMap((at) => {
    const [from, to] = [readKeyRange(text(at, first))?.low, readKeyRange(text(at, last ?? first))?.high];
    const [least, most] = [from?.number ?? from?.named, to?.number ?? to?.named];
    return least === undefined || most === undefined ? [] : [{ least, most, said: conditions(at) }];
  });
  return !ranges.some((one, at) =>
    ranges
      .slice(at + 1)
      .some((other) => one.said === other.said && one.least <= other.most && other.least <= one.most),
  );
}
