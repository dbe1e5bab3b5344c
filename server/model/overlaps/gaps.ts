import type { Instrument } from '../instrument';
import type { Conditions } from './conditions';
import type { Rectangle } from './rectangles';
import { rectangleCodesOf } from './rectangles';

/** A rectangle of keys and velocities with the first region that has it. */
export interface PlayedRectangle extends Rectangle {
  region: number;
}

/** Keys between played keys that nothing answers. */
export interface KeyGap {
  lowKey: number;
  highKey: number;
  /** The first regions of the text that end right below and start right above. */
  below: number;
  above: number;
}

/** Velocities that nothing answers, the same on a row of played keys. */
export interface VelocityGap extends Rectangle {
  /** The region that ends right below the gap, or starts right above where the gap starts at the lowest velocity. */
  region: number;
  /** Whether {@link region} lies below. */
  isBelow: boolean;
}

/**
 * The different rectangles in which striking a key triggers a region, whatever else has to hold; releases do not count, nor do
 * regions that `counts` leaves out.
 */
export function playedRectangles(
  instrument: Instrument,
  conditions: Conditions,
  counts: (region: number) => boolean = () => true,
): PlayedRectangle[] {
  const seen = new Set<number>();
  const rectangles: PlayedRectangle[] = [];
  const codes = rectangleCodesOf(instrument);
  let last = -1;
  for (let number = 0; number < codes.length; number++) {
    const code = codes[number];
    // Takes of one key mostly stand together.
    if (code === last || code < 0 || seen.has(code)) continue;
    const region = instrument.regions[number];
    if (conditions.set(conditions.ofHeader[region]).onRelease || !counts(region)) continue;
    seen.add(code);
    last = code;
    rectangles.push({
      region,
      lowKey: code >> 21,
      highKey: (code >> 14) & 127,
      lowVelocity: (code >> 7) & 127,
      highVelocity: code & 127,
    });
  }
  return rectangles;
}

/**
 * Runs of keys inside the played span that nothing answers. Keys in `taken` (keyswitches) are no gaps. A mapping of
 * scattered narrow zones, such as percussion on single keys, has no gaps: more than half of its zones are at
 * most two keys wide and there are more gaps than a third of the zones.
 */
export function findKeyGaps(rectangles: readonly PlayedRectangle[], taken: ReadonlySet<number>): KeyGap[] {
  const starts = new Int32Array(129).fill(-1);
  const ends = new Int32Array(129).fill(-1);
  const change = new Int32Array(130);
  const zones = new Set<number>();
  let narrow = 0;
  for (const { lowKey, highKey, region } of rectangles) {
    if (starts[lowKey] === -1) starts[lowKey] = region;
    if (ends[highKey] === -1) ends[highKey] = region;
    change[lowKey]++;
    change[highKey + 1]--;
    const zone = lowKey * 128 + highKey;
    if (zones.has(zone)) continue;
    zones.add(zone);
    if (highKey - lowKey < 2) narrow++;
  }
  const gaps: KeyGap[] = [];
  let answering = 0;
  let below = -1;
  for (let key = 0; key <= 127; key++) {
    const before = answering;
    answering += change[key];
    if (before > 0 && answering === 0) below = key;
    if (before === 0 && answering > 0 && below >= 0) {
      addGaps(gaps, below, key, ends[below - 1], starts[key], taken);
    }
  }
  return narrow * 2 > zones.size && gaps.length * 3 > zones.size ? [] : gaps;
}

/**
 * The same, where keys that switch are no gaps; whether zones are scattered is judged with them, since a switching key
 * between two zones does not bring these together.
 */
export function findKeyGapsBeside(
  switching: ReadonlySet<number>,
  rectangles: readonly PlayedRectangle[],
): KeyGap[] {
  const isScattered = findKeyGaps(rectangles, new Set()).length === 0;
  return isScattered ? [] : findKeyGaps(rectangles, switching);
}

