import { identityOf } from '../defaultModulators';
import { defaultOf, generatorFacts } from '../generators';
import type { WrittenInstrument, WrittenPresetZone, WrittenZone } from './fontParts';
import type { ShortNames } from './names';

/** Generators that a preset can add to. */
const added = [...generatorFacts.values()]
  .filter(({ level }) => level === 'both')
  .map(({ operator }) => operator);

interface KnownInstrument {
  position: number;
  common: ReadonlyMap<number, number>;
}

/**
 * Collects instruments so that zones which differ in what all of them have in common alone are written once: key and
 * velocity range and added values then stand in the preset (SoundFont Technical Specification 2.04, sections 7.3 and 9.4). So
 * many presets of few instruments fit into the 65,535 records that the format has.
 */
export class SharedInstruments {
  readonly instruments: WrittenInstrument[] = [];
  readonly #names: ShortNames;
  readonly #known = new Map<string, KnownInstrument>();

  constructor(names: ShortNames) {
    this.#names = names;
  }

  /** The zone of a preset that plays some zones; they become an instrument of that name where none like it is there. */
  take(name: string, zones: readonly WrittenZone[]): WrittenPresetZone {
    const ranges = commonRanges(zones);
    const common = commonValues(zones);
    const key = zones.map((zone) => keyOf(zone, ranges, common)).join('\n');
    let known = this.#known.get(key);
    if (!known) {
      known = { position: this.instruments.length, common };
      this.#known.set(key, known);
      this.instruments.push({
        name: this.#names.take(name),
        zones: zones.map((zone) => ({ ...zone, ...freed(ranges) })),
      });
    }
    const generators = new Map<number, number>();
    for (const operator of added) {
      const difference = (common.get(operator) ?? 0) - (known.common.get(operator) ?? 0);
      if (difference !== 0) generators.set(operator, difference);
    }
    return { ...fullRanges, ...ranges, generators, instrument: known.position };
  }
}

type Ranges = Partial<Pick<WrittenZone, 'lowKey' | 'highKey' | 'lowVelocity' | 'highVelocity'>>;

const fullRanges = { lowKey: 0, highKey: 127, lowVelocity: 1, highVelocity: 127 };

function commonRanges([first, ...others]: readonly WrittenZone[]): Ranges {
  if (!first) return {};
  const share = (low: 'lowKey' | 'lowVelocity', high: 'highKey' | 'highVelocity'): Ranges =>
    others.every((zone) => zone[low] === first[low] && zone[high] === first[high])
      ? { [low]: first[low], [high]: first[high] }
      : {};
  return { ...share('lowKey', 'highKey'), ...share('lowVelocity', 'highVelocity') };
}

/** The full ranges in place of those that stand in the preset. */
function freed(ranges: Ranges): Ranges {
  return Object.fromEntries(
    Object.keys(ranges).map((name) => [name, fullRanges[name as keyof typeof fullRanges]]),
  );
}

/** Values of generators that presets can add to and all zones share, those that are the default among them. */
function commonValues([first, ...others]: readonly WrittenZone[]): Map<number, number> {
  const common = new Map<number, number>();
  if (!first) return common;
  for (const operator of added) {
    const value = first.generators.get(operator) ?? defaultOf(operator);
    if (others.every(({ generators }) => (generators.get(operator) ?? defaultOf(operator)) === value))
      common.set(operator, value);
  }
  return common;
}

/** What of a zone is not shared by all, as a text that is the same for zones that are the same. */
function keyOf(zone: WrittenZone, ranges: Ranges, common: ReadonlyMap<number, number>): string {
  const { lowKey, highKey, lowVelocity, highVelocity } = { ...zone, ...freed(ranges) };
  const own = [...zone.generators]
    .filter(([operator, value]) => !common.has(operator) && value !== defaultOf(operator))
    .sort(([a], [b]) => a - b);
  return [
    [...common.keys()].length,
    lowKey,
    highKey,
    lowVelocity,
    highVelocity,
    zone.target,
    own.join(' '),
    zone.modulators.map((one) => `${identityOf(one)} ${one.amount}`).join(' '),
  ].join('|');
}
