import { sampleEnding } from '../../model/fileNames';
import { nameOf } from '../../model/paths';

/** Finds audio files by the names that tables give them, of which folders may be another machine's. */
export class AudioIndex {
  readonly #byLetters = new Map<string, string[]>();

  constructor(paths: readonly string[]) {
    for (const path of paths) {
      const key = lettersOf(nameOf(path));
      const list = this.#byLetters.get(key);
      if (list) list.push(path);
      else this.#byLetters.set(key, [path]);
    }
  }

  /** The files that a name can mean: of those that bear it, the ones that agree with most of its folders. */
  find(written: string): readonly string[] {
    const parts = written.replaceAll('\\', '/').split('/');
    const named = this.#byLetters.get(lettersOf(parts.at(-1) ?? '')) ?? [];
    if (parts.length < 2 || named.length < 2) return named;
    const agreeing = named.map((path) => sharedFolders(path.split('/'), parts));
    const most = Math.max(...agreeing);
    return named.filter((_, at) => agreeing[at] === most);
  }
}

/** How many folders before the name are the same in two paths, from the name outwards. */
function sharedFolders(one: readonly string[], other: readonly string[]): number {
  let shared = 0;
  while (shared < Math.min(one.length, other.length) - 1) {
    const at = -2 - shared;
    if (one.at(at)?.toLowerCase() !== other.at(at)?.toLowerCase()) break;
    shared++;
  }
  return shared;
}

/** A name of a file without its ending, letter case, accents and signs between words; a sharp may also be written `s`. */
function lettersOf(name: string): string {
  const plain = name
    .replace(sampleEnding, '')
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '');
  const letters = plain
    .replace(/[#♯]/g, 's')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '');
  return letters === '' ? name : letters;
}
