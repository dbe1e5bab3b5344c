import type { MiddleC } from '../../../model/keys';
import { conventions, octaveShifts } from '../../../trade/middleC';
import { readKeyRange } from '../../../trade/readings/keyReading';
import { isMiddleC, middleCIn, namesMiddleC } from '../../../trade/statements/keys/statedOctave';
import type { TableCells } from '../../cells/cells';
import type { KeyTable } from './octave';

const mostRows = 2000;
const longest = 300;
/** Remarks that do not speak of middle C tie a name to a key only with words for it: `C3 is MIDI note 60`. */
const midi = /(?<!\p{L})midi(?!\p{L})/iu;

/**
 * The octave that remarks in the cells of some tables state: `le do3 est le do central`, or `middle C` beside the root that is called so.
 * `undefined` where none does, or where they contradict one another.
 */
export function middleInRemarks(
  cells: TableCells,
  tables: readonly KeyTable[],
): { is: MiddleC; text: string } | undefined {
  let found: { is: MiddleC; text: string } | undefined;
  for (const { data, columns } of tables) {
    const remarks = columns.filter(({ meaning }) => meaning === 'comment' || meaning === 'unknown');
    const root = columns.find(({ meaning }) => meaning === 'pitch_keycenter' || meaning === 'key');
    for (const { index } of remarks)
      for (const row of data.slice(0, mostRows)) {
        const text = cells.value(cells.cell(row, index)).trim();
        if (text.length < 3 || text.length > longest || cells.struckRows.has(row)) continue;
        const is = statedIn(text) ?? (root && besideRoot(cells, row, root.index, text));
        if (!is) continue;
        if (found && found.is !== is) return undefined;
        found ??= { is, text };
      }
  }
  return found;
}

function statedIn(text: string): MiddleC | undefined {
  return namesMiddleC(text) || midi.test(text) ? middleCIn(text) : undefined;
}

/** By the name of the root in a row whose remark says no more than that it is middle C. */
function besideRoot(cells: TableCells, row: number, column: number, text: string): MiddleC | undefined {
  if (!isMiddleC(text)) return undefined;
  const { low, high } = readKeyRange(cells.plain(cells.cell(row, column))) ?? {};
  if (low?.named === undefined || low.number !== undefined || high?.named !== low.named) return undefined;
  const { named } = low;
  return conventions.find((one) => named + octaveShifts[one] === 60);
}
