import { chanceWords } from '../../../trade/languages/chanceWords';
import { chanceIn, sharesOf } from '../../read/chances';
import type { Chances } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import type { RegionElement } from '../elements/regionElement';
import type { Column } from './column';
import { keyTargets, velocityTargets } from './plausible';
import type { Rows } from './rows';

/** The chances that regions give, and the place where they stand. */
export interface FoundChances {
  chances: Chances;
  column: Column;
  drafts: Draft[];
}

/**
 * Finds the place where regions say how likely they are among those of the same keys and velocities: it is named so, and the
 * numbers make up a whole, 1 or 100 percent.
 */
export function findChances(
  rows: Rows,
  assigned: readonly Assigned[],
  { chain, count }: RegionElement,
): FoundChances | undefined {
  const region = chain.length - 1;
  // Of regions that are looked at here and there the whole is not known.
  if (count !== rows.count && count > rows.count * 2) return undefined;
  const isShare = ({ target, part }: Assigned) =>
    /^(?:lorand|hirand)$/.test(target) || (target === 'rand_range' && part !== undefined);
  if (assigned.some(isShare)) return undefined;
  const alike = assigned.filter(
    ({ target }) =>
      keyTargets.has(target) ||
      velocityTargets.has(target) ||
      /^(?:velocity_range|dynamics|trigger)$/.test(target),
  );
  for (const column of rows.columns) {
    if (column.level !== region || column.listed || column.repeats || /[[\]]/.test(column.at)) continue;
    if (!column.own.some((word) => chanceWords.has(word)) || column.at.split('/').length > 3) continue;
    const numbers = column.cells.map((cell) => (cell ? chanceIn(cell.text) : undefined));
    const given = numbers.filter((number) => number !== undefined);
    const isPercent = column.cells.some((cell) => cell?.text.includes('%')) || given.some((one) => one > 1);
    const whole = isPercent ? 100 : 1;
    const sets = new Map<string, number[]>();
    for (const [row, number] of numbers.entries()) {
      if (number === undefined) continue;
      const id = alike.map(({ texts }) => texts[row] ?? '').join('|');
      sets.set(id, [...(sets.get(id) ?? []), number]);
    }
    const areWhole = [...sets.values()].every((set) => sharesOf(set, whole) !== undefined);
    if (given.length === 0 || !areWhole) continue;
    return {
      chances: { element: chain[region], at: column.at, whole },
      column,
      drafts: [draftOf(column, chain[region], whole)],
    };
  }
  return undefined;
}

function draftOf(column: Column, element: string, whole: number): Draft {
  return {
    id: `${element}.chances`,
    message: `"${column.at.replace(/^@/, '')}" of <${element}> is the chance of a region among those of the same keys and velocities, of ${whole === 100 ? '100 percent' : '1'} in all.`,
    confidence: 0.85,
    isGuess: true,
    evidence: ['Its name says so, and the chances of alternatives make up the whole.'],
    span: column.cells.find((cell) => cell) ?? { start: 0, end: 0 },
    isAbout: () => false,
    alternatives: [],
  };
}
