import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import { keyOfNoteName } from '../../model/keys';
import { Parameter } from '../../model/parameterNames';
import { nameWithoutEnding } from '../../model/paths';
import type { Steps } from '../../model/steps';
import { finish } from '../../model/steps';
import { nameKinds } from './nameParts';
import { isSameWord, SharedWords, wordsOfName } from './nameWords';

const isRoundRobin = nameKinds.find(({ kind }) => kind === 'round_robins')?.labelOf;

const known = new WeakMap<Instrument, GroupNames>();

/** Names for the groups of an instrument that carry no label, made once for each instrument. */
export function groupNames(instrument: Instrument): GroupNames {
  return known.get(instrument) ?? finish(groupNamesInSteps(instrument));
}

/** As {@link groupNames}, in steps. */
export function* groupNamesInSteps(instrument: Instrument): Steps<GroupNames> {
  let names = known.get(instrument);
  if (!names) {
    names = new GroupNames();
    yield* names.collect(instrument);
    known.set(instrument, names);
  }
  return names;
}

/** Names of samples that are looked at in a step. */
const namesInStep = 1024;

/**
 * Names groups without a label by what the names of their samples share, such as `Snare 2` or `Conga low`; what the
 * samples of the whole instrument share is left out where something remains. No two groups have one name.
 */
export class GroupNames {
  readonly #names = new Map<number, string>();
  readonly #numbers = new Map<number, number>();

  /** Works the names out; none is known before. */
  *collect(instrument: Instrument): Steps<void> {
    for (let header = 0; header < instrument.headers.count; header++) {
      if (instrument.kind(header) === HeaderKind.group) this.#numbers.set(header, this.#numbers.size + 1);
    }
    const paths = yield* samplePaths(instrument);
    const labelOf = (header: number) => {
      const parameter = instrument.effective(header, Parameter.group_label);
      return parameter < 0 ? '' : instrument.valueText(parameter).trim();
    };
    const taken = new Set([...paths.keys()].map(labelOf));
    if (!taken.has('')) return;
    const groups: [header: number, samples: NamedSample[]][] = [];
    const all = new SharedWords();
    let looked = 0;
    for (const [header, own] of paths) {
      const samples: NamedSample[] = [];
      for (const path of own) {
        const sample = namedSample(path);
        samples.push(sample);
        all.add(sample.words);
        if (++looked % namesInStep === 0) yield looked / instrument.regions.length;
      }
      groups.push([header, samples]);
    }
    for (const [header, samples] of groups) {
      looked += samples.length;
      if (looked > namesInStep) {
        looked = 0;
        yield 1;
      }
      if (labelOf(header)) continue;
      const name = sharedName(samples, groups.length > 1 ? all.words : []);
      if (name === '') continue;
      const unique = taken.has(name) ? `${name}, group ${this.#numbers.get(header)}` : name;
      taken.add(unique);
      this.#names.set(header, unique);
    }
  }

  /** The name of a group header without a label; `undefined` where its samples share nothing, and for other headers. */
  nameOf(group: number): string | undefined {
    return this.#names.get(group);
  }

  /** The position of a group header among the groups, counted from 1. */
  numberOf(group: number): number {
    return this.#numbers.get(group) ?? 0;
  }
}

interface NamedSample {
  words: string[];
  folder: string;
}

function namedSample(path: string): NamedSample {
  return { words: wordsOfName(nameWithoutEnding(path)), folder: path.split('/').at(-2) ?? '' };
}

/** The paths of the samples of each group header's regions, with `/`, in the order of the text. */
function* samplePaths(instrument: Instrument): Steps<Map<number, string[]>> {
  const groups = new Map<number, string[]>();
  for (const [at, region] of instrument.regions.entries()) {
    if (at % namesInStep === namesInStep - 1) yield at / instrument.regions.length;
    const group = instrument.enclosing(region, HeaderKind.group);
    const parameter = instrument.sampleParameter[region];
    if (group < 0 || parameter < 0) continue;
    const path = instrument.valueText(parameter).replaceAll('\\', '/');
    if (path.startsWith('*')) continue;
    const paths = groups.get(group);
    if (paths) paths.push(path);
    else groups.set(group, [path]);
  }
  return groups;
}

/** What the names of samples share beside the words given, else the folder that they share; empty where there is nothing. */
function sharedName(samples: readonly NamedSample[], common: readonly string[]): string {
  const shared = new SharedWords();
  for (const { words } of samples) shared.add(words);
  const said = shared.words.filter((word) => keyOfNoteName(word) === undefined && !isRoundRobin?.(word));
  const own = said.filter((word) => !common.some((other) => isSameWord(word, other)));
  const words = own.some((word) => /\p{L}/u.test(word)) ? own : said;
  const [first] = samples;
  const isOneFolder = samples.every(({ folder }) => folder === first.folder);
  const name = words.some((word) => /\p{L}/u.test(word)) ? words.join(' ') : isOneFolder ? first.folder : '';
  return name.charAt(0).toUpperCase() + name.slice(1);
}
