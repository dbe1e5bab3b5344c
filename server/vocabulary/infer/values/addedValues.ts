import type { Assigned } from '../assign';
import type { InferredTarget } from '../words/meaningRules';
import { standsInDefaults } from './defaultElements';

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
 * they add to it; so they do where the document says it. Each with the parameter that does so.
 */
export function addedValues(
  assigned: readonly Assigned[],
  statedOf: (one: Assigned) => 'adds' | 'replaces' | undefined = () => undefined,
): ReadonlyMap<Assigned, string> {
  const added = new Map<Assigned, string>();
  const taken = new Set<string>();
  const inwards = [...assigned].sort((one, other) => other.column.level - one.column.level);
  const isRegionLevel = Math.max(0, ...assigned.map(({ column }) => column.level));
  for (const one of inwards) {
    const parameter = addedTo[one.target];
    if (parameter === undefined || (one.column.level === isRegionLevel && !one.column.listed)) continue;
    const inner = assigned.filter((other) => isWithin(other, one) && !added.has(other));
    const isVoid = one.column.cells.every(
      (cell, row) => cell === undefined || inner.some(({ column }) => column.cells[row] !== undefined),
    );
    const stated = statedOf(one);
    const isInItself = one.column.repeats === true && stated === 'adds';
    if ((inner.length === 0 && !isInItself) || stated === 'replaces') continue;
    if (stated !== 'adds' && standsInDefaults(one.column)) continue;
    if (!isVoid && stated !== 'adds' && !isCloserAdded(one, inner)) continue;
    const headers = one.column.level === 0 ? ['global'] : ['group', 'master'];
    const name = headers.map((header) => `${header}_${parameter}`).find((free) => !taken.has(free));
    if (name === undefined) continue;
    taken.add(name);
    added.set(one, name);
  }
  return added;
}

/**
 * Whether most regions in an outer element have a value of their own, and these lie closer together where its value is added to
 * theirs than where theirs take its place: a default is the value of most, and near to those that differ from it.
 */
function isCloserAdded(one: Assigned, inner: readonly Assigned[]): boolean {
  let [filled, rows] = [0, 0];
  const groups = new Map<number, { added: number[]; replaced: number[] }>();
  for (const [row, cell] of one.column.cells.entries()) {
    const outer = one.facts.numbers[row];
    if (!cell || !Number.isFinite(outer)) continue;
    const nearest = inner.find(({ column }) => column.cells[row] !== undefined);
    const own = nearest?.facts.numbers[row];
    let group = groups.get(cell.start);
    if (!group) {
      group = { added: [], replaced: [] };
      groups.set(cell.start, group);
    }
    if (own !== undefined) filled++;
    rows++;
    group.added.push(outer + (own ?? 0));
    group.replaced.push(own ?? outer);
  }
  const spreadOf = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
  let [added, replaced] = [0, 0];
  for (const group of groups.values()) {
    added += spreadOf(group.added);
    replaced += spreadOf(group.replaced);
  }
  return added < replaced && filled * 2 > rows;
}

/** Whether a value of the same kind stands further in, or beside the name of the entry of a list that has the other one. */
function isWithin(other: Assigned, one: Assigned): boolean {
  const [inner, outer] = [other.column, one.column];
  if (kindOf(other) !== kindOf(one)) return false;
  return inner.level > outer.level || (inner.level === outer.level && !inner.listed && !!outer.listed);
}

function kindOf({ target }: Assigned): InferredTarget {
  return sayTheSame[target] ?? target;
}

/** Whether some regions inside an outer element have a level or tuning of their own beside its. */
export function isOverridden(
  one: Assigned,
  assigned: readonly Assigned[],
  added: ReadonlyMap<Assigned, string>,
): boolean {
  if (addedTo[one.target] === undefined || added.has(one)) return false;
  if (one.column.repeats) return true;
  return assigned.some(
    (other) =>
      isWithin(other, one) &&
      other.column.cells.some((cell, row) => cell !== undefined && one.column.cells[row] !== undefined),
  );
}
