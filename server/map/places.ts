import { conditionsOf } from '../model/conditions';
import { findKeyGaps, findVelocityGaps, playedRectangles } from '../model/gaps';
import type { Instrument } from '../model/instrument';
import { findGroupOverlaps, findOverlaps } from '../model/overlaps';
import type { MapGap, MapKeyswitch, MapOverlap } from './scene';

/** The gaps of an instrument, as the checks find them: keys first, then velocities. */
export function gapsOf(instrument: Instrument, keyswitches: readonly MapKeyswitch[]): MapGap[] {
  const rectangles = playedRectangles(instrument, conditionsOf(instrument));
  const taken = new Set(keyswitches.map(({ key }) => key));
  const gaps: MapGap[] = findKeyGaps(rectangles, taken).map(({ lowKey, highKey }) => ({
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
  const conditions = conditionsOf(instrument);
  const places = new Map<string, MapOverlap>();
  for (const find of [findOverlaps, findGroupOverlaps]) {
    for (const { region, shared } of find(instrument, conditions)) {
      const { lowKey, highKey, highVelocity } = shared;
      const lowVelocity = Math.max(1, shared.lowVelocity);
      if (highVelocity < lowVelocity) continue;
      const overlap = { layer: layerOf(region), lowKey, highKey, lowVelocity, highVelocity };
      places.set(Object.values(overlap).join(), overlap);
    }
  }
  return [...places.values()];
}
