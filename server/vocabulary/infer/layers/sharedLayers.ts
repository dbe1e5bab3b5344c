import { dynamicIn } from '../../../trade/dynamics';
import type { LayerEnds } from '../../../trade/layerLimits';
import { velocitiesOfLayer } from '../../../trade/layerVelocities';
import type { Proposal, SharedLayers } from '../proposal';
import type { Rows } from '../values/rows';
import { keySets } from './keySets';

/** Shares velocities out among the dynamics that places name, the softest lowest. */
export function withSharedDynamics(rows: Rows, proposals: readonly Proposal[]): Proposal[] {
  return proposals.map((one) => {
    if (one.meaning.target !== 'dynamics' || one.layers || one.shared) return one;
    const names = [...one.facts.tally.keys()];
    const order = [...new Set(names.map(dynamicIn))].sort((first, second) => first - second);
    const ends = new Map(
      names.map((name) => [name, velocitiesOfLayer(order.indexOf(dynamicIn(name)), order.length)]),
    );
    return { ...one, shared: sharedLayers(rows, proposals, one, ends) };
  });
}

/** Layers that are shared out, with whether some keys lack louder ones. */
export function sharedLayers(
  rows: Rows,
  proposals: readonly Proposal[],
  { column, texts }: Pick<Proposal, 'column' | 'texts'>,
  ends: ReadonlyMap<string, LayerEnds>,
): SharedLayers {
  const lows = [...new Set([...ends.values()].map(({ low }) => low))];
  const sets = (keySets(proposals, column, rows.count) ?? []).map(
    (set) => new Set(set.map((row) => ends.get(texts[row] ?? '')?.low)),
  );
  const areSome = sets.some((set) => lows.some((low) => !set.has(low)));
  return { ends, areOpen: areSome && sets.every((set) => set.has(Math.min(...lows))) };
}
