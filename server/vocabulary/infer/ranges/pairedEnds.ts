import type { Assigned } from '../assign';
import type { Column } from '../values/column';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import type { Rows } from '../values/rows';
import { isBare } from '../words/meanings';
import { rowKeyNumber } from './rowKeys';

/**
 * Two places of one element that are named like low ends, as `under` and `over`, where the second one is never below the first and
 * the next range starts right above it: they are the low and the high key.
 */
export function withPairedEnds(all: readonly Assigned[]): Assigned[] {
  const has = (target: string) => all.some((one) => one.target === target);
  const low = all.find(({ target, part }) => target === 'lokey' && part === undefined);
  const other = all.find(
    ({ target, column, part }) =>
      target === 'lovel' && part === undefined && column.level === low?.column.level,
  );
  if (!low || !other || has('hikey') || has('hivel')) return [...all];
  const lows = low.texts.map(rowKeyNumber);
  const highs = other.texts.map(rowKeyNumber);
  const isAbove = highs.every((high, row) => high !== undefined && high >= (lows[row] ?? 128));
  const starts = new Set(lows);
  const follow = highs.filter((high) => high !== undefined && starts.has(high + 1)).length;
  if (!isAbove || starts.size < 3 || follow * 2 < starts.size) return [...all];
  const evidence = 'Its values lie above the low keys, and the next range starts right above each.';
  return all.map((one) =>
    one === other ? { ...one, target: 'hikey', weight: 0.72, evidence, others: ['lovel'] } : one,
  );
}

/** Adds the start of loops: the one place of whole numbers beside their ends that no name explains, where no number lies above its end. */
export function withLoopStarts(rows: Rows, all: readonly Assigned[]): Assigned[] {
  const end = all.find(({ target, part }) => target === 'loop_end' && part === undefined);
  if (!end || end.column.around.length === 0) return [...all];
  if (all.some(({ target }) => target === 'loop_start' || target === 'loop_length')) return [...all];
  const isBeside = (column: Column) =>
    column !== end.column &&
    column.level === end.column.level &&
    column.around.join() === end.column.around.join() &&
    !column.listed &&
    !all.some((one) => one.column === column);
  const found = rows.columns.filter(isBeside).flatMap((column) => {
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    const isBelow = [...end.facts.numbers].every(
      (number, row) => Number.isNaN(number) || facts.numbers[row] < number,
    );
    return isBelow && facts.filled > 0 && facts.numeric === facts.filled && facts.unit === end.facts.unit
      ? [{ column, texts, facts }]
      : [];
  });
  if (found.length !== 1) return [...all];
  const evidence = 'It stands beside the end of the loop, and no number lies above that.';
  return [...all, { ...end, ...found[0], target: 'loop_start', weight: 0.72, evidence, others: [] }];
}

/** Ends of loops of which many lie below the starts are no ends but lengths, where no name of their own says that they are ends. */
export function withLoopLengths(all: readonly Assigned[]): Assigned[] {
  const start = all.find(({ target }) => target === 'loop_start');
  const isEnd = ({ target, part, column }: Assigned) =>
    target === 'loop_end' && (part === undefined ? isBare(column.own) : column === start?.column);
  const end = all.find(isEnd);
  if (!start || !end || (start.part === undefined) !== (end.part === undefined)) return [...all];
  let [both, below] = [0, 0];
  for (const [row, number] of end.facts.numbers.entries()) {
    const from = start.facts.numbers[row];
    if (Number.isNaN(number) || Number.isNaN(from) || number <= 0) continue;
    both++;
    if (number < from) below++;
  }
  if (below * 3 < both || below === 0) return [...all];
  const evidence = 'Numbers lie below the starts of the loops, as no end does.';
  return all.map((one) =>
    one === end ? { ...one, target: 'loop_length', weight: 0.72, evidence, others: ['loop_end'] } : one,
  );
}
