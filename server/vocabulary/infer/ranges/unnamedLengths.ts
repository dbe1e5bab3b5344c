import type { Assigned } from '../assign';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import type { Rows } from '../values/rows';

/** No loop is shorter, in frames (our choice). */
const shortest = 16;

/**
 * Adds the length of loops whatever it is called: the only other place of whole numbers in the element of a loop's start, where some
 * lie below the start, so that they cannot be its end.
 */
export function withUnnamedLengths(rows: Rows, all: readonly Assigned[]): Assigned[] {
  const start = all.find(({ target, part }) => target === 'loop_start' && part === undefined);
  if (!start || all.some(({ target }) => target === 'loop_end' || target === 'loop_length')) return [...all];
  const { column } = start;
  // Beside the loop's start alone, in an element of its own, stands nothing of the region.
  if (column.around.length === 0) return [...all];
  const beside = rows.columns.filter(
    (one) =>
      one !== column &&
      one.level === column.level &&
      one.around.join() === column.around.join() &&
      !all.some((other) => other.column === one),
  );
  const found = beside.flatMap((one) => {
    const texts = textsOf(one);
    const facts = columnFactsOf(texts);
    const areFrames =
      facts.filled > 0 && facts.whole === facts.filled && facts.least >= shortest && facts.unit === undefined;
    return areFrames ? [{ column: one, texts, facts }] : [];
  });
  const [only] = found;
  if (!only || found.length > 1) return [...all];
  const isBelow = only.facts.numbers.some((number, row) => number < (start.facts.numbers[row] ?? 0));
  if (!isBelow) return [...all];
  const evidence = 'It stands beside the start of the loop, and some of its numbers lie below that.';
  return [
    ...all,
    { ...start, ...only, target: 'loop_length', weight: 0.72, evidence, others: ['loop_crossfade'] },
  ];
}
