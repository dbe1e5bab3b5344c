import { sampleEnding } from '../../model/fileNames';
import { nameOf } from '../../model/paths';
import { agreeingMost } from '../../workspace/samples/agreeingMost';

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
    const name = written.slice(Math.max(written.lastIndexOf('/'), written.lastIndexOf('\\')) + 1);
    return agreeingMost(this.#byLetters.get(lettersOf(name)) ?? [], written);
  }
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
