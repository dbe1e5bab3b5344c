import type { Instrument } from '../../model/instrument';
import { Parameter } from '../../model/parameterNames';
import type { SampleFacts, SampleLookup } from '../../model/samples';
import { LoopMode } from '../../playing/playable/playableInstrument';
import type { ValuesInForce } from '../../playing/playable/valuesInForce';
import { choice } from '../choices';
import type { SoundProgram } from './program';
import { generators, noSample } from './program';
import type { VoiceRecipe } from './recipe';
import { LoopType } from './recipe';

/** What is known of samples when the sound of an instrument is worked out. */
export interface SoundOptions {
  /** Tells the loops and root keys that sample files carry; without it none do. */
  samples?: Pick<SampleLookup, 'state'>;
}

type Columns = Pick<
  SoundProgram,
  | 'sample'
  | 'samples'
  | 'rootKey'
  | 'tuneCents'
  | 'volumeDb'
  | 'panPercent'
  | 'offset'
  | 'end'
  | 'loopStart'
  | 'loopEnd'
  | 'loopMode'
  | 'loopType'
>;

const loopModes = ['no_loop', 'one_shot', 'loop_continuous', 'loop_sustain'];
const fileLoopTypes = {
  forward: LoopType.forward,
  backward: LoopType.backward,
  alternating: LoopType.alternate,
};

/** What regions say each for itself. */
export function regionColumns(
  values: ValuesInForce,
  recipes: readonly VoiceRecipe[],
  recipe: Int32Array,
  { samples }: SoundOptions,
): Columns {
  const { instrument } = values;
  const count = instrument.regions.length;
  const numbers = (name: string, without: number) => values.numbers(name, new Float64Array(count), without);
  const columns: Columns = {
    ...samplesOf(instrument),
    rootKey: Float64Array.from(instrument.regions, (region) => instrument.rootKey(region)),
    tuneCents: numbers('tune', 0),
    volumeDb: numbers('volume', 0),
    panPercent: numbers('pan', 0),
    offset: numbers('offset', 0),
    end: numbers('end', -1),
    loopStart: numbers('loop_start', -1),
    loopEnd: numbers('loop_end', -1),
    loopMode: values.words('loop_mode', loopModes, new Uint8Array(count), LoopMode.unset),
    loopType: Uint8Array.from(recipe, (number) => Math.max(0, recipes[number].loopType)),
  };
  const keyCentres = values.parameters(Parameter.pitch_keycenter);
  for (let region = 0; region < count; region++) {
    const facts = factsOf(columns, region, samples);
    takeFileLoop(columns, region, facts, recipes[recipe[region]].loopType);
    const parameter = keyCentres?.[region] ?? -1;
    if (parameter < 0 || instrument.valueText(parameter).trim().toLowerCase() !== 'sample') continue;
    const root = facts?.rootKey ?? null;
    columns.rootKey[region] =
      root === null ? choice.rootUnknown.value : root + (facts?.fineTuneCents ?? 0) / 100;
  }
  settleLoopModes(columns.loopMode, values, recipes, recipe);
  return columns;
}

function samplesOf(instrument: Instrument): Pick<Columns, 'sample' | 'samples'> {
  const numbers = new Map<string, number>();
  const sample = Int32Array.from(instrument.regions, (region) => {
    const path = instrument.samplePath(region);
    if (path === undefined) return noSample;
    if (path.startsWith('*')) {
      const word = path.slice(1).trim().toLowerCase();
      const generator = generators.findIndex((name) => name === (word === 'tri' ? 'triangle' : word));
      return generator < 0 ? noSample : -1 - generator;
    }
    const number = numbers.get(path) ?? numbers.size;
    numbers.set(path, number);
    return number;
  });
  return { sample, samples: [...numbers.keys()] };
}

function factsOf(
  { sample, samples }: Columns,
  region: number,
  lookup: SoundOptions['samples'],
): SampleFacts | undefined {
  const state = lookup && sample[region] >= 0 ? lookup.state(samples[sample[region]]) : undefined;
  if (state?.kind !== 'file' && state?.kind !== 'otherCase') return undefined;
  return state.reading?.kind === 'facts' ? state.reading.facts : undefined;
}

/** The file's first loop counts where the text does not say. */
function takeFileLoop(
  columns: Columns,
  region: number,
  facts: SampleFacts | undefined,
  ownType: number,
): void {
  const loop = facts?.loops[0];
  if (columns.loopMode[region] === LoopMode.unset)
    columns.loopMode[region] = loop ? LoopMode.loopContinuous : LoopMode.noLoop;
  if (!loop) return;
  if (columns.loopStart[region] < 0) columns.loopStart[region] = loop.start;
  if (columns.loopEnd[region] < 0) columns.loopEnd[region] = loop.end;
  if (ownType < 0) columns.loopType[region] = fileLoopTypes[loop.type];
}

/** `count` plays through; so do release regions, unless a loop is asked for in so many words. */
function settleLoopModes(
  loopMode: Uint8Array,
  values: ValuesInForce,
  recipes: readonly VoiceRecipe[],
  recipe: Int32Array,
): void {
  const count = loopMode.length;
  const triggers = values.words('trigger', ['release', 'release_key'], new Uint8Array(count), 2);
  const asked = values.words('loop_mode', loopModes, new Uint8Array(count), LoopMode.unset);
  for (let region = 0; region < count; region++) {
    const isRelease = triggers[region] < 2 && asked[region] !== LoopMode.loopContinuous;
    if (isRelease || recipes[recipe[region]].sampleCount > 0) loopMode[region] = LoopMode.oneShot;
  }
}
