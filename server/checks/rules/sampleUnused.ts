import { folderOf, nameOf } from '../../model/paths';

/**
 * The audio files in sample folders that no instrument refers to (finding `sample-unused`). A sample folder is one that holds
 * a file that an instrument refers to, with the folders below it. One that also holds an instrument file counts without the
 * folders below it, and so does one inside another's reach that holds an instrument file: what lies there belongs to that
 * instrument.
 *
 * All paths with `/` and in one form. There may be a million files, so names are kept by folder, without a path for each.
 */
export class UnusedSamples {
  /** The names of files that nothing has referred to yet, by folder. */
  readonly #unused = new Map<string, Set<string>>();
  readonly #sampleFolders = new Set<string>();
  readonly #instrumentFolders = new Set<string>();

  /** Takes in an audio file that was found. All are to be known before {@link use} is told of. */
  add(folder: string, name: string): void {
    const names = this.#unused.get(folder);
    if (names) names.add(name);
    else this.#unused.set(folder, new Set([name]));
  }

  /** Whether no audio file was found that could be unused. */
  get isEmpty(): boolean {
    return this.#unused.size === 0;
  }

  /** Says that an instrument refers to a file, in the letter case of the file. */
  use(path: string): void {
    const folder = folderOf(path);
    this.#sampleFolders.add(folder);
    this.#unused.get(folder)?.delete(nameOf(path));
  }

  /** Says that there is an instrument file. */
  addInstrument(path: string): void {
    this.#instrumentFolders.add(folderOf(path));
  }

  /** The paths of those that nothing refers to, sorted. */
  list(): string[] {
    const paths: string[] = [];
    const answers = new Map<string, boolean>();
    for (const [folder, names] of this.#unused) {
      if (!this.#isInSampleFolder(folder, answers)) continue;
      const start = folder === '' || folder.endsWith('/') ? folder : `${folder}/`;
      for (const name of names) paths.push(start + name);
    }
    return paths.sort();
  }

  #isInSampleFolder(folder: string, answers: Map<string, boolean>): boolean {
    const known = answers.get(folder);
    if (known !== undefined) return known;
    const above = folderOf(folder);
    const instruments = this.#instrumentFolders;
    const answer =
      this.#sampleFolders.has(folder) ||
      (folder !== '' &&
        above !== folder &&
        !instruments.has(folder) &&
        !instruments.has(above) &&
        this.#isInSampleFolder(above, answers));
    answers.set(folder, answer);
    return answer;
  }
}
