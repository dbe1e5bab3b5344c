import type { FileStat } from '../model/files';
import { folderOf, nameOf } from '../model/paths';
import type { SampleFacts } from '../model/samples';
import type { RememberedFile } from './measureCacheText';
import { cacheLine, cacheLineHead, cacheLineRest, isSameState } from './measureCacheText';
import type { MeasureResult } from './measureRequest';

/** Where a host keeps remembered texts, each under a name of its own. */
export interface CacheStorage {
  /** The text that was written last under a name; `undefined` where there is none, or where it came to harm. Never rejects. */
  read(name: string): Promise<string | undefined>;
  /** Puts a text under a name, whole or not at all. Never rejects: what cannot be kept is found out again. */
  write(name: string, text: string): Promise<void>;
}

/** `rest` is the part of its line that was not taken apart yet, `line` the line that says all of it. */
type KeptFile = RememberedFile & { rest?: string; line?: string };

/** What is remembered of the files of one folder; lines are taken apart when they are asked for. */
interface Folder {
  files: Map<string, KeptFile>;
  isChanged: boolean;
}

/** Files remembered for one folder; past it the longest unused go. */
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

  /** What is remembered of a file in its present state; at once where the folder was asked about before. */
  find(path: string, stat: FileStat): Promise<RememberedFile | undefined> | RememberedFile | undefined {
    const folder = this.#folders.get(folderOf(path));
    return folder
      ? findIn(folder, path, stat)
      : this.#open(folderOf(path)).then((opened) => findIn(opened, path, stat));
  }

  /** Remembers what was found out of a file in a state; {@link save} writes it, which happens by itself after a while. */
  async add(
    path: string,
    stat: FileStat,
    found: { facts?: SampleFacts; measures?: Record<string, MeasureResult> },
  ): Promise<void> {
    const folder = this.#folders.get(folderOf(path)) ?? (await this.#open(folderOf(path)));
    const known = findIn(folder, path, stat);
    const file: KeptFile = known ?? { size: stat.size, modified: stat.modified, measures: {} };
    if (found.facts) file.facts = found.facts;
    Object.assign(file.measures, found.measures);
    delete file.line;
    if (!known) {
      folder.files.delete(nameOf(path));
      folder.files.set(nameOf(path), file);
    }
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
  const name = nameOf(path);
  const file = files.get(name);
  if (!file || !isSameState(file, stat)) return undefined;
  if (file.rest !== undefined) {
    Object.assign(file, cacheLineRest(file.rest));
    delete file.rest;
  }
  // The order of the map is that of their use.
  files.delete(name);
  files.set(name, file);
  return file;
}

function folderIn(text: string | undefined): Folder {
  const folder: Folder = { files: new Map(), isChanged: false };
  for (const line of text?.split('\n') ?? []) {
    const head = cacheLineHead(line);
    if (head) folder.files.set(head.name, { ...head, measures: {} });
  }
  return folder;
}

function textOf({ files }: Folder): string {
  const lines: string[] = [];
  const names = [...files.keys()];
  for (const name of names.slice(Math.max(0, names.length - mostFiles))) {
    const file = files.get(name) as KeptFile;
    const whole = file.rest === undefined ? file : { ...file, ...cacheLineRest(file.rest) };
    file.line ??= cacheLine(name, whole);
    lines.push(file.line);
  }
  return lines.join('');
}
