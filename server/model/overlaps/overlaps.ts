import { HeaderKind } from '../headerKinds';
import type { Instrument } from '../instrument';
import { Parameter } from '../parameterNames';
import type { Conditions } from './conditions';
import { PairNumbers } from './pairNumbers';

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
  const lowKey = instrument.lowKey[region];
  const highKey = instrument.highKey[region];
  const lowVelocity = Math.max(0, instrument.lowVelocity[region]);
  const highVelocity = instrument.highVelocity[region];
  if (lowKey < 0 || highKey < lowKey || highVelocity < lowVelocity) return undefined;
  return { lowKey, highKey, lowVelocity, highVelocity };
}

/** What two rectangles share; `undefined` where they do not meet. */
function intersectionOf(a: Rectangle, b: Rectangle): Rectangle | undefined {
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
  const { count, codes, scopes, heads } = table;
  const order = orderByScopeAndKey(table);
  const partner = new Int32Array(count).fill(-1);
  const found: (RegionOverlap | undefined)[] = [];
  const active = new Int32Array(count);
  let activeCount = 0;
  let scope = -1;
  let left = comparisonsEach * count + comparisonsAtLeast;
  for (let position = 0; position < count && left > 0; position++) {
    const at = order[position] % mostRectangles;
    const code = codes[at];
    if (scopes[at] !== scope) {
      scope = scopes[at];
      activeCount = 0;
    }
    const low = lowKeyIn(code);
    const lowVelocity = lowVelocityIn(code);
    const highVelocity = highVelocityIn(code);
    let kept = 0;
    for (let place = 0; place < activeCount; place++) {
      const before = active[place];
      const beforeCode = codes[before];
      if (highKeyIn(beforeCode) < low) continue;
      active[kept++] = before;
      if (lowVelocityIn(beforeCode) > highVelocity || highVelocityIn(beforeCode) < lowVelocity) continue;
      const beforeIsEarlier = heads[before] < heads[at];
      const earlier = beforeIsEarlier ? before : at;
      const later = beforeIsEarlier ? at : before;
      const known = partner[later];
      if (known >= 0 && heads[known] < heads[earlier]) continue;
      const pair = rivals(table, conditions, later, earlier);
      left -= pair.comparisons;
      if (!pair.found) continue;
      partner[later] = earlier;
      found[later] = overlapOf(instrument, pair.region, pair.other);
    }
    left -= activeCount;
    active[kept] = at;
    activeCount = kept + 1;
  }
  return found.filter((one) => one !== undefined).sort((a, b) => a.region - b.region);
}

