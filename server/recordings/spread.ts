import { spreadKeys } from '../trade/keySpread';
import type { Placed } from './placed';
import { grouped } from './placed';

/** Spreads the roots of each group and layer over the keys; a recording that stands for all layers has its share in each. */
export function spread(placed: readonly Placed[]): void {
  for (const section of grouped(placed, (one) => one.section).values()) {
    const layers = grouped(
      section.filter(({ isForAllLayers }) => !isForAllLayers),
      ({ layer }) => layer ?? '',
    );
    const forAll = section.filter(({ isForAllLayers }) => isForAllLayers);
    for (const members of layers.values()) spreadOver(members, [...members, ...forAll]);
    spreadOver(forAll, section);
  }
}

function spreadOver(members: readonly Placed[], among: readonly Placed[]): void {
  const keys = spreadKeys(among.map(({ root }) => root));
  for (const one of members) {
    const range = keys.get(one.root);
    one.lowKey = range?.low ?? one.root;
    one.highKey = range?.high ?? one.root;
    if (one.lowKey !== one.highKey) one.because.push('It plays the keys nearest to its root.');
  }
}
