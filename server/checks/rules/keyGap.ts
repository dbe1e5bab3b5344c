import { conditionsOf } from '../../model/overlaps/conditions';
import { findLikelyKeyGaps } from '../../model/overlaps/likelyGaps';
import { findSwitchingKeys } from '../../model/overlaps/switchingKeys';
import { Parameter } from '../../model/parameterNames';
import { keysText } from '../../model/wording/rangeWords';
import { ofKind } from '../facts/parameters/parameterFixes';
import { playedKeysOf, rangeEndFix, rangeEndPlace } from '../facts/playedKeys';
import { regionTitle } from '../facts/regionText';
import type { Rule } from '../rule';

/** Finds keys inside the played span that no region answers, keyswitches, percussion and keys of noises aside. */
export const keyGap: Rule = {
  code: 'key-gap',
  severity: 'information',
  finds: 'Keys between played keys that no region plays on.',
  check(context, report) {
    const { instrument } = context;
    for (const { lowKey, highKey, below, above } of findLikelyKeyGaps(
      instrument,
      conditionsOf(instrument),
      findSwitchingKeys(instrument).taken,
      playedKeysOf(context),
    )) {
      report({
        ...rangeEndPlace(instrument, below, Parameter.hikey),
        message: `No region plays on ${keysText(lowKey, highKey)}, between ${regionTitle(instrument, below)} and ${regionTitle(instrument, above)}. Widen one of these two or add a region, unless the keys are free on purpose.`,
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
