import { findKeyGaps } from '../model/gaps';
import type { Instrument } from '../model/instrument';
import { Parameter } from '../model/parameterNames';
import { InForce } from './inForce';
import { playedKeysOf, rangeEndFix, rangeEndPlace } from './playedKeys';
import { keysText, regionTitle } from './regionText';
import type { Rule } from './rule';

/** Finds keys inside the played span that no region answers, keyswitches and scattered percussion aside. */
export const keyGap: Rule = {
  code: 'key-gap',
  severity: 'information',
  finds: 'Keys inside the played span that no region answers.',
  check(context, report) {
    const { instrument } = context;
    const rectangles = playedKeysOf(context);
    if (findKeyGaps(rectangles, new Set()).length === 0) return;
    for (const { lowKey, highKey, below, above } of findKeyGaps(rectangles, switchKeys(instrument))) {
      report({
        ...rangeEndPlace(instrument, below, Parameter.hikey),
        message: `Nothing answers ${keysText(lowKey, highKey)}, between ${regionTitle(instrument, below)} and ${regionTitle(instrument, above)}. Widen one of the two or add a region.`,
        related: [
          {
            ...rangeEndPlace(instrument, above, Parameter.lokey),
            message: `The next region, ${regionTitle(instrument, above)}, starts here.`,
          },
        ],
        fixes: () => {
          const ending = instrument.regions.filter((region) => instrument.highKey[region] === lowKey - 1);
          const starting = instrument.regions.filter((region) => instrument.lowKey[region] === highKey + 1);
          return [
            ...rangeEndFix(
              context,
              [...ending],
              Parameter.hikey,
              highKey,
              `Widen the zone below up to ${keysText(highKey, highKey)}`,
            ),
            ...rangeEndFix(
              context,
              [...starting],
              Parameter.lokey,
              lowKey,
              `Widen the zone above down to ${keysText(lowKey, lowKey)}`,
            ),
          ];
        },
      });
    }
  },
};

/** Keys that switch articulations. */
function switchKeys(instrument: Instrument): Set<number> {
  const keys = new Set<number>();
  const inForce = new InForce(instrument);
  const { names } = instrument;
  const number = (name: string) => names.canonical(names.idOf(name));
  const single = new Set(['sw_last', 'sw_down', 'sw_up', 'sw_previous', 'sw_default'].map(number));
  const ranges = [
    [number('sw_lokey'), number('sw_hikey')],
    [number('sw_lolast'), number('sw_hilast')],
  ] as const;
  for (let parameter = 0; parameter < instrument.parameters.count; parameter++) {
    const name = instrument.canonicalName(parameter);
    if (single.has(name)) keys.add(instrument.keyNumber(parameter));
    for (const [low, high] of ranges) {
      if (name !== low && name !== high) continue;
      const header = instrument.headerOfParameter(parameter);
      const first = inForce.effective(header, low);
      const last = inForce.effective(header, high);
      if (first < 0 || last < 0) continue;
      const end = Math.min(127, instrument.keyNumber(last));
      for (let key = Math.max(0, instrument.keyNumber(first)); key <= end; key++) keys.add(key);
    }
  }
  return keys;
}
