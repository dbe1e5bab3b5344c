import type { FileKind, Files, FolderEntry, Refusal } from '../../model/files';
import { folderOf, isWithin, joinPath, nameOf } from '../../model/paths';

/** The names in one folder. */
export class FolderNames {
  readonly kinds: Map<string, FolderEntry['kind']>;
  /** FolderNames by their lower-case spelling; made when it is first needed. */
  #lower: Map<string, string> | undefined;

  constructor(entries: readonly FolderEntry[]) {
    this.kinds = new Map();
    for (const { name, kind } of entries) this.kinds.set(name, kind);
  }

  /** A name as it is spelt here, if it is here when letter case is ignored. */
  spelt(name: string): string | undefined {
    if (this.kinds.has(name)) return name;
    if (!this.#lower) {
      this.#lower = new Map();
      for (const one of this.kinds.keys()) this.#lower.set(one.toLowerCase(), one);
    }
    return this.#lower.get(name.toLowerCase());
  }
}

/** Where a host gives the same list again, what was made of it holds: a folder of all samples is asked of by many. */
const known = new WeakMap<readonly FolderEntry[], FolderNames>();

function namesIn(entries: readonly FolderEntry[]): FolderNames {
  const names = known.get(entries) ?? new FolderNames(entries);
  known.set(entries, names);
  return names;
}

/** What is known of a folder; one that is closed is there, but does not tell its names. */
type Listing = FolderNames | 'closed' | 'missing';

/** What stands at a path. `unknown`: its folder has not been listed yet. */
export type PathState =
  | { kind: 'unknown' }
  | { kind: 'missing' }
  | { kind: 'file' | 'folder' }
  | { kind: 'otherCase'; actual: string }
  | { kind: 'refused'; refusal: Refusal };

function entryOf(kind: FileKind): PathState {
  return kind === 'special' ? { kind: 'refused', refusal: kind } : { kind };
}

/**
 * What folders hold, listed once and remembered until told of a change. Questions are answered without waiting;
 * the folders that an answer lacked are listed by {@link loadWanted}.
 */
export class FolderIndex {
  readonly #files: Files;
  readonly #listings = new Map<string, Listing>();
  readonly #wanted = new Set<string>();
  /** What stands in closed folders, asked one by one. */
  readonly #single = new Map<string, PathState>();
  readonly #wantedSingle = new Set<string>();
  /** Counts what was told of changes: what was under way meanwhile may be out of date and is not kept. */
  #changes = 0;

  constructor(files: Files) {
    this.#files = files;
  }

  /** Whether questions were asked that folders not listed yet could answer. */
  get wants(): boolean {
    return this.#wanted.size > 0 || this.#wantedSingle.size > 0;
  }

