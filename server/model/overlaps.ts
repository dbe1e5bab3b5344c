import type { Conditions } from './conditions';
import { HeaderKind } from './headerKinds';
import type { Instrument } from './instrument';
import { Parameter } from './parameterNames';

/** Keys and velocities, both ends included. */
export interface Rectangle {
  lowKey: number;
  highKey: number;
  lowVelocity: number;
  highVelocity: number;
}

/** Two regions of one layer that partly cover one another. */
export interface RegionOverlap {
  /** The later of the two in the text. */
  region: number;
  other: number;
  /** The keys and velocities that both answer. */
  shared: Rectangle;
}

/** Different conditions that are kept for one rectangle. */
const mostConditions = 64;
/** Comparisons for each rectangle, on average; text made to have no end of overlaps stops here. */
const comparisonsEach = 64;
const comparisonsAtLeast = 1_000_000;

/** The keys and velocities that a region answers; `undefined` where no key triggers it or a range is inverted. */
export function rectangleOf(instrument: Instrument, region: number): Rectangle | undefined {
  const lowKey = instrument.lowKey[region] as number;
  const highKey = instrument.highKey[region] as number;
  const lowVelocity = Math.max(0, instrument.lowVelocity[region] as number);
  const highVelocity = instrument.highVelocity[region] as number;
  if (lowKey < 0 || highKey < lowKey || highVelocity < lowVelocity) return undefined;
  return { lowKey, highKey, lowVelocity, highVelocity };
}

/** What two rectangles share; `undefined` where they do not meet. */
export function intersectionOf(a: Rectangle, b: Rectangle): Rectangle | undefined {
  const lowKey = Math.max(a.lowKey, b.lowKey);
  const highKey = Math.min(a.highKey, b.highKey);
  const lowVelocity = Math.max(a.lowVelocity, b.lowVelocity);
  const highVelocity = Math.min(a.highVelocity, b.highVelocity);
  return lowKey > highKey || lowVelocity > highVelocity
    ? undefined
    : { lowKey, highKey, lowVelocity, highVelocity };
}

/**
 * Finds regions under one header, of one layer of conditions, whose keys and velocities partly overlap: rectangles
 * that meet without being the same, where the conditions do not keep them apart. Regions with the same rectangle
 * are stacked on purpose (microphones) and count as one here. For each rectangle, at most the first one in the text
 * that it overlaps is given.
 *
 * A sweep over the keys: rectangles in the order of their lowest key, against those whose highest key is not passed.
 */
export function findOverlaps(instrument: Instrument, conditions: Conditions): RegionOverlap[] {
  const table = collectRectangles(instrument, conditions);
  const { count, codes, scopes, firsts } = table;
  const order = new Float64Array(count);
  for (let at = 0; at < count; at++) {
    order[at] = ((scopes[at] as number) * 128 + lowKeyIn(codes[at] as number)) * 2 ** 20 + at;
  }
  order.sort();
  const partner = new Int32Array(count).fill(-1);
  const found: (RegionOverlap | undefined)[] = [];
  let active: number[] = [];
  let scope = -1;
  let left = comparisonsEach * count + comparisonsAtLeast;
  for (let position = 0; position < count && left > 0; position++) {
    const at = (order[position] as number) % 2 ** 20;
    const code = codes[at] as number;
    if (scopes[at] !== scope) {
      scope = scopes[at] as number;
      active = [];
    }
    const low = lowKeyIn(code);
    const lowVelocity = lowVelocityIn(code);
    const highVelocity = highVelocityIn(code);
    let kept = 0;
    for (let place = 0; place < active.length; place++) {
      const before = active[place] as number;
      const beforeCode = codes[before] as number;
      if (highKeyIn(beforeCode) < low) continue;
      active[kept++] = before;
      if (lowVelocityIn(beforeCode) > highVelocity || highVelocityIn(beforeCode) < lowVelocity) continue;
      const beforeIsEarlier = (firsts[before] as number) < (firsts[at] as number);
      const earlier = beforeIsEarlier ? before : at;
      const later = beforeIsEarlier ? at : before;
      const known = partner[later] as number;
      if (known >= 0 && (firsts[known] as number) < (firsts[earlier] as number)) continue;
      const pair = rivals(table, conditions, later, earlier);
      left -= pair.comparisons;
      if (!pair.found) continue;
      partner[later] = earlier;
      found[later] = overlapOf(instrument, pair.region, pair.other);
    }
    left -= active.length;
    active.length = kept;
    active.push(at);
  }
  return found.filter((one) => one !== undefined).sort((a, b) => a.region - b.region);
}

