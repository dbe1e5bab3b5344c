import type { Proposal } from '../proposal';
import type { Column } from '../values/column';

const keyTargets: ReadonlySet<string> = new Set(['lokey', 'hikey', 'key', 'key_range', 'pitch_keycenter']);
const velocities: ReadonlySet<string> = new Set(['lovel', 'hivel', 'velocity_range', 'dynamics']);
/** A name that says less tells no keys, and from the second weight on it tells velocities (our choice). */
const [leastWeight, surely] = [0.5, 0.6];

/** What is known of keys and velocities by the likeliest meaning of each place. */
export interface KnownPlaces {
  keys: readonly Proposal[];
  velocities: ReadonlySet<Column>;
  /** Rows that play the same keys by places other than this one, as the numbers of the rows; `undefined` where none gives keys. */
  setsWithout: (column: Column) => KeySets | undefined;
}

type KeySets = readonly (readonly number[])[];

/** What proposals tell of keys and velocities, for so many rows. */
export function knownPlaces(proposals: readonly Proposal[], count: number): KnownPlaces {
  const best = new Map<Column, Proposal>();
  for (const one of proposals) {
    const before = best.get(one.column);
    if (!before || one.meaning.weight > before.meaning.weight) best.set(one.column, one);
  }
  const all = [...best.values()];
  const ofVelocities = all.filter(
    ({ meaning }) => velocities.has(meaning.target) && meaning.weight >= surely,
  );
  const keys = all.filter(({ meaning }) => keyTargets.has(meaning.target) && meaning.weight >= leastWeight);
  let whole: { sets: KeySets | undefined } | undefined;
  return {
    keys,
    velocities: new Set(ofVelocities.map(({ column }) => column)),
    setsWithout: (column) => {
      const others = keys.filter((one) => one.column !== column);
      if (others.length < keys.length) return keySets(others, count);
      whole ??= { sets: keySets(keys, count) };
      return whole.sets;
    },
  };
}

/** Whether a place other than this one is known to hold velocities. */
export function giveVelocities({ velocities }: KnownPlaces, without: Column): boolean {
  return velocities.size > (velocities.has(without) ? 1 : 0);
}

function keySets(keys: readonly Proposal[], count: number): KeySets | undefined {
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
