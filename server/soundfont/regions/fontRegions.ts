import { defaultModulators, identityOf, velocityToCutoff } from '../defaultModulators';
import type { FontInstrument, Modulator, Preset, SoundFont, Zone } from '../font';
import { defaultOf, Generator, generatorFacts, withinRange } from '../generators';
import { FontError } from '../read/fontError';

/** What plays one sample for some keys and velocities: a zone of an instrument under a zone of a preset, put together. */
export interface FontRegion {
  lowKey: number;
  highKey: number;
  lowVelocity: number;
  highVelocity: number;
  /** Values by the number of their generator where they differ from the default, within what the format allows. */
  generators: ReadonlyMap<number, number>;
  /** All modulators in force, those that every instrument has among them. */
  modulators: readonly Modulator[];
  /** The position of the sample. */
  sample: number;
  /** The position of the preset's zone, and of the instrument that it names. */
  layer: number;
  instrument: number;
}

/** Regions of one preset at the most; zones that name one instrument again and again would give billions. */
const mostRegions = 100_000;

/**
 * The regions of a preset. Values of an instrument replace its global ones and the defaults; those of a preset are added;
 * key and velocity ranges of both are intersected (SoundFont Technical Specification 2.04, sections 9.4 and 9.5). Fails with
 * a {@link FontError} where there are too many.
 */
export function fontRegions(font: SoundFont, preset: Preset): FontRegion[] {
  const regions: FontRegion[] = [];
  const resolved = new Map<number, ResolvedZone[]>();
  for (const [layer, own] of preset.zones.entries()) {
    const outer = withGlobal(own, preset.global);
    let inner = resolved.get(own.target);
    if (!inner) {
      const instrument = font.instruments[own.target] as FontInstrument;
      inner = instrument.zones.map((zone) => withGlobal(zone, instrument.global));
      resolved.set(own.target, inner);
    }
    for (const zone of inner) {
      const region = combine(outer, zone);
      if (region) regions.push({ ...region, layer, instrument: own.target });
    }
    if (regions.length > mostRegions)
      throw new FontError(`the preset "${preset.name}" has more than ${mostRegions} regions`);
  }
  return regions;
}

/** A zone with what its global zone says put in. */
type ResolvedZone = Zone;

function withGlobal(zone: Zone, global: FontInstrument['global']): ResolvedZone {
  if (!global) return zone;
  const setsKeys = zone.lowKey > 0 || zone.highKey < 127;
  const setsVelocities = zone.lowVelocity > 0 || zone.highVelocity < 127;
  const keys = setsKeys ? zone : global;
  const velocities = setsVelocities ? zone : global;
  return {
    lowKey: keys.lowKey,
    highKey: keys.highKey,
    lowVelocity: velocities.lowVelocity,
    highVelocity: velocities.highVelocity,
    generators: new Map([...global.generators, ...zone.generators]),
    modulators: replaced(global.modulators, zone.modulators),
    target: zone.target,
  };
}

function combine(
  outer: ResolvedZone,
  inner: ResolvedZone,
): Omit<FontRegion, 'layer' | 'instrument'> | undefined {
  const lowKey = Math.max(outer.lowKey, inner.lowKey);
  const highKey = Math.min(outer.highKey, inner.highKey, 127);
  const lowVelocity = Math.max(outer.lowVelocity, inner.lowVelocity);
  const highVelocity = Math.min(outer.highVelocity, inner.highVelocity, 127);
  if (lowKey > highKey || lowVelocity > highVelocity) return undefined;
  const generators = new Map<number, number>();
  for (const operator of new Set([...inner.generators.keys(), ...outer.generators.keys()])) {
    const byDefault = defaultOf(operator);
    const own = inner.generators.get(operator) ?? byDefault;
    const added = generatorFacts.get(operator)?.level === 'both' ? (outer.generators.get(operator) ?? 0) : 0;
    const value = sumOf(operator, own + added);
    if (value !== byDefault) generators.set(operator, value);
  }
  return {
    lowKey,
    highKey,
    lowVelocity,
    highVelocity,
    generators,
    modulators: added(replaced(defaultModulators, inner.modulators), outer.modulators),
    sample: inner.target,
  };
}

/** An attenuation below 0 is no gain by itself, but makes up for what modulators take away. */
function sumOf(operator: number, value: number): number {
  return operator === Generator.attenuation ? Math.min(value, mostAttenuation) : withinRange(operator, value);
}

const mostAttenuation = 1440;

function replaced(before: readonly Modulator[], after: readonly Modulator[]): readonly Modulator[] {
  if (after.length === 0) return before;
  const all = new Map(before.map((one) => [identityOf(one), one]));
  for (const one of after) all.set(identityOf(one), one);
  return [...all.values()];
}

/** What a preset adds to where its instrument says nothing and the defaults are not taken as said. */
const unsaid = new Map(velocityToCutoff.map((one) => [identityOf(one), one.amount]));

function added(before: readonly Modulator[], more: readonly Modulator[]): readonly Modulator[] {
  if (more.length === 0) return before;
  const all = new Map(before.map((one) => [identityOf(one), one]));
  for (const one of more) {
    const key = identityOf(one);
    all.set(key, { ...one, amount: one.amount + (all.get(key)?.amount ?? unsaid.get(key) ?? 0) });
  }
  return [...all.values()];
}
