import { dynamicIn } from '../../../trade/dynamics';
import type { LayerEnds } from '../../../trade/layerLimits';
import { velocitiesOfLayer } from '../../../trade/layerVelocities';
import type { Proposal, SharedLayers } from '../proposal';
import type { Rows } from '../values/rows';
import type { KnownPlaces } from './keySets';
import { knownPlaces } from './keySets';

/** Shares velocities out among the dynamics that places name, the softest lowest. */
export function withSharedDynamics(rows: Rows, proposals: readonly Proposal[]): Proposal[] {
  if (!proposals.some(isOpen)) return [...proposals];
  const known = knownPlaces(proposals, rows.count);
  return proposals.map((one) => {
    if (!isOpen(one)) return one;
    const names = [...one.facts.tally.keys()];
    const order = [...new Set(names.map(dynamicIn))].sort((first, second) => first - second);
    const ends = new Map(
      names.map((name) => [name, velocitiesOfLayer(order.indexOf(dynamicIn(name)), order.length)]),
    );
    return { ...one, shared: sharedLayers(known, one, ends) };
  });
}

function isOpen({ meaning, layers, shared }: Proposal): boolean {
  return meaning.target === 'dynamics' && !layers && !shared;
}

/** Layers that are shared out, with whether some keys lack louder ones. */
export function sharedLayers(
  known: KnownPlaces,
  { column, texts }: Pick<Proposal, 'column' | 'texts'>,
  ends: ReadonlyMap<string, LayerEnds>,
): SharedLayers {
  const lows = [...new Set([...ends.values()].map(({ low }) => low))];
  const sets = (known.setsWithout(column) ?? []).map(
    (set) => new Set(set.map((row) => ends.get(texts[row] ?? '')?.low)),
  );
  const areSome = sets.some((set) => lows.some((low) => !set.has(low)));
  return { ends, areOpen: areSome && sets.every((set) => set.has(Math.min(...lows))) };
}
