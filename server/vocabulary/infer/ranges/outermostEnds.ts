import type { Assigned } from '../assign';
import type { Column } from '../values/column';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import type { Rows } from '../values/rows';
import { conceptsOf } from '../words/tradeWords';
import { rowKeyNumber } from './rowKeys';

const sides = [
  { given: 'hikey', missing: 'lokey', concepts: ['lo', 'first', 'start'] },
  { given: 'lokey', missing: 'hikey', concepts: ['hi', 'last', 'end'] },
] as const;
/** What else the name of such a key may say. */
const besides: ReadonlySet<string> = new Set(['key', 'midi', 'num', 'weak', 'range']);
const evidence =
  'Regions give the other end of their ranges alone, and this key lies outside of all of those.';

/**
 * Adds the key at which the outermost region starts or ends, where regions give one end of their ranges alone: one key of an element
 * around them that is named after the lowest or the highest, as in `lowest="36"`.
 */
export function withOutermostEnds(rows: Rows, all: readonly Assigned[]): Assigned[] {
  const has = (target: string) => all.some((one) => one.target === target);
  const added = sides.flatMap(({ given, missing, concepts }): Assigned[] => {
    const one = all.find(({ target, part }) => target === given && part === undefined);
    if (!one || has(missing) || has('key') || one.facts.tally.size < 2) return [];
    const keys = one.texts.map(rowKeyNumber);
    const isOutside = (key: number, row: number) => {
      const other = keys[row];
      return other === undefined || (given === 'hikey' ? key <= other : key >= other);
    };
    const found = rows.columns.find(
      (column) =>
        column.level < one.column.level &&
        column.around.length === 0 &&
        !column.listed &&
        isNamed(column, concepts) &&
        isKey(column, isOutside) &&
        !all.some((other) => other.column === column),
    );
    if (!found) return [];
    const texts = textsOf(found);
    return [
      {
        ...one,
        column: found,
        target: missing,
        texts,
        facts: columnFactsOf(texts),
        weight: 0.74,
        evidence,
        others: [],
      },
    ];
  });
  return [...all, ...added];
}

function isNamed({ own }: Column, concepts: readonly string[]): boolean {
  const said = own.map((word) => conceptsOf(word)?.concepts ?? []);
  const isEnd = (words: readonly string[]) => words.some((word) => concepts.includes(word));
  return (
    said.some(isEnd) &&
    said.every((words) => isEnd(words) || (words.length > 0 && words.every((word) => besides.has(word))))
  );
}

/** Whether a place gives one key everywhere that lies outside of the ranges. */
function isKey({ cells }: Column, isOutside: (key: number, row: number) => boolean): boolean {
  return cells.every((cell, row) => {
    const key = rowKeyNumber(cell?.text);
    return key !== undefined && key >= 0 && key <= 127 && isOutside(key, row);
  });
}