function overlapOf(instrument: Instrument, one: number, two: number): RegionOverlap {
  const region = Math.max(one, two);
  const other = Math.min(one, two);
  const shared = intersectionOf(
    rectangleOf(instrument, region) as Rectangle,
    rectangleOf(instrument, other) as Rectangle,
  ) as Rectangle;
  return { region, other, shared };
}

/** The different rectangles of each scope, with the different conditions under which regions fill them. */
interface RectangleTable {
  count: number;
  /** Low key, high key, low velocity, high velocity in 7 bits each. */
  codes: number[];
  scopes: number[];
  /** The first region of each. */
  firsts: number[];
  conditionSets: number[][];
  regions: number[][];
}

function collectRectangles(instrument: Instrument, conditions: Conditions): RectangleTable {
  const table: RectangleTable = {
    count: 0,
    codes: [],
    scopes: [],
    firsts: [],
    conditionSets: [],
    regions: [],
  };
  const scopeNumbers = new Map<number, number>();
  const numbers = new Map<number, number>();
  let lastKey = -1;
  let scope = 0;
  for (const region of instrument.regions) {
    const code = rectangleCode(instrument, region);
    if (code < 0) continue;
    const set = conditions.ofHeader[region] as number;
    const key = (instrument.parent(region) + 1) * 2 ** 24 + conditions.set(set).layer;
    if (key !== lastKey) {
      lastKey = key;
      const known = scopeNumbers.get(key);
      scope = known ?? scopeNumbers.size;
      if (known === undefined) scopeNumbers.set(key, scope);
    }
    const place = scope * 2 ** 28 + code;
    const at = numbers.get(place);
    if (at === undefined) {
      if (table.count >= 2 ** 20) return table;
      numbers.set(place, table.count++);
      table.codes.push(code);
      table.scopes.push(scope);
      table.firsts.push(region);
      table.conditionSets.push([set]);
      table.regions.push([region]);
      continue;
    }
    const sets = table.conditionSets[at] as number[];
    if (sets.length >= mostConditions || sets.includes(set)) continue;
    sets.push(set);
    (table.regions[at] as number[]).push(region);
  }
  return table;
}

/** The rectangle of a region in 28 bits, or −1; see {@link rectangleOf}. */
export function rectangleCode(instrument: Instrument, region: number): number {
  const lowKey = instrument.lowKey[region] as number;
  const highKey = instrument.highKey[region] as number;
  const lowVelocity = Math.max(0, instrument.lowVelocity[region] as number);
  const highVelocity = instrument.highVelocity[region] as number;
  if (lowKey < 0 || highKey < lowKey || highVelocity < lowVelocity) return -1;
  return (lowKey << 21) | (highKey << 14) | (lowVelocity << 7) | highVelocity;
}

function lowKeyIn(code: number): number {
  return code >> 21;
}
function highKeyIn(code: number): number {
  return (code >> 14) & 127;
}
function lowVelocityIn(code: number): number {
  return (code >> 7) & 127;
}
function highVelocityIn(code: number): number {
  return code & 127;
}

interface Rivals {
  found: boolean;
  region: number;
  other: number;
  comparisons: number;
}

/** The first regions of two rectangles that nothing keeps apart. */
function rivals(table: RectangleTable, conditions: Conditions, later: number, earlier: number): Rivals {
  const laterSets = table.conditionSets[later] as number[];
  const earlierSets = table.conditionSets[earlier] as number[];
  let comparisons = 0;
  for (let i = 0; i < laterSets.length; i++) {
    for (let j = 0; j < earlierSets.length; j++) {
      comparisons++;
      if (conditions.apart(laterSets[i] as number, earlierSets[j] as number)) continue;
      return {
        found: true,
        region: table.regions[later]?.[i] as number,
        other: table.regions[earlier]?.[j] as number,
        comparisons,
      };
    }
  }
  return { found: false, region: -1, other: -1, comparisons };
}

/** Keys of a group that can be one zone among neighbours; wider ones are parts of a split keyboard. */
const widestZone = 24;
const mostRegionPairs = 4096;

interface GroupEnvelope extends Rectangle {
  group: number;
  regions: number[];
}

/**
 * Finds overlaps between groups that divide the keys or the velocities among them, such as one group for each
 * velocity layer. Groups often sound together on purpose, so they are compared only where they look like one row of
 * neighbours: the same parent header, the same conditions, the same names of parameters; every two of them that meet
 * are equal in one direction and share less than half of either in the other. A single pair that does not fit says that
 * the groups are stacked, and none of them is reported.
 */
