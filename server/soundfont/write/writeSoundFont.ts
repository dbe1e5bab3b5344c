import type { Files } from '../../model/files';
import type { Instrument } from '../../model/instrument';
import type { ByteChunks, OutputAccount, OutputOptions, OutputSource } from '../../model/output';
import { OutputError } from '../../model/output';
import { joinPath, nameOf } from '../../model/paths';
import type { Variant, VariantChoice } from '../../playing/plain/waysOfPlaying';
import { soundsIn, variantsOf } from '../../playing/plain/waysOfPlaying';
import { readFirstControllers } from '../../playing/playable/readFirstControllers';
import { ValuesInForce } from '../../playing/playable/valuesInForce';
import { SampleType } from '../font';
import type { AttenuationScale } from '../regions/regionOpcodes';
import { Account } from './account';
import { buildZones, topLevel } from './buildZones';
import type { WrittenChannel } from './fontBytes';
import { fontBytes } from './fontBytes';
import type { FontParts, WrittenInstrument, WrittenPreset, WrittenSample } from './fontParts';
import { ShortNames } from './names';
import type { PlanContext } from './planRegion';
import { planRegion } from './planRegion';
import { RegionParameters } from './regionParameters';
import { SampleCatalogue } from './sampleCatalogue';
import type { PlannedSample } from './samplePlan';
import { planSamples } from './samplePlan';
import { SharedInstruments } from './sharedInstruments';
import { tellVariants } from './tellVariants';
import type { ZoneDraft } from './zoneDraft';

/** An instrument that goes into a SoundFont. */
export interface FontSource extends OutputSource {
  /** Where it is to stand; where nothing is said, the next program of bank 0 that is free. */
  place?: { bank: number; program: number } | undefined;
}

/** How instruments are written as a SoundFont. */
export interface FontOptions extends VariantChoice {
  /** What the font is called. */
  name: string;
  /** Bits of a frame; `samples` for 24 where a sample has more than 16. */
  bits: 16 | 24 | 'samples';
  /** 1 writes attenuation as the specification says, 0.4 for players that take so much of it. */
  attenuation: AttenuationScale;
  /** What to do with samples of more than 50,000 frames a second. */
  rates: 'keep' | 'lower';
}

/** A SoundFont with an account of what went into it. */
export interface WrittenFont {
  bytes: ByteChunks;
  /** For each source, what was written in another way or left out. */
  accounts: OutputAccount[];
  /** The presets in the order of the file. */
  presets: { bank: number; program: number; name: string; source: number }[];
}

/** Above this many frames a second, players may refuse a sample (SoundFont Technical Specification 2.04, section 7.10). */
const mostRate = 50_000;
const leastRate = 400;

/**
 * Writes instruments as one SoundFont of version 2.01, or 2.04 for 24 bits. Everything is decided here; samples are read
 * again while the bytes are taken. Fails with a {@link OutputError} where the format cannot hold what is asked.
 */
export async function writeSoundFont(
  sources: readonly FontSource[],
  options: FontOptions,
  files: Files,
  { progress, signal }: Pick<OutputOptions, 'progress' | 'signal'> = {},
): Promise<WrittenFont> {
  const catalogue = new SampleCatalogue(files);
  const planned: PlannedInstrument[] = [];
  for (const source of sources) {
    signal?.throwIfAborted();
    planned.push(await planInstrument(source, options, catalogue));
    progress?.(planned.length, sources.length);
  }
  const used = [...new Set(planned.flatMap(({ variants }) => variants.flatMap(({ zones }) => zones)))];
  const step = (rate: number) => (options.rates === 'lower' ? Math.max(1, Math.ceil(rate / mostRate)) : 1);
  const { samples, ofZone } = await planSamples(used, catalogue, step);
  const sampleOf = new Map(used.map((zone, at) => [zone, ofZone[at] as PlannedSample]));
  for (const zone of used) zone.levelDb += 20 * Math.log10((sampleOf.get(zone) as PlannedSample).known.peak);
  const topDb = Math.max(0, ...used.map(topLevel));
  const bits = bitsOf(options, samples);
  tellSamples(planned, sampleOf, { bits, topDb, step });
  const written = writeSamples(samples, step);
  const { presets, instruments } = writeInstruments(planned, (zone) => {
    const sample = sampleOf.get(zone) as PlannedSample;
    const positions = written.positions.get(sample) as number[];
    return buildZones(zone, {
      sample,
      positions,
      topDb,
      scale: options.attenuation,
      step: step(sample.known.rate),
    });
  });
  const parts: FontParts = { presets, instruments, samples: written.samples };
  const comment = options.attenuation === 1 ? '' : 'Attenuation is written for players that take 0.4 of it.';
  return {
    bytes: fontBytes({ name: options.name, comment }, parts, written.channels, bits, catalogue),
    accounts: planned.map(({ account }) => ({ notes: account.notes, kept: account.kept })),
    presets: presets.map(({ bank, program, name, source }) => ({ bank, program, name, source })),
  };
}

