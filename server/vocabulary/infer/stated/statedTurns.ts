import type { Assigned } from '../assign';
import { saysSo } from '../saysSo';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import type { Rows } from '../values/rows';
import { mayNumberTakes } from '../values/unnamedTurns';

const numberWords: ReadonlySet<string> = new Set(
  'nr no num number n pos position order rang index nummer numero numer lp'.split(' '),
);
/** Nobody records so many takes of one note. */
const mostTurns = 64;

/** Adds the positions in round robins where the document says that recordings take turns: a small number of each region. */
export function withStatedTurns(
  rows: Rows,
  assigned: readonly Assigned[],
  text: string | undefined,
  chain: readonly string[],
): readonly Assigned[] {
  const isTold = assigned.some(({ target }) => target === 'seq_position' || target === 'lorand');
  const sample = assigned.find(({ target }) => target === 'sample');
  if (text === undefined || isTold || !sample) return assigned;
  for (const column of rows.columns) {
    if (!mayNumberTakes(column, chain) || column.listed || !column.own.every((word) => numberWords.has(word)))
      continue;
    if (assigned.some((one) => one.column === column)) continue;
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    if (facts.whole < facts.filled || facts.least < 1 || facts.greatest > mostTurns || facts.isCounting)
      continue;
    const position: Assigned = {
      ...sample,
      column,
      target: 'seq_position',
      weight: 0.85,
      unit: undefined,
      part: undefined,
      between: undefined,
      texts,
      facts,
      others: [],
      evidence: saysSo(text),
    };
    return [...assigned, position];
  }
  return assigned;
}
