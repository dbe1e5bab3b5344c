import type { Assigned } from './assign';
import type { InferredTarget } from './words/meaningRules';

/** Parameters of the open SFZ format that add to those of the regions, by the header that they belong to. */
const addedTo: Readonly<Record<InferredTarget, string>> = {
  volume: 'volume',
  attenuation: 'volume',
  tune: 'tune',
  transpose: 'tune',
};
const sayTheSame: Readonly<Record<InferredTarget, InferredTarget>> = { attenuation: 'volume' };

/**
 * Levels and tunings of outer elements where every region inside has one of its own: inherited they would say nothing, so
 * they add to it. Each with the parameter that does so.
 */
export function addedValues(assigned: readonly Assigned[]): ReadonlyMap<Assigned, string> {
  const added = new Map<Assigned, string>();
  const taken = new Set<string>();
  const inwards = [...assigned].sort((one, other) => other.column.level - one.column.level);
  const isRegionLevel = Math.max(0, ...assigned.map(({ column }) => column.level));
  for (const one of inwards) {
    const parameter = addedTo[one.target];
    if (parameter === undefined || one.column.level === isRegionLevel) continue;
    const inner = assigned.filter(
      (other) => kindOf(other) === kindOf(one) && other.column.level > one.column.level && !added.has(other),
    );
    const isVoid = one.column.cells.every(
      (cell, row) => cell === undefined || inner.some(({ column }) => column.cells[row] !== undefined),
    );
    if (inner.length === 0 || !isVoid) continue;
    const headers = one.column.level === 0 ? ['global'] : ['group', 'master'];
    const name = headers.map((header) => `${header}_${parameter}`).find((free) => !taken.has(free));
    if (name === undefined) continue;
    taken.add(name);
    added.set(one, name);
  }
  return added;
}

function kindOf({ target }: Assigned): InferredTarget {
  return sayTheSame[target] ?? target;
}
