import { conditionsOf } from '../model/conditions';
import type { Fix } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Rectangle, RegionOverlap } from '../model/overlaps';
import { findGroupOverlaps, findOverlaps, rectangleOf } from '../model/overlaps';
import { fixOf } from './parameterFixes';
import { keysText, placeText, regionTitle, velocitiesText } from './regionText';
import type { CheckContext, Rule, RuleFinding } from './rule';

/** From this many on, the overlaps of one region are told as one finding. */
const manyPartners = 3;
const mostRelated = 10;
/** Keys or velocities that two neighbours share when one end was written a little too far. */
const widestEdge = 2;
/** From this many wide overlaps on, they can be a second layer that is meant. */
const fewestForLayer = 8;

/**
 * Finds regions of one layer that partly overlap. Regions are of one layer when they stand under the same header and
 * the same switches, triggers, groups, outputs and crossfades govern them, or under groups that divide the keys or
 * velocities as neighbours do; see `findOverlaps` and `findGroupOverlaps`. Regions with equal keys and velocities are
 * stacked on purpose. Where more than half of the regions under a header overlap widely, they are two layers written
 * under one header, and only slight overlaps at their edges are told.
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
    const layered = headersWithLayers(instrument, overlaps);
    for (const [first, ...more] of overlaps) {
      if (!first || (layered.has(instrument.parent(first.region)) && !isEdge(instrument, first))) continue;
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

function headersWithLayers(instrument: Instrument, overlaps: readonly RegionOverlap[][]): Set<number> {
  const wide = new Map<number, number>();
  for (const [first] of overlaps) {
    if (!first || isEdge(instrument, first)) continue;
    const parent = instrument.parent(first.region);
    wide.set(parent, (wide.get(parent) ?? 0) + 1);
  }
  const layered = new Set<number>();
  for (const [parent, count] of wide) {
    if (count < fewestForLayer) continue;
    let regions = 0;
    for (const region of instrument.regions) if (instrument.parent(region) === parent) regions++;
    if (count * 2 > regions) layered.add(parent);
  }
  return layered;
}

function isEdge(instrument: Instrument, { region, other, shared }: RegionOverlap): boolean {
  const both = [rectangleOf(instrument, region), rectangleOf(instrument, other)] as Rectangle[];
  const keys = shared.highKey - shared.lowKey + 1;
  const velocities = shared.highVelocity - shared.lowVelocity + 1;
  return (
    (keys <= widestEdge && both.every((one) => one.highKey - one.lowKey + 1 > keys)) ||
    (velocities <= widestEdge && both.every((one) => one.highVelocity - one.lowVelocity + 1 > velocities))
  );
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
