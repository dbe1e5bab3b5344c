import type { FileStat } from '../../model/files';
import { folderOf, nameOf } from '../../model/paths';
import type { SampleFacts } from '../../model/samples';
import type { CacheLine, RememberedFile } from './measureCacheText';
import {
  cacheLine,
  cacheLineFacts,
  cacheLineMeasures,
  cacheLineParts,
  isSameState,
} from './measureCacheText';
import type { MeasureResult } from './measureRequest';

/** Where a host keeps remembered texts, each under a name of its own. */
export interface CacheStorage {
  /** The text that was written last under a name; `undefined` where there is none, or where it came to harm. Never rejects. */
  read(name: string): Promise<string | undefined>;
  /** Puts a text under a name, whole or not at all. Never rejects: what cannot be kept is found out again. */
  write(name: string, text: string): Promise<void>;
}

/** A file as its line tells of it, which is taken apart when it is asked for. */
class KeptFile implements RememberedFile {
  readonly size: number;
  readonly modified: number;
  /** Whether it was asked for since the program started. */
  isUsed = false;
  #unread: CacheLine | undefined;
  #facts: SampleFacts | undefined;
  #measures: Record<string, MeasureResult> | undefined;
  /** The line that says all of it. */
  #line: string | undefined;

  constructor({ size, modified }: Pick<FileStat, 'size' | 'modified'>, line?: CacheLine) {
    this.size = size;
    this.modified = modified;
    this.#unread = line;
  }

  get facts(): SampleFacts | undefined {
    if (!this.#facts && this.#unread) this.#facts = cacheLineFacts(this.#unread.facts);
    return this.#facts;
  }

  get measures(): Record<string, MeasureResult> {
    this.#measures ??= this.#unread ? cacheLineMeasures(this.#unread.measures) : {};
    return this.#measures;
  }

  add(facts: SampleFacts | undefined, measures: Record<string, MeasureResult> | undefined): void {
    Object.assign(this.measures, measures);
    this.#facts = facts ?? this.facts;
    this.#unread = undefined;
    this.#line = undefined;
  }

  line(name: string): string {
    this.#line ??= cacheLine(name, this);
    return this.#line;
  }
}

/** What is remembered of the files of one folder. */
interface Folder {
  files: Map<string, KeptFile>;
  isChanged: boolean;
}

/** Folders that are opened at one time. */
const openedAtOnce = 16;
/** Files remembered for one folder; past it those go that were not asked for. */
const mostFiles = 50_000;
/** Milliseconds in which changes are gathered before they are written. */
const gathered = 15_000;

/**
 * What headers and measures told of sample files, kept over restarts by path, size, time of change and version of the
 * measure. One text for each folder of samples.
 */
export class MeasureCache {
  readonly #storage: CacheStorage;
  readonly #folders = new Map<string, Folder>();
  readonly #opening = new Map<string, Promise<Folder>>();
  #timer: ReturnType<typeof setTimeout> | undefined;
  #saving = Promise.resolve();

  constructor(storage: CacheStorage) {
    this.#storage = storage;
  }

  /** Makes {@link known} answer for files in some folders. */
  async open(folders: Iterable<string>): Promise<void> {
    const unopened = [...folders].filter((folder) => !this.#folders.has(folder));
    let next = 0;
    const work = async () => {
      while (next < unopened.length) await this.#open(unopened[next++]);
    };
    await Promise.all(Array.from({ length: Math.min(openedAtOnce, unopened.length) }, work));
  }

  /** What is remembered of a file in its present state, in a folder that was opened. */
  known(path: string, stat: FileStat): RememberedFile | undefined {
    const folder = this.#folders.get(folderOf(path));
    return folder && findIn(folder, path, stat);
  }

  /** What is remembered of a file in its present state. */
  async find(path: string, stat: FileStat): Promise<RememberedFile | undefined> {
    const folder = this.#folders.get(folderOf(path)) ?? (await this.#open(folderOf(path)));
    return findIn(folder, path, stat);
  }

  /** Remembers what was found out of a file in a state; {@link save} writes it, which happens by itself after a while. */
  async add(
    path: string,
    stat: FileStat,
    found: { facts?: SampleFacts; measures?: Record<string, MeasureResult> },
  ): Promise<void> {
    const folder = this.#folders.get(folderOf(path)) ?? (await this.#open(folderOf(path)));
    let file = findIn(folder, path, stat);
    if (!file) {
      file = new KeptFile(stat);
      file.isUsed = true;
      folder.files.set(nameOf(path), file);
    }
    file.add(found.facts, found.measures);
    folder.isChanged = true;
    if (this.#timer !== undefined) return;
    this.#timer = setTimeout(() => void this.save(), gathered);
    this.#timer.unref?.();
  }

  /** Writes what is new. */
  save(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#saving = this.#saving.then(() => this.#write());
    return this.#saving;
  }

  async #write(): Promise<void> {
    for (const [path, folder] of this.#folders) {
      if (!folder.isChanged) continue;
      folder.isChanged = false;
      await this.#storage.write(path, textOf(folder));
    }
  }

  #open(path: string): Promise<Folder> {
    let opening = this.#opening.get(path);
    if (!opening) {
      opening = this.#storage.read(path).then((text) => {
        const folder = folderIn(text);
        this.#folders.set(path, folder);
        return folder;
      });
      this.#opening.set(path, opening);
    }
    return opening;
  }
}

function findIn({ files }: Folder, path: string, stat: FileStat): KeptFile | undefined {
  const file = files.get(nameOf(path));
  if (!file || !isSameState(file, stat)) return undefined;
  file.isUsed = true;
  return file;
}

function folderIn(text: string | undefined): Folder {
  const folder: Folder = { files: new Map(), isChanged: false };
  for (const line of text?.split('\n') ?? []) {
    const parts = cacheLineParts(line);
    if (parts) folder.files.set(parts.name, new KeptFile(parts, parts));
  }
  return folder;
}

function textOf({ files }: Folder): string {
  let names = [...files.keys()];
  if (names.length > mostFiles) {
    const isUsed = (name: string) => files.get(name)?.isUsed === true;
    const unused = names.filter((name) => !isUsed(name));
    names = [...unused, ...names.filter(isUsed)].slice(-mostFiles);
  }
  return names.map((name) => (files.get(name) as KeptFile).line(name)).join('');
}
