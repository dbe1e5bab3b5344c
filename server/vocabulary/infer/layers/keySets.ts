import type { Proposal } from '../proposal';
import type { Column } from '../values/column';

const keyTargets: ReadonlySet<string> = new Set(['lokey', 'hikey', 'key', 'key_range', 'pitch_keycenter']);
/** A name that says less tells no keys. */
const leastWeight = 0.5;

const velocities: ReadonlySet<string> = new Set(['lovel', 'hivel', 'velocity_range', 'dynamics']);
/** From there on a name tells velocities (our choice). */
const surely = 0.6;

/** Whether a place is known to hold velocities. */
export function giveVelocities(proposals: readonly Proposal[], without?: Column): boolean {
  return [...likeliest(proposals).values()].some(
    ({ column, meaning }) => column !== without && velocities.has(meaning.target) && meaning.weight >= surely,
  );
}

/** Rows that play the same keys, as the numbers of the rows. */
export function keySets(
  proposals: readonly Proposal[],
  without: Column,
  count: number,
): readonly (readonly number[])[] | undefined {
  const keys = [...likeliest(proposals).values()].filter(
    ({ column, meaning }) =>
      column !== without && keyTargets.has(meaning.target) && meaning.weight >= leastWeight,
  );
  if (keys.length === 0) return undefined;
  const sets = new Map<string, number[]>();
  for (let row = 0; row < count; row++) {
    const id = keys.map(({ texts }) => texts[row]?.trim() ?? '').join('|');
    const set = sets.get(id);
    if (set) set.push(row);
    else sets.set(id, [row]);
  }
  return [...sets.values()];
}

/** The likeliest proposal for each place. */
function likeliest(proposals: readonly Proposal[]): ReadonlyMap<Column, Proposal> {
  const best = new Map<Column, Proposal>();
  for (const one of proposals) {
    const before = best.get(one.column);
    if (!before || one.meaning.weight > before.meaning.weight) best.set(one.column, one);
  }
  return best;
}
