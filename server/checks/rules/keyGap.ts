import { findKeyGapsBeside } from '../../model/overlaps/gaps';
import { findSwitchingKeys } from '../../model/overlaps/switchingKeys';
import { Parameter } from '../../model/parameterNames';
import { keysText } from '../../model/wording/rangeWords';
import { ofKind } from '../facts/parameters/parameterFixes';
import { playedKeysOf, rangeEndFix, rangeEndPlace } from '../facts/playedKeys';
import { regionTitle } from '../facts/regionText';
import type { Rule } from '../rule';

/** Finds keys inside the played span that no region answers, keyswitches and scattered percussion aside. */
export const keyGap: Rule = {
  code: 'key-gap',
  severity: 'information',
  finds: 'Keys between played keys that no region plays on.',
  check(context, report) {
    const { instrument } = context;
    const rectangles = playedKeysOf(context);
    for (const { lowKey, highKey, below, above } of findKeyGapsBeside(
      findSwitchingKeys(instrument).taken,
      rectangles,
    )) {
      report({
        ...rangeEndPlace(instrument, below, Parameter.hikey),
        message: `No region plays on ${keysText(lowKey, highKey)}, between ${regionTitle(instrument, below)} and ${regionTitle(instrument, above)}. Widen one of these two or add a region.`,
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
            ...ofKind(
              'Widen the zones below',
              rangeEndFix(
                context,
                [...ending],
                'hikey',
                highKey,
                `Widen the zone below up to ${keysText(highKey, highKey)}`,
              ),
            ),
            ...ofKind(
              'Widen the zones above',
              rangeEndFix(
                context,
                [...starting],
                'lokey',
                lowKey,
                `Widen the zone above down to ${keysText(lowKey, lowKey)}`,
              ),
            ),
          ];
        },
      });
    }
  },
};
