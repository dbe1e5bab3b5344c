import type { Conditions } from '../model/conditions';
import { conditionsOf } from '../model/conditions';
import type { Fix } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Rectangle, RegionOverlap } from '../model/overlaps';
import { findGroupOverlaps, findOverlaps, rectangleCode, rectangleOf } from '../model/overlaps';
import { fixOf } from './parameterFixes';
import { keysText, placeText, regionTitle, velocitiesText } from './regionText';
import type { CheckContext, Rule, RuleFinding } from './rule';

/** From this many on, the overlaps of one region are told as one finding. */
const manyPartners = 3;
const mostRelated = 10;
/** From this many findings on, they can come from a second layer that is meant. */
const fewestForLayer = 4;
/** What is covered so many times on average is covered by two layers, some places left out. */
const twice = 1.75;

/**
 * Finds regions of one layer that partly overlap. Regions are of one layer when they stand under the same header and
 * the same switches, triggers, groups, outputs and crossfades govern them, or under groups that divide the keys or
 * velocities as neighbours do; see `findOverlaps` and `findGroupOverlaps`. Regions with equal keys and velocities are
 * stacked on purpose. Where there are several overlaps and the regions under a header cover their keys and
 * velocities about twice, they are two layers written under one header, and nothing is told.
 */
export const rangeOverlap: Rule = {
  code: 'range-overlap',
  severity: 'warning',
  finds:
    'Two regions of one layer that partly overlap in keys and velocities while no condition, round robin or crossfade keeps them apart.',
  check(context, report) {
    const { instrument } = context;
    const conditions = conditionsOf(instrument);
    const overlaps = foldByPartner([
      ...findOverlaps(instrument, conditions),
      ...findGroupOverlaps(instrument, conditions),
    ]);
    const layered = scopesWithTwoLayers(instrument, conditions, overlaps);
    for (const [first, ...more] of overlaps) {
      if (!first || layered.has(scopeOf(instrument, conditions, first.region))) continue;
      report(more.length === 0 ? findingOf(context, first) : foldedFinding(instrument, [first, ...more]));
    }
  },
};

/** Overlaps by finding: one each, or all those with one region where many others overlap it. */
function foldByPartner(overlaps: readonly RegionOverlap[]): RegionOverlap[][] {
  const counts = new Map<number, number>();
  for (const { other } of overlaps) counts.set(other, (counts.get(other) ?? 0) + 1);
  const folded = new Map<number, RegionOverlap[]>();
  const lists: RegionOverlap[][] = [];
  for (const overlap of overlaps) {
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
function scopesWithTwoLayers(
  instrument: Instrument,
  conditions: Conditions,
  overlaps: readonly RegionOverlap[][],
): Set<number> {
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
  for (const region of instrument.regions) {
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
  return new Set(
    [...rectangles].filter(([, all]) => timesCovered([...all.values()]) >= twice).map(([scope]) => scope),
  );
}

/** The same number for regions under one header and of one layer. */
function scopeOf(instrument: Instrument, conditions: Conditions, region: number): number {
  return (
    (instrument.parent(region) + 1) * 2 ** 24 + conditions.set(conditions.ofHeader[region] as number).layer
  );
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

function findingOf(context: CheckContext, overlap: RegionOverlap): RuleFinding {
  const { instrument } = context;
  const { region, other, shared } = overlap;
  return {
    ...instrument.headerSpan(region),
    message: `${capital(regionTitle(instrument, region))} and ${regionTitle(instrument, other)} (${placeText(instrument, other)}) both sound on ${areaText(shared)}. Give them ranges that do not meet, or a crossfade, round robin or condition.`,
    related: [
      {
        ...instrument.headerSpan(other),
        message: `${capital(regionTitle(instrument, other))} sounds on ${areaText(rectangleOf(instrument, other) as Rectangle)}.`,
      },
    ],
    fixes: () => fixesOf(context, overlap),
  };
}

function foldedFinding(instrument: Instrument, overlaps: readonly RegionOverlap[]): RuleFinding {
  const { other } = overlaps[0] as RegionOverlap;
  const rectangle = rectangleOf(instrument, other) as Rectangle;
  return {
    ...instrument.headerSpan(other),
    message: `${capital(regionTitle(instrument, other))} sounds on ${areaText(rectangle)}, where ${overlaps.length} other regions of its layer sound too. Narrow its range, or give it a group of its own if it is a layer of its own.`,
    related: overlaps.slice(0, mostRelated).map(({ region, shared }) => ({
      ...instrument.headerSpan(region),
      message: `${capital(regionTitle(instrument, region))} shares ${areaText(shared)} with it.`,
    })),
  };
}

function areaText(area: Rectangle): string {
  const keys = keysText(area.lowKey, area.highKey);
  return area.lowVelocity <= 1 && area.highVelocity === 127
    ? keys
    : `${keys} at ${velocitiesText(area.lowVelocity, area.highVelocity)}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function fixesOf(context: CheckContext, { region, other }: RegionOverlap): Fix[] {
  const { instrument } = context;
  const one = rectangleOf(instrument, region) as Rectangle;
  const two = rectangleOf(instrument, other) as Rectangle;
  const fixes: Fix[] = [];
  if (partlyCovers(one.lowKey, one.highKey, two.lowKey, two.highKey)) {
    const [lower, upper] = one.lowKey < two.lowKey ? [region, other] : [other, region];
    const start = instrument.lowKey[upper] as number;
    const end = instrument.highKey[lower] as number;
    fixes.push(...setKey(context, lower, 'hikey', start - 1), ...setKey(context, upper, 'lokey', end + 1));
  }
  if (partlyCovers(one.lowVelocity, one.highVelocity, two.lowVelocity, two.highVelocity)) {
    const [lower, upper] = one.lowVelocity < two.lowVelocity ? [region, other] : [other, region];
    const start = instrument.lowVelocity[upper] as number;
    const end = instrument.highVelocity[lower] as number;
    fixes.push(
      ...setValue(context, lower, 'hivel', start - 1),
      ...setValue(context, upper, 'lovel', end + 1),
    );
  }
  return fixes;
}

/** Whether two ranges that meet each reach past the other. */
function partlyCovers(low: number, high: number, otherLow: number, otherHigh: number): boolean {
  return (low < otherLow && high < otherHigh) || (otherLow < low && otherHigh < high);
}

function setKey(context: CheckContext, region: number, name: string, key: number): Fix[] {
  return setValue(context, region, name, key - context.instrument.control(region).keyOffset);
}

function setValue(
  { instrument, notation }: CheckContext,
  header: number,
  name: string,
  value: number,
): Fix[] {
  if (value < 0 || value > 127) return [];
  const { edits } = notation.edit(instrument, { kind: 'set', header, name, value: String(value) });
  return fixOf(`Set ${name}=${value} for ${regionTitle(instrument, header)}`, edits, false);
}
