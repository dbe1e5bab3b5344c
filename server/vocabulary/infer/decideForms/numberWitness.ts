import type { MiddleC } from '../../../model/keys';
import { conventions, octaveShifts } from '../../../trade/middleC';
import type { Assigned } from '../assign';
import { rowKey } from '../ranges/rowKeys';
import type { Column } from '../values/column';

/** A number in one row alone is no witness. */
const fewest = 2;

/** The convention by which a place of numbers gives the keys that another place names, and on how many different keys. */
export interface NumberWitness {
  middleC: MiddleC;
  count: number;
}

/** Finds a place of plain numbers that lie one and the same distance from the note names of another place, in all regions. */
export function numberPlaceWitness(
  keys: readonly Assigned[],
  columns: readonly Column[],
): NumberWitness | undefined {
  let best: NumberWitness | undefined;
  const named = keys.filter(({ facts }) => facts.notes > 0);
  for (const { cells } of columns) {
    for (const { texts } of named) {
      const found = distance(cells, texts);
      if (found && found.count > (best?.count ?? fewest - 1)) best = found;
    }
  }
  return best;
}

function distance(cells: Column['cells'], texts: Assigned['texts']): NumberWitness | undefined {
  let between: number | undefined;
  const seen = new Set<number>();
  for (const [row, cell] of cells.entries()) {
    const text = cell?.text.trim();
    if (text === undefined || text === '') continue;
    if (!/^\d{1,3}$/.test(text)) return undefined;
    const key = rowKey(texts[row]);
    if (key?.named === undefined || key.number !== undefined) continue;
    between ??= Number(text) - key.named;
    if (Number(text) - key.named !== between) return undefined;
    seen.add(key.named);
  }
  const middleC = conventions.find((one) => octaveShifts[one] === between);
  return middleC && { middleC, count: seen.size };
}