interface PlannedInstrument {
  source: FontSource;
  account: Account;
  variants: { variant: Variant; zones: ZoneDraft[] }[];
}

const mostClasses = 127;

async function planInstrument(
  source: FontSource,
  options: FontOptions,
  catalogue: SampleCatalogue,
): Promise<PlannedInstrument> {
  const { instrument, folder = '' } = source;
  const account = new Account(instrument);
  const paths: string[] = [];
  for (const region of instrument.regions) {
    const path = instrument.samplePath(region);
    if (path !== undefined && !path.startsWith('*')) paths.push(joinPath(folder, path));
  }
  await catalogue.load(paths);
  const classes = new Map<number, number>();
  const context: PlanContext = {
    name: source.name,
    folder,
    sample: (path) => catalogue.get(path),
    firstControllers: readFirstControllers(new ValuesInForce(instrument)),
    classOf: (group) => {
      const known = classes.get(group);
      if (known !== undefined || classes.size === mostClasses) return known;
      classes.set(group, classes.size + 1);
      return classes.size;
    },
  };
  const regions = [...instrument.regions].map((region) => new RegionParameters(account, region));
  const variants = variantsOf(instrument, regions, options).map((variant) => ({
    variant,
    zones: [] as ZoneDraft[],
  }));
  for (const values of regions) {
    tellVariants(values, options);
    const sounding = variants.filter(({ variant }) => soundsIn(values, variant));
    const zone = sounding.length > 0 ? planRegion(values, context) : undefined;
    if (zone) for (const { zones } of sounding) zones.push(zone);
  }
  const filled = variants.filter(({ zones }) => zones.length > 0);
  if (filled.length === 0)
    throw new OutputError(`"${source.name}" has no region that a SoundFont can hold${firstReason(account)}.`);
  return { source, account, variants: filled };
}

function firstReason({ notes }: Account): string {
  const [first] = notes;
  return first ? `; the first: ${first.message.replace(/^Left out: /, '').replace(/\.$/, '')}` : '';
}

function bitsOf({ bits }: FontOptions, samples: readonly PlannedSample[]): 16 | 24 {
  if (bits !== 'samples') return bits;
  return samples.some(({ known }) => known.bits > 16) ? 24 : 16;
}

/** Notes what becomes of samples, at the sample of each region that plays them. */
function tellSamples(
  planned: readonly PlannedInstrument[],
  sampleOf: ReadonlyMap<ZoneDraft, PlannedSample>,
  { bits, topDb, step }: { bits: number; topDb: number; step: (rate: number) => number },
): void {
  for (const { account, variants } of planned) {
    const { instrument } = account;
    const zones = new Set(variants.flatMap((one) => one.zones));
    for (const zone of zones) {
      const { known } = sampleOf.get(zone) as PlannedSample;
      const parameter = instrument.sampleParameter[zone.region] as number;
      const tell = (message: string) => account.tell(parameter, 'approximated', message);
      if (known.bits > bits) tell(`The sample is rounded from ${known.bits} to ${bits} bits.`);
      else if (known.channels > 2)
        tell(`The sample has ${known.channels} channels; the first two are written.`);
      else if (step(known.rate) > 1)
        tell(
          `The sample is converted from ${known.rate} to ${Math.round(known.rate / step(known.rate))} Hz.`,
        );
      else if (known.rate > mostRate || known.rate < leastRate)
        tell(
          `The sample is at ${known.rate} Hz; players need not play less than ${leastRate} or more than ${mostRate} Hz.`,
        );
      else if (known.channels > 1 && (zone.width !== 100 || zone.position !== 0 || zone.pan !== 0)) {
        for (const name of ['width', 'position', 'pan']) {
          const one = instrument.effective(
            zone.region,
            instrument.names.canonical(instrument.names.idOf(name)),
          );
          if (one >= 0)
            account.tell(
              one,
              'approximated',
              'A SoundFont places the two sides of a stereo sample; it cannot mix them.',
            );
        }
      }
    }
    const [first] = zones;
    if (topDb > 0 && first)
      account.tellRegion(
        first.region,
        'approximated',
        `A SoundFont cannot make samples louder: all of it is ${topDb.toFixed(1)} dB softer, so that the loudest region is as loud as its sample.`,
      );
  }
}

