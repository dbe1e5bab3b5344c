import { findVelocityGaps } from '../../model/overlaps/gaps';
import { Parameter } from '../../model/parameterNames';
import { keysText, velocitiesText } from '../../model/wording/rangeWords';
import { ofKind } from '../facts/parameters/parameterFixes';
import { playedKeysOf, rangeEndFix, rangeEndPlace } from '../facts/playedKeys';
import type { Rule } from '../rule';

/** Finds velocities on played keys that no region answers. */
export const velocityGap: Rule = {
  code: 'velocity-gap',
  severity: 'information',
  finds: 'Velocities on a played key that no region plays on.',
  check(context, report) {
    const { instrument } = context;
    for (const gap of findVelocityGaps(playedKeysOf(context))) {
      report({
        ...rangeEndPlace(instrument, gap.region, gap.isBelow ? Parameter.hivel : Parameter.lovel),
        message: `No region plays ${velocitiesText(gap.lowVelocity, gap.highVelocity)} on ${keysText(gap.lowKey, gap.highKey)}. Widen a velocity range or add a region.`,
        fixes: () => {
          const onKeys = [...instrument.regions].filter(
            (region) => instrument.lowKey[region] <= gap.highKey && instrument.highKey[region] >= gap.lowKey,
          );
          const below = onKeys.filter((region) => instrument.highVelocity[region] === gap.lowVelocity - 1);
          const above = onKeys.filter((region) => instrument.lowVelocity[region] === gap.highVelocity + 1);
          return [
            ...ofKind(
              'Widen the layers below',
              rangeEndFix(
                context,
                below,
                'hivel',
                gap.highVelocity,
                `Widen the layer below up to velocity ${gap.highVelocity}`,
              ),
            ),
            ...ofKind(
              'Widen the layers above',
              rangeEndFix(
                context,
                above,
                'lovel',
                gap.lowVelocity,
                `Widen the layer above down to velocity ${gap.lowVelocity}`,
              ),
            ),
          ];
        },
      });
    }
  },
};
