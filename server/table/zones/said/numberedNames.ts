import { partsWithNumbers } from '../../../trade/names/nameNumbers';

/** Without a word of the text so many zones have to agree (our choice). */
const fewest = 3;

/**
 * The roots that numbers in the names of samples give, by zone: those at one place in all names, last or first, that lie within the keys of
 * all zones and are others for other keys: `Lead_36.wav` on 24 to 40. Where the text says that a number is the root, the last one need not
 * lie there.
 */
export function rootsByNumbers(
  names: ReadonlyMap<number, string>,
  keysOf: (zone: number) => string,
  fits: (zone: number, root: number) => boolean,
  isSaid: boolean,
): ReadonlyMap<number, number> | undefined {
  for (const place of [-1, 0]) {
    const roots = new Map<number, number>();
    for (const [zone, name] of names) {
      const root = partsWithNumbers(name).at(place);
      if (root === undefined || !(isSaid || fits(zone, root))) break;
      roots.set(zone, root);
    }
    if (roots.size < names.size || roots.size < (isSaid ? 1 : fewest)) continue;
    const keys = new Set([...roots.keys()].map(keysOf));
    if (isSaid || (keys.size > 1 && new Set(roots.values()).size >= keys.size)) return roots;
  }
  return undefined;
}
