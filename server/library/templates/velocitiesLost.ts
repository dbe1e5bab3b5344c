import type { Instrument } from '../../model/instrument';
import type { WrittenRegion } from './templateAccount';
import { valueClass } from './valueClass';
import { writtenValues } from './writtenValues';

/** The strike at which regions are to sound where velocities cannot be told apart (our choice). */
const usualStrike = 100;

/** A region with its velocities in the source and in the result. */
interface Layer {
  region: number;
  keys: Range;
  velocities: Range;
  written: Range;
  /** When else it sounds in the result, as a text. */
  when: string;
}

interface Range {
  low: number;
  high: number;
}

/**
 * The regions of a source that sound at other velocities than others of their keys there, and at once with these in a result that has no place
 * for velocities. Of such the one stays that sounds at velocity 100, or nearest to it.
 */
export function velocitiesLost(
  source: Instrument,
  result: Instrument,
  regions: readonly WrittenRegion[],
): number[] {
  const layers = regions.map(({ source: { header: region }, header }) => ({
    region,
    keys: { low: source.lowKey[region], high: source.highKey[region] },
    velocities: { low: source.lowVelocity[region], high: source.highVelocity[region] },
    written: { low: result.lowVelocity[header], high: result.highVelocity[header] },
    when: otherConditions(result, header),
  }));
  if (!layers.some(isWider)) return [];
  const kept = new Map<number, Layer[]>();
  const lost: number[] = [];
  const byDistance = layers
    .map((layer) => ({ layer, distance: distanceFromStrike(layer.velocities) }))
    .sort((one, other) => one.distance - other.distance);
  for (const { layer } of byDistance) {
    const keys = keysOf(layer.keys);
    if (keys.some((key) => kept.get(key)?.some((other) => clash(layer, other)))) lost.push(layer.region);
    else
      for (const key of keys) {
        const known = kept.get(key);
        if (known) known.push(layer);
        else kept.set(key, [layer]);
      }
  }
  return lost;
}

/** What a region says of when it sounds apart from keys and velocities: what does so at other times than another one is no layer of it. */
function otherConditions(instrument: Instrument, header: number): string {
  return [...writtenValues(instrument, header)]
    .filter(([name]) => valueClass(name, true) === 'condition' && !/^(?:lo|hi)?(?:key|vel)$/.test(name))
    .map(([name, value]) => `${name}=${value}`)
    .sort()
    .join(' ');
}

/** Whether a region is written so that it sounds at more velocities than it is to. */
function isWider({ velocities, written }: Layer): boolean {
  return written.low < velocities.low || written.high > velocities.high;
}

/** Whether two regions that sound at different velocities would sound at one. */
function clash(one: Layer, other: Layer): boolean {
  return (
    one.when === other.when &&
    (isWider(one) || isWider(other)) &&
    !overlap(one.velocities, other.velocities) &&
    overlap(one.written, other.written)
  );
}

function overlap(one: Range, other: Range): boolean {
  return one.low <= other.high && other.low <= one.high;
}

function distanceFromStrike({ low, high }: Range): number {
  return Math.max(0, low - usualStrike, usualStrike - high);
}

function keysOf({ low, high }: Range): number[] {
  const first = Math.max(0, low);
  return Array.from({ length: Math.max(0, Math.min(127, high) - first + 1) }, (_, at) => first + at);
}
