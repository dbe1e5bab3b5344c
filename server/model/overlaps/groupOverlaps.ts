import { HeaderKind } from '../headerKinds';
import type { Instrument } from '../instrument';
import { Parameter } from '../parameterNames';
import type { Steps } from '../steps';
import { piecesInStep } from '../steps';
import type { Conditions } from './conditions';
import type { RegionOverlap } from './overlaps';
import { overlapOf } from './overlaps';
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
 * the groups are stacked, and none of them is reported. Worked out in steps.
 */
export function* findGroupOverlaps(instrument: Instrument, conditions: Conditions): Steps<RegionOverlap[]> {
  const rows = new Map<string, GroupEnvelope[]>();
  for (const envelope of yield* groupEnvelopes(instrument)) {
    const { group } = envelope;
    const key = `${instrument.parent(group)} ${conditions.ofHeader[group]} ${ownNames(instrument, group)}`;
    const row = rows.get(key);
    if (row) row.push(envelope);
    else rows.set(key, [envelope]);
  }
  const found: RegionOverlap[] = [];
  for (const row of rows.values()) {
    for (const [a, b] of meetingNeighbours(row)) {
      yield 1;
      const overlap = firstOverlap(instrument, conditions, a, b);
      if (overlap) found.push(overlap);
    }
  }
  return found.sort((a, b) => a.region - b.region);
}

function* groupEnvelopes(instrument: Instrument): Steps<GroupEnvelope[]> {
  const codes = rectangleCodesOf(instrument);
  const envelopes: GroupEnvelope[] = [];
  let current: GroupEnvelope | undefined;
  for (let number = 0; number < codes.length; number++) {
    if (number % piecesInStep === piecesInStep - 1) yield number / codes.length;
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
      return overlapOf(one, two);
    }
  }
  return undefined;
}
