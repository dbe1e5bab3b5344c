import type { Files } from '../../model/files';
import { folderOf, joinPath, nameOf } from '../../model/paths';

/** The names in one folder; `undefined` stands for a folder that is not there. */
interface Listing {
  kinds: Map<string, 'file' | 'folder'>;
  /** Names by their lower-case spelling. */
  lower: Map<string, string>;
}

/** What stands at a path. `unknown`: its folder has not been listed yet. */
export type Entry =
  | { kind: 'unknown' }
  | { kind: 'missing' }
  | { kind: 'file' | 'folder' }
  | { kind: 'otherCase'; actual: string };

/**
 * What folders hold, listed once and remembered until told of a change. Questions are answered without waiting;
 * the folders that an answer lacked are listed by {@link loadWanted}.
 */
export class FolderIndex {
  readonly #files: Files;
  readonly #listings = new Map<string, Listing | undefined>();
  readonly #wanted = new Set<string>();
  /** Counts what was told of changes: what was under way meanwhile may be out of date and is not kept. */
  #changes = 0;

  constructor(files: Files) {
    this.#files = files;
  }

  /** Whether questions were asked that folders not listed yet could answer. */
  get wants(): boolean {
    return this.#wanted.size > 0;
  }

  /** Lists the folders that were asked about. */
  async loadWanted(): Promise<void> {
    const changes = this.#changes;
    const folders = [...this.#wanted];
    this.#wanted.clear();
    await Promise.all(
      folders.map(async (folder) => {
        const entries = await this.#files.list(folder);
        const listing = entries && {
          kinds: new Map(entries.map((entry) => [entry.name, entry.kind])),
          lower: new Map(entries.map((entry) => [entry.name.toLowerCase(), entry.name])),
        };
        if (changes === this.#changes) this.#listings.set(folder, listing);
      }),
    );
  }

  /** What stands at an absolute, tidy path. */
  entry(path: string): Entry {
    const folder = folderOf(path);
    const listing = this.#listing(folder);
    if (listing === 'unknown') return { kind: 'unknown' };
    const name = nameOf(path);
    const kind = listing?.kinds.get(name);
    if (kind) return { kind };
    const actual = this.#otherCase(path);
    if (actual === 'unknown') return { kind: 'unknown' };
    return actual === undefined ? { kind: 'missing' } : { kind: 'otherCase', actual };
  }

  /** The folders that were asked about and listed, those that are not there included. */
  get listed(): Iterable<string> {
    return this.#listings.keys();
  }

  /** The files and folders in a folder, listed where it was not yet; `undefined` when it is not there. */
  async fetchNames(folder: string): Promise<ReadonlyMap<string, 'file' | 'folder'> | undefined> {
    const names = this.names(folder);
    if (names || this.#listings.has(folder)) return names;
    await this.loadWanted();
    return this.names(folder);
  }

  /** The files and folders in a folder; `undefined` while it is not listed or when it is not there. */
  names(folder: string): ReadonlyMap<string, 'file' | 'folder'> | undefined {
    const listing = this.#listing(folder);
    return listing === 'unknown' ? undefined : listing?.kinds;
  }

  /** Forgets what is known of the folder around a path, and of the path as a folder with all below it. */
  forget(path: string): void {
    this.#changes++;
    this.#listings.delete(folderOf(path));
    for (const folder of this.#listings.keys()) {
      if (folder === path || folder.startsWith(`${path}/`)) this.#listings.delete(folder);
    }
    // A folder that was missing may have come with a folder further out.
    for (const [folder, listing] of this.#listings) {
      if (!listing && path.startsWith(folder)) this.#listings.delete(folder);
    }
  }

  /** Forgets everything. */
  forgetAll(): void {
    this.#changes++;
    this.#listings.clear();
  }

  #listing(folder: string): Listing | undefined | 'unknown' {
    const listing = this.#listings.get(folder);
    if (listing || this.#listings.has(folder)) return listing;
    this.#wanted.add(folder);
    return 'unknown';
  }

  /** The path as it is spelt on the disk, where it is there in another letter case. */
  #otherCase(path: string): string | undefined | 'unknown' {
    const folder = folderOf(path);
    if (folder === path) return undefined;
    let listing = this.#listing(folder);
    if (listing === 'unknown') return 'unknown';
    let actualFolder = folder;
    if (!listing) {
      if (folder === '/' || folder === '') return undefined;
      const other = this.#otherCase(folder);
      if (other === 'unknown' || other === undefined) return other;
      actualFolder = other;
      listing = this.#listing(actualFolder);
      if (listing === 'unknown') return 'unknown';
    }
    const name = listing?.kinds.has(nameOf(path))
      ? nameOf(path)
      : listing?.lower.get(nameOf(path).toLowerCase());
    return name === undefined ? undefined : joinPath(actualFolder, name);
  }
}
