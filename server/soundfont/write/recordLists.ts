import { OutputError } from '../../model/output';
import { ByteWriter } from '../byteWriter';
import { identityOf, pressureToVibrato, velocityToCutoff, wheelToVibrato } from '../defaultModulators';
import type { Modulator } from '../font';
import { defaultOf, Generator } from '../generators';
import type {
  FontParts,
  WrittenInstrument,
  WrittenPresetZone,
  WrittenSample,
  WrittenZone,
} from './fontParts';

/** Zero frames behind each sample (SoundFont Technical Specification 2.04, section 7.10). */
export const silenceBetween = 46;

/** Positions are numbers of 16 bits, and the last record is taken for the end. */
const mostRecords = 65_535;

/** What modulators every instrument switches off: SFZ text has none of these unless it says so. */
const switchedOff: readonly Modulator[] = [...velocityToCutoff, pressureToVibrato, wheelToVibrato].map(
  (one) => ({
    ...one,
    amount: 0,
  }),
);

/** Generators that stand in each zone by itself. */
const ownGenerators: ReadonlySet<number> = new Set([
  Generator.startOffset,
  Generator.startCoarseOffset,
  Generator.endOffset,
  Generator.endCoarseOffset,
  Generator.sampleModes,
]);

/** Generators whose default cannot be written, so that no zone could take a common value back. */
const cannotBeUndone: ReadonlySet<number> = new Set([
  Generator.rootKey,
  Generator.forcedKey,
  Generator.forcedVelocity,
  Generator.exclusiveClass,
]);

/** The lists of zones of one level while they are filled. */
class ZoneLists {
  readonly bags = new ByteWriter();
  readonly generators = new ByteWriter();
  readonly modulators = new ByteWriter();
  bagCount = 0;
  generatorCount = 0;
  modulatorCount = 0;

  bag(): void {
    this.bags.u16(this.generatorCount, this.modulatorCount);
    this.bagCount++;
  }

  generator(operator: number, value: number): void {
    this.generators.u16(operator, value);
    this.generatorCount++;
  }

  /** Key and velocity range, where they are not all; they stand first in a zone. */
  ranges({
    lowKey,
    highKey,
    lowVelocity,
    highVelocity,
  }: Omit<WrittenPresetZone, 'generators' | 'instrument'>): void {
    if (lowKey > 0 || highKey < 127) this.generator(Generator.keyRange, lowKey | (highKey << 8));
    if (lowVelocity > 1 || highVelocity < 127)
      this.generator(Generator.velocityRange, (lowVelocity === 1 ? 0 : lowVelocity) | (highVelocity << 8));
  }

  modulator({ source, destination, amount, amountSource, transform }: Modulator): void {
    this.modulators.u16(source, destination, amount, amountSource, transform);
    this.modulatorCount++;
  }

  finish(level: string): void {
    for (const [count, what] of [
      [this.bagCount, 'zones'],
      [this.generatorCount, 'generators'],
      [this.modulatorCount, 'modulators'],
    ] as const) {
      if (count > mostRecords)
        throw new OutputError(
          `The ${level} need ${count} ${what}; a SoundFont holds ${mostRecords}. Write fewer instruments into one file, or instruments of fewer regions.`,
        );
    }
    this.bag();
    this.generator(0, 0);
    this.modulator({ source: 0, destination: 0, amount: 0, amountSource: 0, transform: 0 });
  }
}

