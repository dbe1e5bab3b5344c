import type { Files } from '../../model/files';
import { folderOf, nameOf } from '../../model/paths';
import { parseVocabulary } from '../../vocabulary/parseVocabulary';
import type { Vocabulary } from '../../vocabulary/vocabulary';
import { vocabularyEnding } from '../../vocabulary/vocabulary';
import { readWholeText } from '../files/readWhole';

/** A vocabulary that is kept in a file. */
export interface SavedVocabulary {
  /** Absolute path of the file, with `/`. */
  path: string;
  vocabulary: Vocabulary;
}

/** The vocabularies that are kept in files, read once and remembered until told of a change. */
export class VocabularyStore {
  readonly #files: Files;
  readonly #warn: (message: string) => void;
  /** By folder: the vocabularies in it. */
  readonly #inFolders = new Map<string, Promise<SavedVocabulary[]>>();

  /** `warn` is given a line about each vocabulary that makes no sense and is left out. */
  constructor(files: Files, warn: (message: string) => void) {
    this.#files = files;
    this.#warn = warn;
  }

  /** The vocabularies in a folder and in the folders around it, the nearest first. */
  async around(folder: string): Promise<SavedVocabulary[]> {
    const found: SavedVocabulary[] = [];
    for (let at = folder; at !== ''; at = at === '/' ? '' : folderOf(at)) found.push(...(await this.#in(at)));
    return found;
  }

  /** Says that a file or folder came, went or changed. */
  forget(path: string): void {
    if (nameOf(path).endsWith(vocabularyEnding)) this.#inFolders.delete(folderOf(path));
    for (const folder of this.#inFolders.keys()) {
      if (folder === path || folder.startsWith(`${path}/`)) this.#inFolders.delete(folder);
    }
  }

  /** Forgets all files. */
  forgetAll(): void {
    this.#inFolders.clear();
  }

  #in(folder: string): Promise<SavedVocabulary[]> {
    let inFolder = this.#inFolders.get(folder);
    if (!inFolder) {
      inFolder = this.#read(folder);
      this.#inFolders.set(folder, inFolder);
    }
    return inFolder;
  }

  async #read(folder: string): Promise<SavedVocabulary[]> {
    const names = ((await this.#files.list(folder)) ?? [])
      .filter(({ name, kind }) => kind === 'file' && name.endsWith(vocabularyEnding))
      .map(({ name }) => name)
      .sort();
    const found: SavedVocabulary[] = [];
    for (const name of names) {
      const path = `${folder === '/' ? '' : folder}/${name}`;
      const whole = await readWholeText(this.#files, path);
      if (whole.kind !== 'text') {
        this.#warn(`${path}: It is not a text file and is left out.`);
        continue;
      }
      const { vocabulary, problems } = parseVocabulary(whole.text);
      if (vocabulary) found.push({ path, vocabulary });
      const [problem] = problems;
      if (problem) this.#warn(`${path}: ${problem.message}${vocabulary ? '' : ' The file is left out.'}`);
    }
    return found;
  }
}