export function findGroupOverlaps(instrument: Instrument, conditions: Conditions): RegionOverlap[] {
  const rows = new Map<string, GroupEnvelope[]>();
  for (const envelope of groupEnvelopes(instrument)) {
    const { group } = envelope;
    const key = `${instrument.parent(group)} ${conditions.ofHeader[group]} ${ownNames(instrument, group)}`;
    const row = rows.get(key);
    if (row) row.push(envelope);
    else rows.set(key, [envelope]);
  }
  const found: RegionOverlap[] = [];
  for (const row of rows.values()) {
    for (const [a, b] of meetingNeighbours(row)) {
      const overlap = firstOverlap(instrument, conditions, a, b);
      if (overlap) found.push(overlap);
    }
  }
  return found.sort((a, b) => a.region - b.region);
}

function groupEnvelopes(instrument: Instrument): GroupEnvelope[] {
  const envelopes: GroupEnvelope[] = [];
  let current: GroupEnvelope | undefined;
  for (const region of instrument.regions) {
    const group = instrument.parent(region);
    if (group < 0 || instrument.kind(group) !== HeaderKind.group) continue;
    const rectangle = rectangleOf(instrument, region);
    if (!rectangle) continue;
    if (current?.group !== group) {
      current = { group, regions: [], ...rectangle };
      envelopes.push(current);
    }
    current.regions.push(region);
    current.lowKey = Math.min(current.lowKey, rectangle.lowKey);
    current.highKey = Math.max(current.highKey, rectangle.highKey);
    current.lowVelocity = Math.min(current.lowVelocity, rectangle.lowVelocity);
    current.highVelocity = Math.max(current.highVelocity, rectangle.highVelocity);
  }
  return envelopes;
}

function ownNames(instrument: Instrument, group: number): string {
  const names = new Set<number>();
  const end = instrument.endParameter(group);
  for (let parameter = instrument.firstParameter(group); parameter < end; parameter++) {
    const name = instrument.canonicalName(parameter);
    if (name <= Parameter.hivel && name !== Parameter.sample) continue;
    names.add(name);
  }
  return [...names].sort((a, b) => a - b).join(',');
}

function meetingNeighbours(row: GroupEnvelope[]): [GroupEnvelope, GroupEnvelope][] {
  if (row.length < 2) return [];
  const sorted = [...row].sort((a, b) => a.lowKey - b.lowKey);
  const pairs: [GroupEnvelope, GroupEnvelope][] = [];
  let active: GroupEnvelope[] = [];
  for (const envelope of sorted) {
    active = active.filter((before) => before.highKey >= envelope.lowKey);
    // More than there are velocities to divide: stacked.
    if (active.length > 128) return [];
    for (const before of active) {
      const shared = intersectionOf(before, envelope);
      if (!shared) continue;
      if (!areNeighbours(before, envelope, shared)) return [];
      pairs.push([before, envelope]);
    }
    active.push(envelope);
  }
  return pairs;
}

function areNeighbours(a: Rectangle, b: Rectangle, shared: Rectangle): boolean {
  const sameKeys = a.lowKey === b.lowKey && a.highKey === b.highKey;
  const sameVelocities = a.lowVelocity === b.lowVelocity && a.highVelocity === b.highVelocity;
  if (sameKeys) {
    const most = (shared.highVelocity - shared.lowVelocity + 1) * 2;
    return most < a.highVelocity - a.lowVelocity + 1 && most < b.highVelocity - b.lowVelocity + 1;
  }
  if (!sameVelocities) return false;
  const most = (shared.highKey - shared.lowKey + 1) * 2;
  const widths = [a.highKey - a.lowKey + 1, b.highKey - b.lowKey + 1];
  return widths.every((width) => most < width && width <= widestZone);
}

function firstOverlap(
  instrument: Instrument,
  conditions: Conditions,
  a: GroupEnvelope,
  b: GroupEnvelope,
): RegionOverlap | undefined {
  let pairs = 0;
  for (const one of a.regions) {
    for (const two of b.regions) {
      if (pairs++ > mostRegionPairs) return undefined;
      const first = rectangleOf(instrument, one) as Rectangle;
      const second = rectangleOf(instrument, two) as Rectangle;
      if (!intersectionOf(first, second)) continue;
      if (conditions.apart(conditions.ofHeader[one] as number, conditions.ofHeader[two] as number)) continue;
      return overlapOf(instrument, one, two);
    }
  }
  return undefined;
}
