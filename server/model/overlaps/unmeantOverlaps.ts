import type { Instrument } from '../instrument';
import type { Steps } from '../steps';
import { piecesInStep } from '../steps';
import type { Conditions } from './conditions';
import { conditionsInSteps } from './conditions';
import { findGroupOverlaps } from './groupOverlaps';
import { notLaidOver } from './laidOver';
import type { RegionOverlap } from './overlaps';
import { findOverlaps } from './overlaps';
import type { Rectangle } from './rectangles';
import { rectangleCode, rectangleOf } from './rectangles';
import { withinOneSound } from './withinOneSound';

/** From this many on, the overlaps of one region are told as one. */
const manyPartners = 3;
/** From this many on, overlaps can come from a second layer that is meant. */
const fewestForLayer = 4;
/** What is covered so many times on average is covered by two layers, some places left out. */
const twice = 1.75;

/**
 * The overlaps of regions of one layer that nobody is likely to have meant. Regions are of one layer when they stand under
 * the same header and the same switches, triggers, groups, outputs and crossfades govern them, or under groups that
 * divide the keys or velocities as neighbours do; see `findOverlaps` and `findGroupOverlaps`. Regions with equal keys and
 * velocities are stacked on purpose, and so are sounds laid over one another; see `withinOneSound` and `notLaidOver`. Where there are several overlaps and the regions under a header cover their keys and
 * velocities about twice, they are two layers written under one header, and none of their overlaps is given.
 * Each list holds one overlap, or all those with one region where many others overlap it. Worked out in steps.
 */
export function* unmeantOverlaps(instrument: Instrument): Steps<RegionOverlap[][]> {
  const conditions = yield* conditionsInSteps(instrument);
  const found = yield* findOverlaps(instrument, conditions);
  found.push(...(yield* findGroupOverlaps(instrument, conditions)));
  const slips = yield* notLaidOver(instrument, conditions, yield* withinOneSound(instrument, found));
  const overlaps = yield* foldByPartner(slips);
  const layered = yield* scopesWithTwoLayers(instrument, conditions, overlaps);
  return overlaps.filter(([first]) => first && !layered.has(scopeOf(instrument, conditions, first.region)));
}

/** Overlaps by finding: one each, or all those with one region where many others overlap it. */
function* foldByPartner(overlaps: readonly RegionOverlap[]): Steps<RegionOverlap[][]> {
  const counts = new Map<number, number>();
  for (const { other } of overlaps) counts.set(other, (counts.get(other) ?? 0) + 1);
  const folded = new Map<number, RegionOverlap[]>();
  const lists: RegionOverlap[][] = [];
  for (const [at, overlap] of overlaps.entries()) {
    if (at % piecesInStep === piecesInStep - 1) yield at / overlaps.length;
    const known = folded.get(overlap.other);
    if (known) known.push(overlap);
    else {
      const list = [overlap];
      lists.push(list);
      if ((counts.get(overlap.other) ?? 0) >= manyPartners) folded.set(overlap.other, list);
    }
  }
  return lists;
}

/** Scopes (see {@link scopeOf}) whose regions cover most of their keys and velocities twice. */
function* scopesWithTwoLayers(
  instrument: Instrument,
  conditions: Conditions,
  overlaps: readonly RegionOverlap[][],
): Steps<Set<number>> {
  const counts = new Map<number, number>();
  for (const [first] of overlaps) {
    if (!first) continue;
    const scope = scopeOf(instrument, conditions, first.region);
    counts.set(scope, (counts.get(scope) ?? 0) + 1);
  }
  const candidates = new Set(
    [...counts].filter(([, count]) => count >= fewestForLayer).map(([scope]) => scope),
  );
  if (candidates.size === 0) return candidates;
  const rectangles = new Map<number, Map<number, Rectangle>>();
  for (const [at, region] of instrument.regions.entries()) {
    if (at % piecesInStep === piecesInStep - 1) yield at / instrument.regions.length;
    const scope = scopeOf(instrument, conditions, region);
    const rectangle = candidates.has(scope) ? rectangleOf(instrument, region) : undefined;
    if (!rectangle) continue;
    let ofScope = rectangles.get(scope);
    if (!ofScope) {
      ofScope = new Map();
      rectangles.set(scope, ofScope);
    }
    ofScope.set(rectangleCode(instrument, region), rectangle);
  }
  const layered = new Set<number>();
  for (const [scope, all] of rectangles) {
    if (timesCovered([...all.values()]) >= twice) layered.add(scope);
    yield 1;
  }
  return layered;
}

/** The same number for regions under one header and of one layer. */
function scopeOf(instrument: Instrument, conditions: Conditions, region: number): number {
  return (instrument.parent(region) + 1) * 2 ** 24 + conditions.set(conditions.ofHeader[region]).layer;
}

/** How many of the rectangles lie over a place that is covered, on average. */
function timesCovered(rectangles: readonly Rectangle[]): number {
  let sum = 0;
  const covered = new Uint8Array(128 * 128);
  for (const { lowKey, highKey, lowVelocity, highVelocity } of rectangles) {
    sum += (highKey - lowKey + 1) * (highVelocity - lowVelocity + 1);
    for (let key = lowKey; key <= highKey; key++) {
      covered.fill(1, key * 128 + lowVelocity, key * 128 + highVelocity + 1);
    }
  }
  let places = 0;
  for (const place of covered) places += place;
  return sum / places;
}
