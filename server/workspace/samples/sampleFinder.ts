import { sampleEnding } from '../../model/fileNames';
import type { Files } from '../../model/files';
import { nameOf, relativePath } from '../../model/paths';
import type { SampleFacts } from '../../model/samples';
import { editDistance, nearestWords } from '../../model/text/nearest';
import { decodedName } from '../../trade/names/decodedName';
import { agreeingMost } from './agreeingMost';
import { SampleStore } from './sampleStore';

/**
 * How the name in a table and the name of the file agree: in full; but for letter case; but for the ending; but for
 * blanks, signs and accents; or nearly, so that the file is likely to be the one that is meant.
 */
export type SampleMatch = 'exact' | 'case' | 'ending' | 'characters' | 'nearest';

/** Whether there are so many files that near names are not looked for, so that one table leaves nothing behind for the next. */
export function isLarge(files: number): boolean {
  return files > mostFiles;
}

/** What was found for a name. */
export interface FoundSample {
  /** The files that the name can mean, the likeliest first; empty where none is like it enough to be taken. */
  paths: readonly string[];
  /** `undefined` where no file is taken. */
  match: SampleMatch | undefined;
  /** Where no file bears the name: those whose names are most like it, the nearest first. */
  nearest: readonly string[];
}

/** Near names are looked for among so many files, and for so many names of a table. */
const mostFiles = 20_000;
const mostNames = 100;
const mostNearest = 5;

/**
 * Finds files by the names that a table gives: with its folders, by name alone, in another letter case, with another
 * ending or none, with other signs between the words, and by the nearest name.
 */
export class SampleFinder {
  readonly #byName = new Map<string, string[]>();
  readonly #byStem = new Map<string, string[]>();
  readonly #near: readonly string[];
  /** By what is left of a name without signs and accents; made when it is first needed. */
  #byLetters: Map<string, string[]> | undefined;
  readonly #found = new Map<string, FoundSample>();
  #nearNames = 0;

  /** `paths` are absolute; of several files that bear one name the nearest to `folder` comes first. */
  constructor(paths: readonly string[], folder: string) {
    const distances = new Map(paths.map((path) => [path, relativePath(folder, path).split('/').length]));
    this.#near = [...paths].sort((a, b) => (distances.get(a) ?? 0) - (distances.get(b) ?? 0));
    for (const path of this.#near) {
      const name = nameOf(path).toLowerCase();
      add(this.#byName, name, path);
      add(this.#byStem, stemOf(name), path);
    }
  }

  /** What a name of a table leads to. The same name gets the same answer. */
  look(name: string): FoundSample {
    let found = this.#found.get(name);
    if (!found) {
      found = this.#look(name.replaceAll('\\', '/'));
      this.#found.set(name, found);
    }
    return found;
  }

  /** The files that a name can mean, the likeliest first. */
  find(name: string): readonly string[] {
    return this.look(name).paths;
  }

  /** What the headers of the files say, by the names in the table. */
  async facts(files: Files, names: Iterable<string>): Promise<Map<string, SampleFacts>> {
    const store = new SampleStore(files);
    const paths = new Map<string, string>();
    for (const name of names) {
      const path = this.find(name)[0];
      if (path === undefined) continue;
      paths.set(name, path);
      store.reading(path);
    }
    await store.loadWanted();
    const facts = new Map<string, SampleFacts>();
    for (const [name, path] of paths) {
      const reading = store.reading(path);
      if (reading?.kind === 'facts') facts.set(name, reading.facts);
    }
    return facts;
  }

  #look(written: string): FoundSample {
    if (written.startsWith('*')) return nothing;
    const literal = this.#named(written);
    const decoded = literal ? undefined : decodedName(written);
    const found = literal ?? (decoded === undefined ? undefined : this.#named(decoded));
    if (found) return found;
    const name = nameOf(written);
    const lower = name.toLowerCase();
    const stem = this.#byStem.get(lower) ?? this.#byStem.get(stemOf(lower));
    if (stem) return taken(agreeingMost(stem, written), 'ending');
    const letters = lettersOf(name);
    const sameLetters = letters === '' ? undefined : this.#letters().get(letters);
    if (sameLetters) return taken(agreeingMost(sameLetters, written), 'characters');
    return this.#nearest(name);
  }

  /** The files that bear a name, in its letter case if any does. */
  #named(written: string): FoundSample | undefined {
    const name = nameOf(written);
    const named = this.#byName.get(name.toLowerCase());
    if (!named) return undefined;
    const fitting = agreeingMost(named, written);
    const exact = fitting.filter((path) => nameOf(path) === name);
    return taken(exact.length > 0 ? exact : fitting, exact.length > 0 ? 'exact' : 'case');
  }

  #letters(): Map<string, string[]> {
    if (!this.#byLetters) {
      this.#byLetters = new Map();
      for (const path of this.#near) add(this.#byLetters, lettersOf(nameOf(path)), path);
    }
    return this.#byLetters;
  }

  #nearest(name: string): FoundSample {
    if (isLarge(this.#near.length) || this.#nearNames >= mostNames || name.length > 200) return nothing;
    this.#nearNames++;
    const letters = this.#letters();
    const words = nearestWords(lettersOf(name), letters.keys(), mostNearest);
    const nearest = words.flatMap((word) => letters.get(word) ?? []).slice(0, mostNearest);
    const likely = nearest.filter((path) => isSlip(name, nameOf(path)));
    if (likely.length === 0) return { paths: [], match: undefined, nearest };
    return { paths: likely, match: 'nearest', nearest };
  }
}

const nothing: FoundSample = { paths: [], match: undefined, nearest: [] };

function taken(paths: readonly string[], match: SampleMatch): FoundSample {
  return { paths, match, nearest: [] };
}

function stemOf(name: string): string {
  return name.replace(sampleEnding, '');
}

/** A name without its ending, accents and signs between words; a sharp may also be written `s`. */
function lettersOf(name: string): string {
  return stemOf(name)
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .replace(/[#♯]/g, 's')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '');
}

/**
 * Whether two names differ by a slip in one long word only. Short words and numbers, which tell keys, layers and round
 * robins apart, have to be the same.
 */
function isSlip(one: string, other: string): boolean {
  const left = wordsOf(one);
  const right = wordsOf(other);
  if (left.length !== right.length) return false;
  const differing = left.flatMap((word, at) => (word === right[at] ? [] : [[word, right[at]] as const]));
  const [words] = differing;
  if (!words || differing.length > 1) return false;
  const shortest = Math.min(words[0].length, words[1].length);
  const isWord = words.every((word) => /^\p{L}+$/u.test(word));
  return isWord && shortest >= 4 && editDistance(words[0], words[1], 2) <= (shortest >= 8 ? 2 : 1);
}

function wordsOf(name: string): string[] {
  const plain = stemOf(name)
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase();
  return plain.match(/\p{L}+[#♯]?|\p{N}+/gu) ?? [];
}

function add(map: Map<string, string[]>, key: string, path: string): void {
  const list = map.get(key);
  if (list) list.push(path);
  else map.set(key, [path]);
}
