import type { Instrument } from '../../model/instrument';
import type { ConditionSet } from '../../model/overlaps/conditionSets';
import { conditionsOf, turnsNeverMeet } from '../../model/overlaps/conditions';
import { rectangleCode } from '../../model/overlaps/rectangles';
import { keysText } from '../../model/wording/rangeWords';
import { usedName } from '../facts/parameters/parameterUses';
import { RegionNeighbours, rectangleOfCode, situationText } from '../facts/regionNeighbours';
import type { CheckContext, Rule } from '../rule';

/** Narrower holes come from rounding: thirds written as 0.333 and 0.334 (our choice). */
const narrowest = 0.002;

/** Regions with equal keys, velocities and conditions that share out the random numbers. */
interface Draw {
  code: number;
  set: ConditionSet;
  regions: number[];
  ranges: Range[];
}

interface Range {
  low: number;
  high: number;
}

/**
 * Finds random numbers for which none of the regions that share them out plays. What other regions play in part of
 * the same keys, velocities and conditions fills a hole. A region alone with a random range is meant to sound at times.
 */
export const randomHole: Rule = {
  code: 'random-hole',
  severity: 'warning',
  finds:
    'Regions that alternate at random (lorand, hirand) and leave some random numbers without sound. Where much is left, as for a sound that is meant to come only sometimes, this is information.',
  check(context, report) {
    const { instrument } = context;
    const low = usedName(context, 'lorand');
    const high = usedName(context, 'hirand');
    if (low < 0 && high < 0) return;
    let neighbours: RegionNeighbours | undefined;
    const seen = new Set<number>();
    for (const draw of collectDraws(context)) {
      if (draw.regions.length < 2 || holesIn(draw.ranges).length === 0) continue;
      neighbours ??= new RegionNeighbours(instrument, conditionsOf(instrument));
      const ranges = [...draw.ranges];
      for (const other of neighbours.setsMeeting(draw.code, draw.set)) {
        if (!turnsNeverMeet(draw.set, other)) ranges.push({ low: other.lowRandom, high: other.highRandom });
      }
      if (neighbours.isExhausted) return;
      for (const hole of holesIn(ranges)) {
        const place = placeOf(instrument, draw, hole, low, high);
        if (place < 0 || seen.has(place)) continue;
        seen.add(place);
        const { lowKey, highKey } = rectangleOfCode(draw.code);
        report({
          ...instrument.valueSpan(place),
          severity: isSlip(draw, hole) ? 'warning' : 'information',
          message: `No region plays for random numbers from ${hole.low} to ${hole.high} on ${keysText(lowKey, highKey)}, so about ${percent(hole)} of 100 strikes are silent. Make each range start where the one before it ends, or leave it if the silence is meant.`,
        });
      }
    }
  },
};

function collectDraws({ instrument }: CheckContext): Iterable<Draw> {
  const conditions = conditionsOf(instrument);
  const draws = new Map<string, Draw>();
  const situationOf: (string | undefined)[] = [];
  for (const region of instrument.regions) {
    const number = conditions.ofHeader[region];
    const set = conditions.set(number);
    const { lowRandom: low, highRandom: high, sequenceLength, sequencePosition } = set;
    // Stryker disable next-line ConditionalExpression,EqualityOperator: only sooner; beside what always plays there is no hole
    const isAlways = low <= 0 && high >= 1;
    if (set.onRelease || isAlways || low > high) continue;
    const code = rectangleCode(instrument, region);
    if (code < 0) continue;
    let situation = situationOf[number];
    if (situation === undefined) {
      situation = `${sequenceLength} ${sequencePosition} ${situationText(set)}`;
      situationOf[number] = situation;
    }
    const key = `${code} ${situation}`;
    const draw = draws.get(key);
    if (draw) {
      draw.regions.push(region);
      draw.ranges.push({ low, high });
    } else draws.set(key, { code, set, regions: [region], ranges: [{ low, high }] });
  }
  return draws.values();
}

/** The stretches of 0..1 that no range covers. */
function holesIn(ranges: readonly Range[]): Range[] {
  const holes: Range[] = [];
  let at = 0;
  for (const { low, high } of [...ranges].sort((a, b) => a.low - b.low)) {
    if (low - at > narrowest) holes.push({ low: at, high: low });
    at = Math.max(at, high);
  }
  if (1 - at > narrowest) holes.push({ low: at, high: 1 });
  return holes;
}

/** The value next to a hole: where the range above it starts, else where the one below it ends. */
function placeOf(instrument: Instrument, draw: Draw, hole: Range, low: number, high: number): number {
  const above = draw.ranges.findIndex((range) => range.low === hole.high);
  if (above >= 0 && low >= 0) return instrument.effective(draw.regions[above], low);
  const below = draw.ranges.findIndex((range) => range.high === hole.low);
  return below >= 0 && high >= 0 ? instrument.effective(draw.regions[below], high) : -1;
}

/** Whether a hole looks like a slip: narrower than each of the ranges that were to meet there. */
function isSlip({ ranges }: Draw, { low, high }: Range): boolean {
  return ranges.every((range) => range.high - range.low > high - low);
}

function percent({ low, high }: Range): number {
  return Math.max(1, Math.round((high - low) * 100));
}
