import { HeaderKind } from '../../../model/headerKinds';
import type { Instrument } from '../../../model/instrument';
import type { Control } from '../../../model/instrumentParts';
import { isAbsolutePath } from '../../../model/paths';
import type { SampleState } from '../../../model/samples';
import type { Steps } from '../../../model/steps';
import { finish, piecesInStep } from '../../../model/steps';
import { ownText } from '../../../model/text/ownText';
import type { CheckContext } from '../../rule';
import { KnownUses, rememberUses } from './knownUses';
import { sampleFactsOf, usableFactsOf } from './sampleFacts';
import type { SamplePathFacts, SampleUses, UsedSample } from './sampleUse';
import { SampleUse } from './sampleUse';

const nothing: SampleState = { kind: 'pending' };
/** Regions up to which the uses of samples are kept for the next check. More of them are not read at each keystroke anyhow. */
const mostRemembered = 500_000;
const known = new WeakMap<CheckContext, SampleUses>();

/** The samples that the regions of an instrument use, looked up once in a check. */
export function sampleUsesOf(context: CheckContext): SampleUses {
  return known.get(context) ?? finish(sampleUsesInSteps(context));
}

/** As {@link sampleUsesOf}, in steps. */
export function* sampleUsesInSteps(context: CheckContext): Steps<SampleUses> {
  const uses = known.get(context) ?? (yield* collect(context));
  known.set(context, uses);
  return uses;
}

function* collect({ instrument, samples }: CheckContext): Steps<SampleUses> {
  const { regions, sampleParameter } = instrument;
  const { version } = samples;
  const uses: SampleUse[] = [];
  const doubtful: SampleUse[] = [];
  const useOfRegion = new Int32Array(regions.length).fill(-1);
  const mayHoldVariables = instrument.findings.some(({ code }) => code === 'define-unknown');
  const embedded = embeddedNames(instrument);
  const isRemembered = !mayHoldVariables && !embedded && regions.length <= mostRemembered;
  const before = isRemembered ? new KnownUses(instrument, samples) : undefined;
  const numbers = before?.numbers ?? new Map<string, number>();
  const defaultPaths = new DefaultPaths();
  const isFile = (path: string) =>
    path !== '' && path[0] !== '*' && !(mayHoldVariables && path.includes('$')) && !embedded?.has(path);
  // What is not remembered may hold on to the text.
  const own = isRemembered ? ownText : (stretch: string) => stretch;
  const used = new UsedSamples(numbers, own, (path) => (isFile(path) ? samples.state(path) : undefined));
  const make = (parameter: number, region: number): SampleUse => {
    const written = instrument.valueText(parameter);
    const defaultPath = defaultPaths.of(instrument.control(region));
    const path = instrument.samplePath(region) as string;
    return new SampleUse(parameter, region, used.of(path, written, defaultPath));
  };
  /** The latest use of each parameter; a later `<control>` can give the same parameter another path. */
  const latest = new Map<number, number>();
  let lastParameter = -1;
  let lastUse = -1;
  for (let number = 0; number < regions.length; number++) {
    if (number % piecesInStep === piecesInStep - 1) yield number / regions.length;
    const region = regions[number];
    const parameter = sampleParameter[region];
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
    lastUse = uses.length;
    lastParameter = parameter;
    useOfRegion[number] = lastUse;
    if (!isOwn) latest.set(parameter, lastUse);
    const use = before?.next(parameter, region) ?? make(parameter, region);
    uses.push(use);
    if (use.isDoubtful) doubtful.push(use);
  }
  const all = { uses, doubtful, useOfRegion, regions, paths: numbers };
  // What became known of samples between the steps would be remembered as if all of it had been known.
  return isRemembered && samples.version === version ? rememberUses(samples, all, numbers) : all;
}

/** What values lead to, and numbers of paths; one that is made for a path stands for all regions that play it by the same value. */
class UsedSamples {
  readonly #numbers: Map<string, number>;
  readonly #own: (stretch: string) => string;
  readonly #stateOf: (path: string) => SampleState | undefined;
  readonly #firsts: (UsedSample | undefined)[] = [];
  #lastFound: SamplePathFacts | undefined;

  /** `own` gives a text as it is to be kept. `stateOf` answers `undefined` for a path that is not that of a file. */
  constructor(
    numbers: Map<string, number>,
    own: (stretch: string) => string,
    stateOf: (path: string) => SampleState | undefined,
  ) {
    this.#numbers = numbers;
    this.#own = own;
    this.#stateOf = stateOf;
  }

  of(path: string, value: string, defaultPath: string): UsedSample {
    const known = this.#numbers.get(path);
    const first = known === undefined ? undefined : this.#firsts[known];
    if (first && first.value === value && first.found.defaultPath === defaultPath) return first;
    const number = known ?? this.#numbers.size;
    const own = first?.path ?? this.#own(path);
    const ownValue = value === path ? own : this.#own(value);
    const made = { value: ownValue, path: own, number, found: this.#found(own, defaultPath) };
    if (known === undefined) this.#numbers.set(own, number);
    while (this.#firsts.length < number) this.#firsts.push(undefined);
    this.#firsts[number] = made;
    return made;
  }

  #found(path: string, defaultPath: string): SamplePathFacts {
    const found = this.#stateOf(path);
    const isFile = found !== undefined;
    const state = found ?? nothing;
    const isDoubtful = isFile ? !isPlainFile(path, state) : path === '';
    const lastFrame = isFile ? (usableFactsOf(state)?.frames ?? Number.NaN) - 1 : Number.NaN;
    const last = this.#lastFound;
    if (
      last?.state === state &&
      last.isFile === isFile &&
      last.isDoubtful === isDoubtful &&
      last.defaultPath === defaultPath
    )
      return last;
    this.#lastFound = { defaultPath, isFile, state, lastFrame, isDoubtful };
    return this.#lastFound;
  }
}

/** The default paths of controls, as strings of their own. */
class DefaultPaths {
  #control: Control | undefined;
  #path = '';

  of(control: Control): string {
    if (control !== this.#control) {
      this.#control = control;
      this.#path = ownText(control.defaultPath);
    }
    return this.#path;
  }
}

function isPlainFile(path: string, state: SampleState): boolean {
  if (state.kind === 'pending') return !isAbsolutePath(path) && !path.includes('\0') && !path.endsWith('/');
  if (state.kind !== 'file' || state.reading?.kind === 'unreadable' || isAbsolutePath(path)) return false;
  return (sampleFactsOf(state)?.problems.length ?? 0) === 0 && !path.includes('\0') && !path.endsWith('/');
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