function addGaps(
  gaps: KeyGap[],
  from: number,
  to: number,
  below: number,
  above: number,
  taken: ReadonlySet<number>,
): void {
  let start = -1;
  for (let key = from; key <= to; key++) {
    const open = key < to && !taken.has(key);
    if (open && start < 0) start = key;
    if (open || start < 0) continue;
    gaps.push({ lowKey: start, highKey: key - 1, below, above });
    start = -1;
  }
}

/** Velocities 1..127 on played keys that nothing answers; neighbouring keys with the same gap make one. */
export function findVelocityGaps(rectangles: readonly PlayedRectangle[]): VelocityGap[] {
  const answered = new Int32Array(128 * 4);
  for (const rectangle of rectangles) {
    for (let word = 0; word < 4; word++) {
      const mask = maskOf(rectangle.lowVelocity - word * 32, rectangle.highVelocity - word * 32);
      if (mask === 0) continue;
      for (let key = rectangle.lowKey; key <= rectangle.highKey; key++) answered[key * 4 + word] |= mask;
    }
  }
  const finished: VelocityGap[] = [];
  let open: VelocityGap[] = [];
  for (let key = 0; key <= 127; key++) {
    const next: VelocityGap[] = [];
    for (const [lowVelocity, highVelocity] of gapsOfKey(answered, key)) {
      const same = open.find((one) => one.lowVelocity === lowVelocity && one.highVelocity === highVelocity);
      if (same) {
        same.highKey = key;
        next.push(same);
      } else {
        const gap = {
          lowKey: key,
          highKey: key,
          lowVelocity,
          highVelocity,
          region: -1,
          isBelow: lowVelocity > 1,
        };
        next.push(gap);
        finished.push(gap);
      }
    }
    open = next;
  }
  const lowEnds = new Map<number, PlayedRectangle[]>();
  const highEnds = new Map<number, PlayedRectangle[]>();
  for (const rectangle of finished.length > 0 ? rectangles : []) {
    append(lowEnds, rectangle.lowVelocity, rectangle);
    append(highEnds, rectangle.highVelocity, rectangle);
  }
  for (const gap of finished) {
    const bordering = gap.isBelow ? highEnds.get(gap.lowVelocity - 1) : lowEnds.get(gap.highVelocity + 1);
    const border = bordering?.find((one) => one.lowKey <= gap.lowKey && one.highKey >= gap.lowKey);
    gap.region = border?.region ?? -1;
  }
  return finished.filter(({ region }) => region >= 0);
}

function append(lists: Map<number, PlayedRectangle[]>, key: number, rectangle: PlayedRectangle): void {
  const list = lists.get(key);
  if (list) list.push(rectangle);
  else lists.set(key, [rectangle]);
}

/** Bits `low`..`high` of 32, both cut to 0..31. */
export function maskOf(low: number, high: number): number {
  const from = Math.max(0, low);
  const to = Math.min(31, high);
  return from > to ? 0 : (-1 << from) & (-1 >>> (31 - to));
}

function gapsOfKey(answered: Int32Array, key: number): [low: number, high: number][] {
  const at = key * 4;
  const isPlayed = (answered[at] ?? 0) || answered[at + 1] || answered[at + 2] || answered[at + 3];
  if (!isPlayed) return [];
  // Velocity 0 is a release (MIDI 1.0), so the first bit does not matter.
  if ((answered[at] | 1) === -1 && answered[at + 1] === -1 && answered[at + 2] === -1) {
    if (answered[at + 3] === -1) return [];
  }
  const gaps: [number, number][] = [];
  let start = -1;
  for (let velocity = 1; velocity <= 128; velocity++) {
    const isAnswered = velocity === 128 || ((answered[at + (velocity >> 5)] >>> (velocity & 31)) & 1) === 1;
    if (!isAnswered && start < 0) start = velocity;
    if (isAnswered && start >= 0) {
      gaps.push([start, velocity - 1]);
      start = -1;
    }
  }
  return gaps;
}
