import { findVelocityGaps } from '../model/gaps';
import { Parameter } from '../model/parameterNames';
import { playedKeysOf, rangeEndPlace } from './playedKeys';
import { keysText, velocitiesText } from './regionText';
import type { Rule } from './rule';

/** Finds velocities on played keys that no region answers. */
export const velocityGap: Rule = {
  code: 'velocity-gap',
  severity: 'information',
  finds: 'Velocities on a played key that no region answers.',
  check(context, report) {
    const { instrument } = context;
    for (const gap of findVelocityGaps(playedKeysOf(context))) {
      report({
        ...rangeEndPlace(instrument, gap.region, gap.isBelow ? Parameter.hivel : Parameter.lovel),
        message: `Nothing answers ${velocitiesText(gap.lowVelocity, gap.highVelocity)} on ${keysText(gap.lowKey, gap.highKey)}. Widen a velocity range or add a region.`,
      });
    }
  },
};
