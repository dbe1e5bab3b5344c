import type { FileReader, FileStat, Files, FolderEntry } from '../../model/files';
import { isWithin } from '../../model/paths';
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

/** Files that keep in mind what was read of them, so that it can be told later whether any of it has changed. */
export class DependencyFiles implements Files {
  readonly #files: Files;
  readonly #written: readonly string[];
  readonly #found = new Map<string, Promise<Dependency>>();

  /** What lies in the `written` folders is made by builds and not kept in mind. */
  constructor(files: Files, written: readonly string[]) {
    this.#files = files;
    this.#written = written;
  }

  /** What was read until now, sorted by path. */
  async dependencies(): Promise<Dependencies> {
    const all: Dependencies = {};
    for (const path of [...this.#found.keys()].sort())
      all[path] = await (this.#found.get(path) as Promise<Dependency>);
    return all;
  }

  async stat(path: string): Promise<FileStat | undefined> {
    const stat = await this.#files.stat(path);
    if (!this.#found.has(path)) this.#note(path, Promise.resolve(dependencyOf(stat)));
    return stat;
  }

  async list(folder: string): Promise<FolderEntry[] | undefined> {
    const stat = await this.#files.stat(folder);
    const entries = await this.#files.list(folder);
    this.#note(folder, entries && stat ? listed(folder, stat, entries, this.#written) : missing);
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
    if (!isWritten(path, this.#written)) this.#found.set(path, dependency);
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
  written: readonly string[],
): Promise<Dependency> {
  return { kind: 'folder', modified, sum: await namesSum(folder, entries, written) };
}

/** Sums of lists that were made already; thousands of instruments may share a folder of all samples. */
const sums = new WeakMap<readonly FolderEntry[], Promise<string>>();

function namesSum(
  folder: string,
  entries: readonly FolderEntry[],
  written: readonly string[],
): Promise<string> {
  let sum = sums.get(entries);
  if (!sum) {
    sum = contentSum(namesIn(folder, entries, written));
    sums.set(entries, sum);
  }
  return sum;
}

function namesIn(folder: string, entries: readonly FolderEntry[], written: readonly string[]): string {
  return entries
    .filter(({ name }) => !name.startsWith('.') && !isWritten(`${folder}/${name}`, written))
    .map(({ name, kind }) => `${kind} ${name}`)
    .sort()
    .join('\n');
}

function isWritten(path: string, written: readonly string[]): boolean {
  return written.some((folder) => isWithin(folder, path));
}

/**
 * Whether all that was read is as it was. A stat tells for each where its time is the same; else a text is read and a folder
 * listed again, and samples count as changed.
 */
export async function areUnchanged(
  files: Files,
  dependencies: Dependencies,
  written: readonly string[],
): Promise<boolean> {
  for (const path in dependencies)
    if (!(await isUnchanged(files, path, dependencies[path], written))) return false;
  return true;
}

async function isUnchanged(
  files: Files,
  path: string,
  before: Dependency,
  written: readonly string[],
): Promise<boolean> {
  const stat = await files.stat(path);
  if (before.kind === 'missing') return stat === undefined;
  if (!stat || (stat.kind === 'folder') !== (before.kind === 'folder')) return false;
  if (stat.modified === before.modified && (before.kind === 'folder' || stat.size === before.size))
    return true;
  if (before.kind === 'folder') {
    if (before.modified === -1) return true;
    const entries = await files.list(path);
    return entries !== undefined && (await namesSum(path, entries, written)) === before.sum;
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