  /** Lists the folders that were asked about; where there is none, those around it too, until one is there. */
  async loadWanted(): Promise<void> {
    const changes = this.#changes;
    const wanted = [...this.#wanted];
    const single = [...this.#wantedSingle];
    this.#wanted.clear();
    this.#wantedSingle.clear();
    const seen = new Set<string>();
    const look = async (wantedFolder: string) => {
      for (
        let folder = wantedFolder;
        !seen.has(folder) && !this.#listings.has(folder);
        folder = folderOf(folder)
      ) {
        seen.add(folder);
        const listing = await this.#list(folder);
        if (changes !== this.#changes) return;
        this.#listings.set(folder, listing);
        if (listing !== 'missing') return;
      }
    };
    await Promise.all([
      ...wanted.map(look),
      ...single.map(async (path) => {
        const entry = await this.#lookAt(path);
        if (changes === this.#changes) this.#single.set(path, entry);
      }),
    ]);
  }

  async #list(folder: string): Promise<Listing> {
    const entries = await this.#files.list(folder);
    if (entries) return namesIn(entries);
    return (await this.#files.refusal?.(folder)) ? 'closed' : 'missing';
  }

  async #lookAt(path: string): Promise<PathState> {
    const stat = await this.#files.stat(path);
    if (stat) return entryOf(stat.kind);
    const refusal = await this.#files.refusal?.(path);
    return refusal ? { kind: 'refused', refusal } : { kind: 'missing' };
  }

  /** What stands at an absolute, tidy path. */
  entry(path: string): PathState {
    const folder = folderOf(path);
    const listing = this.#listing(folder);
    if (listing === 'unknown') return { kind: 'unknown' };
    if (listing === 'closed') return this.#inClosed(path);
    const kind = listing === 'missing' ? undefined : listing.kinds.get(nameOf(path));
    if (kind) return entryOf(kind);
    const actual = this.#otherCase(path);
    if (actual === 'unknown') return { kind: 'unknown' };
    return actual === undefined ? { kind: 'missing' } : { kind: 'otherCase', actual };
  }

  /**
   * What is known of all that stands in a folder, asking as {@link entry} does. `missing`: nothing is there, as the folder is
   * not; `closed`: each name is to be asked about.
   */
  contents(folder: string): FolderNames | 'missing' | 'unknown' | 'closed' {
    const listing = this.#listing(folder);
    if (listing !== 'missing') return listing;
    const actual = this.#otherCase(folder);
    if (actual === undefined) return 'missing';
    return actual === 'unknown' ? actual : 'closed';
  }

  /** The folders that were asked about and listed, those that are not there included. */
  get listed(): Iterable<string> {
    return this.#listings.keys();
  }

  /** The files and folders in a folder, listed where it was not yet; `undefined` when it is not there. */
  async fetchNames(folder: string): Promise<ReadonlyMap<string, FileKind> | undefined> {
    const names = this.names(folder);
    if (names || this.#listings.has(folder)) return names;
    await this.loadWanted();
    return this.names(folder);
  }

  /** The files and folders in a folder; `undefined` while it is not listed or when it is not there. */
  names(folder: string): ReadonlyMap<string, FileKind> | undefined {
    const listing = this.#listing(folder);
    return typeof listing === 'string' ? undefined : listing.kinds;
  }

  /** Forgets what is known of the folder around a path, and of the path as a folder with all below it. */
  forget(path: string): void {
    this.#changes++;
    this.#listings.delete(folderOf(path));
    for (const [folder, listing] of this.#listings) {
      // What was missing may have come with a folder further out.
      if (isWithin(path, folder) || (listing === 'missing' && isWithin(folder, path)))
        this.#listings.delete(folder);
    }
    for (const known of this.#single.keys()) if (isWithin(path, known)) this.#single.delete(known);
  }

  /** Lists the folders that are known anew; answers the paths at which something else stands now. */
  async lookAgain(): Promise<string[]> {
    const others: string[] = [];
    const look = async ([folder, before]: [string, Listing]) => {
      const now = await this.#list(folder);
      // What was told of meanwhile is looked up anyway.
      if (this.#listings.get(folder) !== before) return;
      if (typeof before !== 'string' && typeof now !== 'string') {
        for (const [name, kind] of now.kinds)
          if (before.kinds.get(name) !== kind) others.push(joinPath(folder, name));
        for (const name of before.kinds.keys()) if (!now.kinds.has(name)) others.push(joinPath(folder, name));
      } else if (before !== now) others.push(folder);
    };
    await Promise.all([...this.#listings].map(look));
    return others;
  }

  /** Forgets everything. */
  forgetAll(): void {
    this.#changes++;
    this.#listings.clear();
    this.#single.clear();
  }

  #listing(folder: string): Listing | 'unknown' {
    const listing = this.#listings.get(folder);
    if (listing) return listing;
    this.#wanted.add(folder);
    return 'unknown';
  }

  #inClosed(path: string): PathState {
    const entry = this.#single.get(path);
    if (entry) return entry;
    this.#wantedSingle.add(path);
    return { kind: 'unknown' };
  }

  /** The path as it is spelt on the disk, where it is there in another letter case. */
  #otherCase(path: string): string | undefined | 'unknown' {
    const folder = folderOf(path);
    if (folder === path) return undefined;
    let actualFolder = folder;
    let listing = this.#listing(folder);
    if (listing === 'missing') {
      if (folder === '/' || folder === '') return undefined;
      const other = this.#otherCase(folder);
      if (other === 'unknown' || other === undefined) return other;
      actualFolder = other;
      listing = this.#listing(actualFolder);
    }
    if (listing === 'unknown') return 'unknown';
    if (listing === 'missing') return undefined;
    if (listing === 'closed') {
      const { kind } = this.#inClosed(joinPath(actualFolder, nameOf(path)));
      if (kind === 'unknown') return 'unknown';
      return kind === 'file' || kind === 'folder' ? joinPath(actualFolder, nameOf(path)) : undefined;
    }
    const name = listing.spelt(nameOf(path));
    return name === undefined ? undefined : joinPath(actualFolder, name);
  }
}