/** The `pdta` part: nine lists in their order, each with its last record. Fails with a {@link OutputError} where one is full. */
export function recordLists({ presets, instruments, samples }: FontParts): Uint8Array {
  const presetZones = new ZoneLists();
  const instrumentZones = new ZoneLists();
  const phdr = new ByteWriter();
  for (const { name, bank, program, zones } of presets) {
    phdr.field(name, 20).u16(program, bank, presetZones.bagCount).u32(0, 0, 0);
    for (const zone of zones) {
      presetZones.bag();
      presetZones.ranges(zone);
      for (const [operator, value] of sorted(zone.generators)) presetZones.generator(operator, value);
      presetZones.generator(Generator.instrument, zone.instrument);
    }
  }
  phdr.field('EOP', 20).u16(0, 0, presetZones.bagCount).u32(0, 0, 0);
  const inst = new ByteWriter();
  for (const instrument of instruments) {
    inst.field(instrument.name, 20).u16(instrumentZones.bagCount);
    putZones(instrument, instrumentZones);
  }
  inst.field('EOI', 20).u16(instrumentZones.bagCount);
  presetZones.finish('presets');
  instrumentZones.finish('instruments');
  if (samples.length >= mostRecords)
    throw new OutputError(`There are ${samples.length} samples; a SoundFont holds ${mostRecords - 1}.`);
  const lists: [string, ByteWriter][] = [
    ['phdr', phdr],
    ['pbag', presetZones.bags],
    ['pmod', presetZones.modulators],
    ['pgen', presetZones.generators],
    ['inst', inst],
    ['ibag', instrumentZones.bags],
    ['imod', instrumentZones.modulators],
    ['igen', instrumentZones.generators],
    ['shdr', sampleHeaders(samples)],
  ];
  const all = new ByteWriter(1 << 16).letters('pdta');
  for (const [name, list] of lists) all.letters(name).u32(list.length).bytes(list.finish());
  return all.finish();
}

function sampleHeaders(samples: readonly WrittenSample[]): ByteWriter {
  const shdr = new ByteWriter();
  let start = 0;
  for (const { name, frames, loop, rate, rootKey, link, type } of samples) {
    // Of a sample without a loop the points are those that others write: eight frames from both ends.
    const { start: first, end } = loop ?? { start: 8, end: frames - 8 };
    shdr.field(name, 20).u32(start, start + frames, start + first, start + end, rate);
    shdr.u8(rootKey).u8(0).u16(link, type);
    start += frames + silenceBetween;
  }
  return shdr.field('EOS', 20).u32(0, 0, 0, 0, 0).u16(0, 0, 0);
}

function putZones({ zones }: WrittenInstrument, lists: ZoneLists): void {
  const globals = commonValues(zones);
  const modulators = commonModulators(zones);
  lists.bag();
  for (const [operator, value] of sorted(globals)) lists.generator(operator, value);
  for (const one of modulators) lists.modulator(one);
  const common = new Set(modulators.map(textOf));
  for (const zone of zones) {
    lists.bag();
    lists.ranges(zone);
    const { generators, target } = zone;
    const own = new Map(generators);
    for (const operator of globals.keys()) if (!own.has(operator)) own.set(operator, defaultOf(operator));
    for (const [operator, value] of sorted(own))
      if (value !== (globals.get(operator) ?? defaultOf(operator))) lists.generator(operator, value);
    lists.generator(Generator.sample, target);
    for (const one of zone.modulators) if (!common.has(textOf(one))) lists.modulator(one);
  }
}

function sorted(generators: ReadonlyMap<number, number>): [number, number][] {
  return [...generators].sort(([a], [b]) => a - b);
}

/** Values that most zones share, so that saying them once saves records. */
function commonValues(zones: readonly WrittenZone[]): Map<number, number> {
  const counts = new Map<number, Map<number, number>>();
  for (const { generators } of zones)
    for (const [operator, value] of generators) {
      if (ownGenerators.has(operator)) continue;
      const values = counts.get(operator) ?? new Map<number, number>();
      counts.set(operator, values);
      values.set(value, (values.get(value) ?? 0) + 1);
    }
  const common = new Map<number, number>();
  for (const [operator, values] of counts) {
    const said = [...values.values()].reduce((sum, count) => sum + count, 0);
    const unsaid = zones.length - said;
    const [value, count] = [...values].reduce((best, one) => (one[1] > best[1] ? one : best));
    const isSaved = unsaid === 0 || (count > 1 + unsaid && !cannotBeUndone.has(operator));
    if (value !== defaultOf(operator) && isSaved) common.set(operator, value);
  }
  return common;
}

/** Modulators that all zones have, with those that are switched off for all. */
function commonModulators(zones: readonly WrittenZone[]): Modulator[] {
  const [first, ...others] = zones;
  const sets = others.map(({ modulators }) => new Set(modulators.map(textOf)));
  const common = (first?.modulators ?? []).filter((one) => sets.every((set) => set.has(textOf(one))));
  const identities = new Set(common.map(identityOf));
  return [...switchedOff.filter((one) => !identities.has(identityOf(one))), ...common];
}

function textOf(one: Modulator): string {
  return `${identityOf(one)} ${one.amount}`;
}
