import type { Instrument } from '../model/instrument';
import { conditionsOf } from '../model/overlaps/conditions';
import { findVelocityGaps, playedRectangles } from '../model/overlaps/gaps';
import { findLikelyKeyGaps } from '../model/overlaps/likelyGaps';
import { sharedBy } from '../model/overlaps/overlaps';
import { unmeantOverlaps } from '../model/overlaps/unmeantOverlaps';
import type { Steps } from '../model/steps';
import { piecesInStep } from '../model/steps';
import type { MapGap, MapOverlap } from './mapScene';

/** The gaps of an instrument, as the checks find them: keys first, then velocities; switching keys are none. */
export function gapsOf(instrument: Instrument, switching: ReadonlySet<number>): MapGap[] {
  const conditions = conditionsOf(instrument);
  const rectangles = playedRectangles(instrument, conditions);
  const gaps: MapGap[] = findLikelyKeyGaps(instrument, conditions, switching, rectangles).map(
    ({ lowKey, highKey }) => ({ kind: 'key', lowKey, highKey, lowVelocity: 1, highVelocity: 127 }),
  );
  for (const { lowKey, highKey, lowVelocity, highVelocity } of findVelocityGaps(rectangles)) {
    gaps.push({ kind: 'velocity', lowKey, highKey, lowVelocity, highVelocity });
  }
  return gaps;
}

/**
 * The first overlaps of an instrument, as the checks find them, at most so many; a place that several pairs of regions share is
 * given once. Worked out in steps.
 */
export function* overlapsOf(
  instrument: Instrument,
  layerOf: (region: number) => number,
  most: number,
): Steps<MapOverlap[]> {
  const places = new Map<string, MapOverlap>();
  const found = (yield* unmeantOverlaps(instrument)).flat();
  for (const [at, one] of found.entries()) {
    if (at % piecesInStep === piecesInStep - 1) yield at / found.length;
    if (places.size >= most) break;
    const shared = sharedBy(instrument, one);
    const { lowKey, highKey, highVelocity } = shared;
    const lowVelocity = Math.max(1, shared.lowVelocity);
    if (highVelocity < lowVelocity) continue;
    const overlap = { layer: layerOf(one.region), lowKey, highKey, lowVelocity, highVelocity };
    places.set(Object.values(overlap).join(), overlap);
  }
  return [...places.values()];
}
