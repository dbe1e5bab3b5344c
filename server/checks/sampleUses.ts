import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import type { SampleFacts, SampleState } from '../model/samples';
import type { CheckContext } from './rule';

/** A `sample` parameter with the path that it makes with the `default_path` in force. */
export interface SampleUse {
  parameter: number;
  /** The first region that it is in force in. */
  region: number;
  /** The path relative to the folder of the instrument file, with `/`. */
  path: string;
  /** Whether the path is that of a file: no generator, not empty, and without an unknown variable. */
  isFile: boolean;
  state: SampleState;
}

/** The samples that regions use. */
export interface SampleUses {
  uses: readonly SampleUse[];
  /** The position in {@link uses} for each region in the order of `Instrument.regions`; −1 without a sample. */
  useOfRegion: Int32Array;
}

const nothing: SampleState = { kind: 'pending' };
const known = new WeakMap<CheckContext, SampleUses>();

/** The samples that the regions of an instrument use, looked up once in a check. */
export function sampleUsesOf(context: CheckContext): SampleUses {
  let uses = known.get(context);
  if (!uses) {
    uses = collect(context);
    known.set(context, uses);
  }
  return uses;
}

function collect({ instrument, samples }: CheckContext): SampleUses {
  const { regions, sampleParameter } = instrument;
  const uses: SampleUse[] = [];
  const useOfRegion = new Int32Array(regions.length).fill(-1);
  const mayHoldVariables = instrument.findings.some(({ code }) => code === 'define-unknown');
  const embedded = embeddedNames(instrument);
  /** The latest use of each parameter; a later `<control>` can give the same parameter another path. */
  const latest = new Map<number, number>();
  let lastParameter = -1;
  let lastUse = -1;
  for (let number = 0; number < regions.length; number++) {
    const region = regions[number] as number;
    const parameter = sampleParameter[region] as number;
    if (parameter < 0) continue;
    const isOwn = parameter >= instrument.firstParameter(region);
    if (!isOwn) {
      const use = parameter === lastParameter ? lastUse : latest.get(parameter);
      const made = use === undefined ? undefined : uses[use];
      if (made && instrument.control(made.region) === instrument.control(region)) {
        useOfRegion[number] = use as number;
        continue;
      }
    }
    const path = instrument.samplePath(region) as string;
    const isFile =
      path !== '' && path[0] !== '*' && !(mayHoldVariables && path.includes('$')) && !embedded?.has(path);
    lastUse = uses.length;
    lastParameter = parameter;
    useOfRegion[number] = lastUse;
    if (!isOwn) latest.set(parameter, lastUse);
    uses.push({ parameter, region, path, isFile, state: isFile ? samples.state(path) : nothing });
  }
  return { uses, useOfRegion };
}

/** Names of samples whose data stands in the instrument's text under `<sample>`; `undefined` where there are none. */
function embeddedNames(instrument: Instrument): Set<string> | undefined {
  if (!instrument.headers.kinds.subarray(0, instrument.headers.count).includes(HeaderKind.sample))
    return undefined;
  const names = new Set<string>();
  for (let header = 0; header < instrument.headers.count; header++) {
    if (instrument.kind(header) !== HeaderKind.sample) continue;
    const name = instrument.own(header, instrument.names.canonical(instrument.names.idOf('name')));
    if (name >= 0) names.add(instrument.valueText(name).replaceAll('\\', '/'));
  }
  return names;
}

/** The facts of a sample that was read whole, as far as its state gives them. */
export function factsOf(state: SampleState): SampleFacts | undefined {
  if (state.kind !== 'file' && state.kind !== 'otherCase') return undefined;
  return state.reading?.kind === 'facts' ? state.reading.facts : undefined;
}
