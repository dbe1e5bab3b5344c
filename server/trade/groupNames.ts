import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { keyOfNoteName } from '../model/keys';
import { Parameter } from '../model/parameterNames';
import { nameOf } from '../model/paths';
import { nameKinds } from './nameParts';

const isRoundRobin = nameKinds.find(({ kind }) => kind === 'round_robins')?.labelOf;

const known = new WeakMap<Instrument, GroupNames>();

/** Names for the groups of an instrument that carry no label, made once for each instrument. */
export function groupNames(instrument: Instrument): GroupNames {
  let names = known.get(instrument);
  if (!names) {
    names = new GroupNames(instrument);
    known.set(instrument, names);
  }
  return names;
}

/**
 * Names groups without a label by what the names of their samples share, such as `Snare 2` or `Conga low`; what the
 * samples of the whole instrument share is left out where something remains. No two groups have one name.
 */
export class GroupNames {
  readonly #names = new Map<number, string>();
  readonly #numbers = new Map<number, number>();

  constructor(instrument: Instrument) {
    for (let header = 0; header < instrument.headers.count; header++) {
      if (instrument.kind(header) === HeaderKind.group) this.#numbers.set(header, this.#numbers.size + 1);
    }
    const groups = samplesOfGroups(instrument);
    const all = new SharedWords();
    for (const samples of groups.values()) for (const { words } of samples) all.add(words);
    const labelOf = (header: number) => {
      const parameter = instrument.effective(header, Parameter.group_label);
      return parameter < 0 ? '' : instrument.valueText(parameter).trim();
    };
    const taken = new Set([...groups.keys()].flatMap((header) => labelOf(header) || []));
    for (const [header, samples] of groups) {
      if (labelOf(header)) continue;
      const name = sharedName(samples, groups.size > 1 ? all.words : []);
      if (name === '') continue;
      const own = taken.has(name) ? `${name}, group ${this.#numbers.get(header)}` : name;
      taken.add(own);
      this.#names.set(header, own);
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

/** The samples of the regions of each group header, in the order of the text. */
function samplesOfGroups(instrument: Instrument): Map<number, NamedSample[]> {
  const groups = new Map<number, NamedSample[]>();
  for (const region of instrument.regions) {
    const group = instrument.enclosing(region, HeaderKind.group);
    const parameter = instrument.sampleParameter[region];
    if (group < 0 || parameter < 0) continue;
    const path = instrument.valueText(parameter).replaceAll('\\', '/');
    if (path.startsWith('*')) continue;
    const sample = { words: wordsOf(nameOf(path)), folder: path.split('/').at(-2) ?? '' };
    const samples = groups.get(group);
    if (samples) samples.push(sample);
    else groups.set(group, [sample]);
  }
  return groups;
}

/** What the names of samples share beside the words given, else the folder that they share; empty where there is nothing. */
function sharedName(samples: readonly NamedSample[], common: readonly string[]): string {
  const shared = new SharedWords();
  for (const { words } of samples) shared.add(words);
  const said = shared.words.filter((word) => keyOfNoteName(word) === undefined && !isRoundRobin?.(word));
  const own = said.filter((word) => !common.some((other) => isSame(word, other)));
  const words = own.some((word) => /\p{L}/u.test(word)) ? own : said;
  const [first] = samples;
  const isOneFolder = samples.every(({ folder }) => folder === first.folder);
  const name = words.some((word) => /\p{L}/u.test(word)) ? words.join(' ') : isOneFolder ? first.folder : '';
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** The words that lists of words share: those at their starts and ends, or at any place where all are equally long. */
class SharedWords {
  #first: readonly string[] | undefined;
  #isEven = true;
  /** How many words are the same at the start and at the end of all lists so far. */
  #start = 0;
  #end = 0;
  #same: boolean[] = [];

  add(words: readonly string[]): void {
    if (!this.#first) {
      this.#first = words;
      this.#start = words.length;
      this.#end = words.length;
      this.#same = words.map(() => true);
      return;
    }
    const first = this.#first;
    this.#isEven &&= words.length === first.length;
    if (this.#isEven)
      for (let at = 0; at < first.length; at++) this.#same[at] &&= isSame(words[at], first[at]);
    this.#start = Math.min(this.#start, words.length);
    for (let at = 0; at < this.#start; at++) if (!isSame(words[at], first[at])) this.#start = at;
    this.#end = Math.min(this.#end, words.length - this.#start);
    for (let at = 1; at <= this.#end; at++) if (!isSame(words.at(-at), first.at(-at))) this.#end = at - 1;
  }

  get words(): string[] {
    const first = this.#first ?? [];
    if (this.#isEven) return first.filter((_, at) => this.#same[at]);
    return first.filter((_, at) => at < this.#start || at >= first.length - this.#end);
  }
}

function isSame(one: string | undefined, other: string | undefined): boolean {
  return one === other || one?.toLowerCase() === other?.toLowerCase();
}

/**
 * The words of a file name without its ending: parted by spaces, `_`, `-` and `.`, by a capital after a small letter, and
 * between a word of three letters or more and a number. `v1`, `rr2` and note names stay whole.
 */
function wordsOf(name: string): string[] {
  const point = name.lastIndexOf('.');
  const whole = point > 0 ? name.slice(0, point) : name;
  return whole
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replace(/(\p{L}{3})(\d)/gu, '$1 $2')
    .split(/[\s_.-]+/)
    .filter((word) => word !== '');
}
