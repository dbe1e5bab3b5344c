import { velocitiesOfLayer } from '../../../trade/layerVelocities';
import type { Draft, Settled } from '../draft';
import type { RegionElement } from '../elements/regionElement';
import { dynamicOfName } from '../elements/sidedFiles';
import type { Rows } from '../values/rows';

/**
 * The velocities that regions of each name have, where they are called after dynamics and no place gives velocities: shared out in
 * equal parts, the softest lowest. `undefined` where they are not.
 */
export function velocitiesByName(
  { chain, also, sides }: RegionElement,
  settled: readonly Settled[],
): Record<string, { lovel: string; hivel: string }> | undefined {
  const names = [chain.at(-1) as string, ...also];
  if (sides || names.length < 2 || settled.some(({ parameters }) => parameters.some(isVelocity)))
    return undefined;
  const order = names.map(dynamicOfName).sort((one, other) => one - other);
  if (order[0] < 0 || new Set(order).size < names.length) return undefined;
  return Object.fromEntries(
    names.map((name) => {
      const { low, high } = velocitiesOfLayer(order.indexOf(dynamicOfName(name)), order.length);
      return [name, { lovel: String(low), hivel: String(high) }];
    }),
  );
}

function isVelocity({ parameter }: { parameter: string }): boolean {
  return /vel$/.test(parameter);
}

/** The decision that velocities are shared out among elements by their names. */
export function namedLayerDrafts(region: RegionElement, settled: readonly Settled[], rows: Rows): Draft[] {
  const shared = velocitiesByName(region, settled);
  if (!shared) return [];
  const names = Object.entries(shared).map(
    ([name, { lovel, hivel }]) => `<${name}> from ${lovel} to ${hivel}`,
  );
  return [
    {
      id: 'region.layers',
      message: `The elements are layers by their names, and nothing says where one ends. The velocities were shared out evenly: ${names.join(', ')}. A key that lacks a layer is silent at its velocities.`,
      confidence: 0.6,
      isGuess: true,
      evidence: ['Their names say how loud each is.'],
      span: rows.tags.at(-1) ?? { start: region.example.start, end: region.example.end },
      isAbout: () => false,
      alternatives: [],
    },
  ];
}