function writeSamples(
  samples: readonly PlannedSample[],
  step: (rate: number) => number,
): { samples: WrittenSample[]; channels: WrittenChannel[]; positions: Map<PlannedSample, number[]> } {
  const names = new ShortNames();
  const written: WrittenSample[] = [];
  const channels: WrittenChannel[] = [];
  const positions = new Map<PlannedSample, number[]>();
  for (const sample of samples) {
    const { known, layout, rootKey } = sample;
    const by = step(known.rate);
    const stem = nameOf(known.path).replace(/\.[^.]*$/, '');
    const isPair = known.channels > 1;
    const own: number[] = [];
    for (const side of isPair ? ([' L', ' R'] as const) : ([''] as const)) {
      const position = written.length;
      own.push(position);
      channels.push({ sample, channel: own.length - 1, step: by });
      written.push({
        name: names.take(stem, side),
        frames: layout.frames / by,
        loop: layout.loop && { start: layout.loop.start / by, end: layout.loop.end / by },
        rate: Math.round(known.rate / by),
        rootKey,
        link: !isPair ? 0 : side === ' L' ? position + 1 : position - 1,
        type: !isPair ? SampleType.mono : side === ' L' ? SampleType.left : SampleType.right,
      });
    }
    positions.set(sample, own);
  }
  return { samples: written, channels, positions };
}

const mostProgram = 127;
const mostBank = 128;

function writeInstruments(
  planned: readonly PlannedInstrument[],
  build: (zone: ZoneDraft) => WrittenInstrument['zones'],
): { presets: (WrittenPreset & { source: number })[]; instruments: WrittenInstrument[] } {
  const presetNames = new ShortNames();
  const shared = new SharedInstruments(new ShortNames());
  const taken = new Set<string>();
  const presets: (WrittenPreset & { source: number })[] = [];
  const keyOf = (bank: number, program: number) => `${bank}:${program}`;
  for (const { source } of planned)
    if (source.place) take(source.place.bank, source.place.program, source.name);
  for (const [at, { source, variants }] of planned.entries()) {
    for (const [number, { variant, zones }] of variants.entries()) {
      const isPlaced = number === 0 && source.place !== undefined;
      const { bank, program } =
        isPlaced && source.place ? source.place : nextFree(source.place ?? { bank: 0, program: 0 });
      const name = variant.label === '' ? source.name : `${source.name} ${variant.label}`;
      presets.push({
        name: presetNames.take(name),
        bank,
        program,
        source: at,
        zones: byGroup(source.instrument, zones).map((group) =>
          shared.take(
            group.label ?? name,
            group.zones.flatMap((zone) => build(zone)),
          ),
        ),
      });
    }
  }
  presets.sort((a, b) => a.bank - b.bank || a.program - b.program);
  return { presets, instruments: shared.instruments };

  function take(bank: number, program: number, name: string): void {
    if (bank > mostBank || program > mostProgram)
      throw new OutputError(
        `${keyOf(bank, program)} for "${name}" is no preset: banks go to ${mostBank}, programs to ${mostProgram}.`,
      );
    if (taken.has(keyOf(bank, program)))
      throw new OutputError(
        `Two instruments are to stand at ${keyOf(bank, program)}: "${name}" is the second.`,
      );
    taken.add(keyOf(bank, program));
  }

  function nextFree({ bank, program }: { bank: number; program: number }): { bank: number; program: number } {
    for (let at = bank * (mostProgram + 1) + program; at < mostBank * (mostProgram + 1); at++) {
      const place = { bank: Math.floor(at / (mostProgram + 1)), program: at % (mostProgram + 1) };
      if (taken.has(keyOf(place.bank, place.program))) continue;
      taken.add(keyOf(place.bank, place.program));
      return place;
    }
    throw new OutputError('There are more presets than banks and programs.');
  }
}

/** Zones of one group of an instrument each, which have much in common. */
function byGroup(
  instrument: Instrument,
  zones: readonly ZoneDraft[],
): { label: string | undefined; zones: ZoneDraft[] }[] {
  const groups = new Map<number, { label: string | undefined; zones: ZoneDraft[] }>();
  for (const zone of zones) {
    const parent = instrument.parent(zone.region);
    const group = groups.get(parent) ?? { label: instrument.groupLabel(zone.region), zones: [] };
    groups.set(parent, group);
    group.zones.push(zone);
  }
  return [...groups.values()];
}
