import { readNumberText } from '../../forms/numberText';
import { holdsNumbers } from './besideColumns';
import { statedUnit } from './besideUnits';
import type { Column } from './column';
import { isUnitName } from './unitNames';

/** What a place around regions states of the values of another one. */
interface Stated {
  unit?: string;
  range?: { low: number; high: number };
}

/**
 * Places with the unit or the range that one around them states in its name and value, as `level-unit="percent"` and
 * `place-unit="-1..1"` for `level` and `place`; what states it is no value of a region.
 */
export function withOuterUnits(columns: readonly Column[]): readonly Column[] {
  const read = new Map<Column, Column>();
  const used = new Set<Column>();
  const region = Math.max(...columns.map(({ level }) => level));
  for (const outer of columns) {
    if (outer.level > 1 && outer.level === region) continue;
    const name = measuredBy(outer);
    const said = name === undefined ? undefined : statedOf(outer);
    if (!said) continue;
    for (const column of columns) {
      const isNamed = column !== outer && column.level >= outer.level && column.own.join(' ') === name;
      if (!isNamed || column.unit !== undefined || !holdsNumbers(column)) continue;
      if (said.range && !liesIn(column, said.range)) continue;
      read.set(column, { ...column, ...said });
      used.add(outer);
    }
  }
  if (used.size === 0) return columns;
  return columns.flatMap((column) => (used.has(column) ? [] : [read.get(column) ?? column]));
}

/** The name of the places that one gives the unit of: `level` for `level-unit` and `unit-of-level`. */
function measuredBy({ own, around }: Column): string | undefined {
  const isTold = own.some((word) => isUnitName([word]));
  const words = [...(isTold ? [] : (around.at(-1) ?? [])), ...own].filter((word) => !smallWords.has(word));
  const rest = words.filter((word) => !isUnitName([word]));
  return rest.length === 0 || rest.length === words.length ? undefined : rest.join(' ');
}

const smallWords: ReadonlySet<string> = new Set('of in for de der des du di da do von van av'.split(' '));
const range = /^\s*([-+−]?\d+(?:[.,]\d+)?)\s*(?:\.{2,3}|…|:|;|to|bis|–|\/)\s*([-+−]?\d+(?:[.,]\d+)?)\s*$/u;

/** What the one value of a place states; `undefined` where regions differ in it. */
function statedOf({ cells }: Column): Stated | undefined {
  const [first] = cells;
  if (!first || cells.some((cell) => cell?.text !== first.text)) return undefined;
  const found = range.exec(first.text);
  if (found) {
    const [low, high] = [readNumberText(found[1])?.number, readNumberText(found[2])?.number];
    return low === undefined || high === undefined || low >= high ? undefined : { range: { low, high } };
  }
  const unit = statedUnit(first);
  return unit === undefined ? undefined : { unit };
}

function liesIn({ cells }: Column, { low, high }: { low: number; high: number }): boolean {
  return cells.every((cell) => {
    const number = cell ? (readNumberText(cell.text)?.number ?? Number.NaN) : low;
    return number >= low && number <= high;
  });
}