/** The rectangles in the order of their scopes and lowest keys: each as the remainder by {@link mostRectangles}. */
function orderByScopeAndKey({ count, codes, scopes }: RectangleTable): Float64Array {
  const order = new Float64Array(count);
  let isInOrder = true;
  let last = -1;
  for (let at = 0; at < count; at++) {
    const place = (scopes[at] * 128 + lowKeyIn(codes[at])) * mostRectangles + at;
    if (place < last) isInOrder = false;
    order[at] = place;
    last = place;
  }
  return isInOrder ? order : order.sort();
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

/**
 * The different rectangles of each scope, with the different conditions under which regions fill them. The regions of
 * a rectangle make a list: its head, and for each region the next one, or −1.
 */
interface RectangleTable {
  count: number;
  /** Low key, high key, low velocity, high velocity in 7 bits each. */
  codes: Int32Array;
  scopes: Int32Array;
  /** The positions in {@link regions} of the first and the last region of each rectangle. */
  heads: Int32Array;
  tails: Int32Array;
  /** How many regions the list of each rectangle has. */
  sizes: Uint8Array;
  regions: Int32Array;
  conditionSets: Int32Array;
  next: Int32Array;
}

const mostRectangles = 2 ** 20;

function collectRectangles(instrument: Instrument, conditions: Conditions): RectangleTable {
  const places = rectangleCodesOf(instrument);
  const column = () => new Int32Array(places.length);
  const table: RectangleTable = {
    count: 0,
    codes: column(),
    scopes: column(),
    heads: column(),
    tails: column(),
    sizes: new Uint8Array(places.length),
    regions: column(),
    conditionSets: column(),
    next: column(),
  };
  const scopeNumbers = new PairNumbers();
  const numbers = new PairNumbers();
  let listed = 0;
  let parent = -2;
  let layer = -1;
  let scope = -1;
  let code = -1;
  let at = -1;
  for (let number = 0; number < places.length; number++) {
    const place = places[number];
    if (place < 0) continue;
    const region = instrument.regions[number];
    const set = conditions.ofHeader[region];
    const ownParent = instrument.parent(region);
    const ownLayer = conditions.set(set).layer;
    const isOfScope = ownParent === parent && ownLayer === layer;
    if (!isOfScope) {
      parent = ownParent;
      layer = ownLayer;
      scope = scopeNumbers.numberOf(parent, layer);
    }
    // Takes of one key mostly stand together.
    if (!isOfScope || place !== code) {
      code = place;
      at = numbers.numberOf(scope, code);
    }
    if (at < table.count) {
      if (!isNewCondition(table, at, set)) continue;
      table.next[table.tails[at]] = listed;
    } else {
      if (at >= mostRectangles) return table;
      table.count++;
      table.codes[at] = code;
      table.scopes[at] = scope;
      table.heads[at] = listed;
    }
    table.tails[at] = listed;
    table.sizes[at]++;
    table.regions[listed] = region;
    table.conditionSets[listed] = set;
    table.next[listed++] = -1;
  }
  return table;
}

/** Whether a rectangle has room for another condition set and does not have this one. */
function isNewCondition(
  { heads, sizes, conditionSets, next }: RectangleTable,
  at: number,
  set: number,
): boolean {
  if (sizes[at] >= mostConditions) return false;
  for (let entry = heads[at]; entry >= 0; entry = next[entry]) {
    if (conditionSets[entry] === set) return false;
  }
  return true;
}

const codesOfInstrument = new WeakMap<Instrument, Int32Array>();

/** The {@link rectangleCode} of each region, in the order of `Instrument.regions`; worked out when first asked for. */
export function rectangleCodesOf(instrument: Instrument): Int32Array {
  let codes = codesOfInstrument.get(instrument);
  if (!codes) {
    codes = instrument.regions.map((region) => rectangleCode(instrument, region));
    codesOfInstrument.set(instrument, codes);
  }
  return codes;
}

/** The rectangle of a region in 28 bits, or −1; see {@link rectangleOf}. */
export function rectangleCode(instrument: Instrument, region: number): number {
  const lowKey = instrument.lowKey[region];
  const highKey = instrument.highKey[region];
  const lowVelocity = Math.max(0, instrument.lowVelocity[region]);
  const highVelocity = instrument.highVelocity[region];
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
  const { heads, regions, conditionSets, next } = table;
  let comparisons = 0;
  for (let i = heads[later]; i >= 0; i = next[i]) {
    for (let j = heads[earlier]; j >= 0; j = next[j]) {
      comparisons++;
      if (conditions.apart(conditionSets[i], conditionSets[j])) continue;
      return { found: true, region: regions[i], other: regions[j], comparisons };
    }
  }
  return { found: false, region: -1, other: -1, comparisons };
}

/** Keys of a group that can be one zone among neighbours; wider ones are parts of a split keyboard. */
const widestZone = 24;
const mostRegionPairs = 4096;

interface GroupEnvelope extends Rectangle {
  group: number;
  /** Positions among the regions of the instrument, the end not included. */
  from: number;
  to: number;
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
  const codes = rectangleCodesOf(instrument);
  const envelopes: GroupEnvelope[] = [];
  let current: GroupEnvelope | undefined;
  for (let number = 0; number < codes.length; number++) {
    const code = codes[number];
    const group = instrument.parent(instrument.regions[number]);
    if (code < 0 || group < 0) continue;
    const lowKey = lowKeyIn(code);
    const highKey = highKeyIn(code);
    const lowVelocity = lowVelocityIn(code);
    const highVelocity = highVelocityIn(code);
    if (current?.group !== group) {
      if (instrument.kind(group) !== HeaderKind.group) continue;
      current = { group, from: number, to: number + 1, lowKey, highKey, lowVelocity, highVelocity };
      envelopes.push(current);
      continue;
    }
    current.to = number + 1;
    if (lowKey < current.lowKey) current.lowKey = lowKey;
    if (highKey > current.highKey) current.highKey = highKey;
    if (lowVelocity < current.lowVelocity) current.lowVelocity = lowVelocity;
    if (highVelocity > current.highVelocity) current.highVelocity = highVelocity;
  }
  return envelopes;
}

/** The regions of a group that keys trigger. */
function regionsOf(instrument: Instrument, { group, from, to }: GroupEnvelope): Int32Array {
  const codes = rectangleCodesOf(instrument);
  return instrument.regions
    .subarray(from, to)
    .filter((region, at) => instrument.parent(region) === group && codes[from + at] >= 0);
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
  const others = regionsOf(instrument, b);
  for (const one of regionsOf(instrument, a)) {
    for (const two of others) {
      if (pairs++ > mostRegionPairs) return undefined;
      const first = rectangleOf(instrument, one) as Rectangle;
      const second = rectangleOf(instrument, two) as Rectangle;
      if (!intersectionOf(first, second)) continue;
      if (conditions.apart(conditions.ofHeader[one], conditions.ofHeader[two])) continue;
      return overlapOf(instrument, one, two);
    }
  }
  return undefined;
}
