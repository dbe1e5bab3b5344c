import { isInstrumentFileName, isSampleFileName } from '../../model/fileNames';
import type { FileReader, FileStat, Files, FolderEntry } from '../../model/files';
import { folderOf, isWithin } from '../../model/paths';
import { vocabularyEnding } from '../../vocabulary/vocabulary';
import { contentSum } from './contentSum';

/** What a build read, as it was: a file, a folder by its names, or nothing at a path. */
export type Dependency =
  /** `sum` where the whole was read at once. */
  | { kind: 'file'; size: number; modified: number; sum?: string }
  | { kind: 'folder'; modified: number; sum?: string }
  | { kind: 'missing' };

/** Dependencies by path. */
export type Dependencies = Record<string, Dependency>;

/** Larger files are not summed up; they are told apart by size and time alone. */
const mostSummed = 16 * 1024 * 1024;

/** Where a build reads. */
export interface ReadingPlace {
  /** The folder of the library. Of those around it only the vocabularies in them matter. */
  folder: string;
  /** Folders that builds and packs are written to: what lies in them is no source. */
  written: readonly string[];
  /** A folder in which it makes no difference what else lies there. */
  unlisted?: string;
}

/** Files that keep in mind what was read of them, so that it can be told later whether any of it has changed. */
export class DependencyFiles implements Files {
  readonly #files: Files;
  readonly #place: ReadingPlace;
  readonly #found = new Map<string, Promise<Dependency>>();

  constructor(files: Files, place: ReadingPlace) {
    this.#files = files;
    this.#place = place;
  }

  /** What was read until now, sorted by path. */
  async dependencies(): Promise<Dependencies> {
    const all: Dependencies = {};
    for (const path of [...this.#found.keys()].sort()) {
      // What is within a file, such as a sample in a SoundFont, is as old as the file.
      if (all[folderOf(path)]?.kind === 'file') continue;
      all[path] = await (this.#found.get(path) as Promise<Dependency>);
    }
    return all;
  }

  async stat(path: string): Promise<FileStat | undefined> {
    const stat = await this.#files.stat(path);
    if (!this.#found.has(path)) this.#note(path, Promise.resolve(dependencyOf(stat)));
    return stat;
  }

  async list(folder: string): Promise<FolderEntry[] | undefined> {
    const { unlisted } = this.#place;
    if (unlisted !== undefined && isWithin(unlisted, folder)) return this.#files.list(folder);
    const stat = await this.#files.stat(folder);
    const entries = await this.#files.list(folder);
    this.#note(folder, entries && stat ? listed(folder, stat, entries, this.#place) : missing);
    return entries;
  }

  async open(path: string): Promise<FileReader | undefined> {
    const stat = await this.#files.stat(path);
    const reader = stat && (await this.#files.open(path));
    if (!reader || stat?.kind !== 'file') {
      this.#note(path, missing);
      return reader;
    }
    const { size, modified } = stat;
    if (!this.#found.has(path)) this.#note(path, Promise.resolve({ kind: 'file', size, modified }));
    return {
      size: reader.size,
      read: async (start, length) => {
        const bytes = await reader.read(start, length);
        if (start === 0 && bytes.length === size && size <= mostSummed) {
          const sum = contentSum(bytes);
          this.#note(
            path,
            sum.then((one) => ({ kind: 'file', size, modified, sum: one })),
          );
        }
        return bytes;
      },
      close: () => reader.close(),
    };
  }

  admits(path: string): boolean {
    return this.#files.admits?.(path) ?? true;
  }

  async realPath(path: string): Promise<string | undefined> {
    return this.#files.realPath?.(path);
  }

  refusal: Files['refusal'] = async (path) => this.#files.refusal?.(path);

  #note(path: string, dependency: Promise<Dependency>): void {
    if (!isWritten(path, this.#place)) this.#found.set(path, dependency);
  }
}

const missing: Promise<Dependency> = Promise.resolve({ kind: 'missing' });

function dependencyOf(stat: FileStat | undefined): Dependency {
  if (!stat) return { kind: 'missing' };
  const { kind, size, modified } = stat;
  // That a folder is there says nothing of what is in it.
  return kind === 'folder' ? { kind: 'folder', modified: -1 } : { kind: 'file', size, modified };
}

async function listed(
  folder: string,
  { modified }: FileStat,
  entries: readonly FolderEntry[],
  place: ReadingPlace,
): Promise<Dependency> {
  return { kind: 'folder', modified, sum: await namesSum(folder, entries, place) };
}

/** Sums of lists that were made already; thousands of instruments may share a folder of all samples. */
const sums = new WeakMap<readonly FolderEntry[], Promise<string>>();

function namesSum(folder: string, entries: readonly FolderEntry[], place: ReadingPlace): Promise<string> {
  let sum = sums.get(entries);
  if (!sum) {
    sum = contentSum(namesIn(folder, entries, place));
    sums.set(entries, sum);
  }
  return sum;
}

/** The names in a folder that can make a difference: of sources, of samples, and of folders that may hold them. */
function namesIn(folder: string, entries: readonly FolderEntry[], place: ReadingPlace): string {
  const isAround = folder !== place.folder && isWithin(folder, place.folder);
  return entries
    .filter(({ name, kind }) => {
      if (name.startsWith('.')) return false;
      if (name.endsWith(vocabularyEnding)) return true;
      if (isAround) return false;
      if (kind === 'folder')
        return `${folder}/${name}` !== place.unlisted && !isWritten(`${folder}/${name}`, place);
      return isSampleFileName(name) || isInstrumentFileName(name);
    })
    .map(({ name, kind }) => `${kind} ${name}`)
    .sort()
    .join('\n');
}

function isWritten(path: string, { written }: ReadingPlace): boolean {
  return written.some((folder) => isWithin(folder, path));
}

/**
 * Whether all that was read is as it was. A stat tells for each where its time is the same; else a text is read and a folder
 * listed again, and samples count as changed.
 */
export async function areUnchanged(
  files: Files,
  dependencies: Dependencies,
  place: ReadingPlace,
): Promise<boolean> {
  for (const path in dependencies)
    if (!(await isUnchanged(files, path, dependencies[path], place))) return false;
  return true;
}

async function isUnchanged(
  files: Files,
  path: string,
  before: Dependency,
  place: ReadingPlace,
): Promise<boolean> {
  const stat = await files.stat(path);
  if (before.kind === 'missing') return stat === undefined;
  if (!stat || (stat.kind === 'folder') !== (before.kind === 'folder')) return false;
  if (stat.modified === before.modified && (before.kind === 'folder' || stat.size === before.size))
    return true;
  if (before.kind === 'folder') {
    if (before.modified === -1) return true;
    const entries = await files.list(path);
    return entries !== undefined && (await namesSum(path, entries, place)) === before.sum;
  }
  if (before.sum === undefined || stat.size !== before.size) return false;
  const reader = await files.open(path);
  if (!reader) return false;
  try {
    return (await contentSum(await reader.read(0, stat.size))) === before.sum;
  } finally {
    await reader.close();
  }
}
