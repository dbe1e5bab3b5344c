import type { Assigned } from '../assign';
import { columnFactsOf } from './columnFacts';
import { positionTargets } from './plausible';
import { hasDecimalsBehind, surelyMarked } from './thousands';

/**
 * Positions of one text have the same mark between thousands. One mark in each number is none where it stands before decimals in other
 * places, or where seconds are counted.
 */
export function withSharedMarks(all: readonly Assigned[]): Assigned[] {
  const isMarked = ({ target, facts }: Assigned) =>
    positionTargets.has(target) && facts.thousands !== undefined;
  const marked = all.find(isMarked);
  const mark = marked?.facts.thousands;
  if (!marked || mark === undefined) return [...all];
  const positions = all.filter(({ target }) => positionTargets.has(target));
  const isDecimal =
    !positions.some(({ texts }) => surelyMarked(texts, mark)) &&
    (isInSeconds(marked) || all.some((one) => !isMarked(one) && hasDecimalsBehind(one.texts, mark)));
  return all.map((one) => {
    if (!positions.includes(one)) return one;
    if (isDecimal) return { ...one, facts: columnFactsOf(one.texts, 'none') };
    return one.facts.thousands === undefined ? { ...one, facts: columnFactsOf(one.texts, mark) } : one;
  });
}

function isInSeconds({ unit, column }: Assigned): boolean {
  return unit === 's' || column.unit === 's';
}
