import type { Instrument } from '../instrument';
import type { Steps } from '../steps';
import { piecesInStep } from '../steps';
import type { Conditions } from './conditions';
import { PairNumbers } from './pairNumbers';
import type { Rectangle } from './rectangles';
import {
  highKeyIn,
  highVelocityIn,
  intersectionOf,
  lowKeyIn,
  lowVelocityIn,
  rectangleCodesOf,
  rectangleOf,
} from './rectangles';

/** Two regions of one layer that partly cover one another. */
export interface RegionOverlap {
  /** The later of the two in the text. */
  region: number;
  other: number;
}

/** The keys and velocities that both regions answer. */
export function sharedBy(instrument: Instrument, { region, other }: RegionOverlap): Rectangle {
  return intersectionOf(
    rectangleOf(instrument, region) as Rectangle,
    rectangleOf(instrument, other) as Rectangle,
  ) as Rectangle;
}

/** Different conditions that are kept for one rectangle. */
const mostConditions = 64;
/** Comparisons for each rectangle, on average; text made to have no end of overlaps stops here. */
const comparisonsEach = 64;
const comparisonsAtLeast = 1_000_000;
/** Comparisons after which a step ends. */
const comparisonsInStep = 100_000;

/**
 * Finds regions under one header, of one layer of conditions, whose keys and velocities partly overlap: rectangles
 * that meet without being the same, where the conditions do not keep them apart. Regions with the same rectangle
 * are stacked on purpose (microphones) and count as one here. For each rectangle, at most the first one in the text
 * that it overlaps is given. Worked out in steps.
 *
 * A sweep over the keys: rectangles in the order of their lowest key, against those whose highest key is not passed.
 */
export function* findOverlaps(instrument: Instrument, conditions: Conditions): Steps<RegionOverlap[]> {
  const table = yield* collectRectangles(instrument, conditions);
  const { count, codes, scopes, heads } = table;
  const order = orderByScopeAndKey(table);
  const partner = new Int32Array(count).fill(-1);
  const found: (RegionOverlap | undefined)[] = [];
  const active = new Int32Array(count);
  let activeCount = 0;
  let scope = -1;
  let left = comparisonsEach * count + comparisonsAtLeast;
  let leftAtStep = left;
  for (let position = 0; position < count && left > 0; position++) {
    if (leftAtStep - left > comparisonsInStep || position % piecesInStep === piecesInStep - 1) {
      leftAtStep = left;
      yield position / count;
    }
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
      found[later] = overlapOf(pair.region, pair.other);
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

export function overlapOf(one: number, two: number): RegionOverlap {
  return { region: Math.max(one, two), other: Math.min(one, two) };
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

function* collectRectangles(instrument: Instrument, conditions: Conditions): Steps<RectangleTable> {
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
    if (number % piecesInStep === piecesInStep - 1) yield number / places.length;
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
