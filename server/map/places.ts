import type { Instrument } from '../model/instrument';
import { conditionsOf } from '../model/overlaps/conditions';
import { findKeyGapsBeside, findVelocityGaps, playedRectangles } from '../model/overlaps/gaps';
import { unmeantOverlaps } from '../model/overlaps/unmeantOverlaps';
import type { MapGap, MapOverlap } from './mapScene';

/** The gaps of an instrument, as the checks find them: keys first, then velocities; switching keys are none. */
export function gapsOf(instrument: Instrument, switching: ReadonlySet<number>): MapGap[] {
  const rectangles = playedRectangles(instrument, conditionsOf(instrument));
  const gaps: MapGap[] = findKeyGapsBeside(switching, rectangles).map(({ lowKey, highKey }) => ({
    kind: 'key',
    lowKey,
    highKey,
    lowVelocity: 1,
    highVelocity: 127,
  }));
  for (const { lowKey, highKey, lowVelocity, highVelocity } of findVelocityGaps(rectangles)) {
    gaps.push({ kind: 'velocity', lowKey, highKey, lowVelocity, highVelocity });
  }
  return gaps;
}

/** The overlaps of an instrument, as the checks find them; a place that several pairs of regions share is given once. */
export function overlapsOf(instrument: Instrument, layerOf: (region: number) => number): MapOverlap[] {
  const places = new Map<string, MapOverlap>();
  for (const { region, shared } of unmeantOverlaps(instrument).flat()) {
    const { lowKey, highKey, highVelocity } = shared;
    const lowVelocity = Math.max(1, shared.lowVelocity);
    if (highVelocity < lowVelocity) continue;
    const overlap = { layer: layerOf(region), lowKey, highKey, lowVelocity, highVelocity };
    places.set(Object.values(overlap).join(), overlap);
  }
  return [...places.values()];
}
