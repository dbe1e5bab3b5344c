import type { Instrument } from '../instrument';
import type { Steps } from '../steps';
import { piecesInStep } from '../steps';
import type { Conditions } from './conditions';
import { maskOf } from './gaps';
import type { RegionOverlap } from './overlaps';
import type { Rectangle } from './rectangles';
import { rectangleCode, rectangleOf } from './rectangles';

/** Where the regions under one header lie. */
interface Places {
  /** The velocities that rectangles cover on each key, a bit for each in four words, and those that two of them cover. */
  once: Int32Array;
  twice: Int32Array;
  /** 1 for each key and velocity at which a rectangle begins, or behind which one ends. */
  keyStarts: Uint8Array;
  keyEnds: Uint8Array;
  velocityStarts: Uint8Array;
  velocityEnds: Uint8Array;
}

/**
 * The overlaps that are no layer laid over another. One that follows the keys by another amount, such as a noise at one pitch, is a
 * layer. So is a region that lies wholly in another, unless this one reaches too far: where it plays some keys alone, and what lies
 * in it goes on at its end with a neighbour, they are one row of neighbours. Worked out in steps.
 */
export function* notLaidOver(
  instrument: Instrument,
  conditions: Conditions,
  overlaps: readonly RegionOverlap[],
): Steps<RegionOverlap[]> {
  const tracking = instrument.names.canonical(instrument.names.idOf('pitch_keytrack'));
  const trackingOf = (region: number) => {
    const parameter = instrument.effective(region, tracking);
    return parameter < 0 ? 100 : instrument.number(parameter);
  };
  const scopeOf = (region: number) =>
    (instrument.parent(region) + 1) * 2 ** 24 + conditions.set(conditions.ofHeader[region]).layer;
  const rest = overlaps.filter(({ region, other }) => trackingOf(region) === trackingOf(other));
  const nested = rest.filter(({ region, other }) => isNested(instrument, region, other));
  if (nested.length === 0) return rest;
  const regionsOf = new Map(nested.map(({ region }) => [scopeOf(region), [] as number[]]));
  for (const [at, region] of instrument.regions.entries()) {
    if (at % piecesInStep === piecesInStep - 1) yield at / instrument.regions.length;
    regionsOf.get(scopeOf(region))?.push(region);
  }
  const overlapsOf = new Map<number, RegionOverlap[]>();
  for (const overlap of nested) append(overlapsOf, scopeOf(overlap.region), overlap);
  const layers = new Set<RegionOverlap>();
  for (const [scope, ofScope] of overlapsOf) {
    yield 1;
    const places = placesOf(instrument, regionsOf.get(scope) ?? []);
    for (const [at, overlap] of ofScope.entries()) {
      if (at % comparedInStep === comparedInStep - 1) yield at / ofScope.length;
      const one = areaOf(instrument, overlap.region);
      const two = areaOf(instrument, overlap.other);
      if (!one || !two) continue;
      const [outer, inner] = holds(one, two) ? [one, two] : [two, one];
      if (isCoveredTwice(places, outer) || !hasNeighbour(places, outer, inner)) layers.add(overlap);
    }
  }
  return rest.filter((overlap) => !layers.has(overlap));
}

const comparedInStep = 64;

function append(lists: Map<number, RegionOverlap[]>, scope: number, overlap: RegionOverlap): void {
  const list = lists.get(scope);
  if (list) list.push(overlap);
  else lists.set(scope, [overlap]);
}

/** The rectangle of a region from velocity 1 on, as 0 is a release (MIDI 1.0). */
function areaOf(instrument: Instrument, region: number): Rectangle | undefined {
  const area = rectangleOf(instrument, region);
  return area && { ...area, lowVelocity: Math.max(1, area.lowVelocity) };
}

function isNested(instrument: Instrument, region: number, other: number): boolean {
  if (instrument.parent(region) !== instrument.parent(other)) return false;
  const one = areaOf(instrument, region);
  const two = areaOf(instrument, other);
  return one !== undefined && two !== undefined && (holds(one, two) || holds(two, one));
}

function holds(outer: Rectangle, inner: Rectangle): boolean {
  return (
    outer.lowKey <= inner.lowKey &&
    outer.highKey >= inner.highKey &&
    outer.lowVelocity <= inner.lowVelocity &&
    outer.highVelocity >= inner.highVelocity
  );
}

function placesOf(instrument: Instrument, regions: readonly number[]): Places {
  const line = () => new Uint8Array(130);
  const places = {
    once: new Int32Array(128 * 4),
    twice: new Int32Array(128 * 4),
    keyStarts: line(),
    keyEnds: line(),
    velocityStarts: line(),
    velocityEnds: line(),
  };
  const seen = new Set<number>();
  for (const region of regions) {
    const code = rectangleCode(instrument, region);
    const area = seen.has(code) ? undefined : areaOf(instrument, region);
    seen.add(code);
    if (area) cover(places, area);
  }
  return places;
}

function cover(places: Places, { lowKey, highKey, lowVelocity, highVelocity }: Rectangle): void {
  places.keyStarts[lowKey] = 1;
  places.keyEnds[highKey + 1] = 1;
  places.velocityStarts[lowVelocity] = 1;
  places.velocityEnds[highVelocity + 1] = 1;
  for (let word = 0; word < 4; word++) {
    const mask = maskOf(lowVelocity - word * 32, highVelocity - word * 32);
    if (mask === 0) continue;
    for (let at = lowKey * 4 + word; at <= highKey * 4 + word; at += 4) {
      places.twice[at] |= places.once[at] & mask;
      places.once[at] |= mask;
    }
  }
}

function isCoveredTwice({ twice }: Places, rectangle: Rectangle): boolean {
  const { lowKey, highKey, lowVelocity, highVelocity } = rectangle;
  for (let word = 0; word < 4; word++) {
    const mask = maskOf(lowVelocity - word * 32, highVelocity - word * 32);
    for (let at = lowKey * 4 + word; at <= highKey * 4 + word; at += 4)
      if ((twice[at] & mask) !== mask) return false;
  }
  return true;
}

/** Whether another rectangle goes on where the inner one ends, in the direction in which the two differ. */
function hasNeighbour(places: Places, outer: Rectangle, inner: Rectangle): boolean {
  const { keyStarts, keyEnds, velocityStarts, velocityEnds } = places;
  const sameKeys = outer.lowKey === inner.lowKey && outer.highKey === inner.highKey;
  const sameVelocities = outer.lowVelocity === inner.lowVelocity && outer.highVelocity === inner.highVelocity;
  const byKeys = keyStarts[inner.highKey + 1] === 1 || keyEnds[inner.lowKey] === 1;
  const byVelocities = velocityStarts[inner.highVelocity + 1] === 1 || velocityEnds[inner.lowVelocity] === 1;
  return (!sameKeys && byKeys) || (!sameVelocities && byVelocities);
}
