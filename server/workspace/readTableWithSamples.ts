import type { Files } from '../model/files';
import type { ConversionNote } from '../model/notes';
import { joinPath, nameOf, relativePath } from '../model/paths';
import type { SampleFacts } from '../model/samples';
import type { TableReading } from '../table/readTable';
import { readZoneTable } from '../table/readTable';
import { audioFilesBelow } from './audioFilesBelow';
import { SampleStore } from './sampleStore';

export interface TableFolders {
  /** The path by which the table is known. */
  path: string;
  /** Which note name the table gives to key 60; found by evidence where nothing is said. */
  middleC?: 'C3' | 'C4' | 'C5';
  /** The folder in which the samples are looked for, with all below it. */
  samplesFolder: string;
  /** The folder that the sample paths are written from. */
  outputFolder: string;
  /** The `default_path` that is put before them where they are written. */
  defaultPath?: string;
}

/** Reads a zone table, its samples looked up in a folder, so that paths lead to the files and their root keys tell the octave. */
export async function readTableWithSamples(
  files: Files,
  text: string,
  folders: TableFolders,
): Promise<TableReading> {
  const found = new SampleFinder(await audioFilesBelow(files, folders.samplesFolder), folders.outputFolder);
  const named = new Set<string>();
  readZoneTable(text, {
    path: folders.path,
    resolveSample(name) {
      named.add(name);
      return undefined;
    },
  });
  const facts = await found.facts(files, named);
  const ambiguous = new Map<string, string[]>();
  const reading = readZoneTable(text, {
    path: folders.path,
    ...(folders.middleC && { middleC: folders.middleC }),
    rootKeyOf: (name) => facts.get(name)?.rootKey ?? undefined,
    rateOf: (name) => facts.get(name)?.sampleRate,
    resolveSample(name) {
      const paths = found.find(name);
      if (paths.length > 1) ambiguous.set(name, paths);
      return paths[0] && writtenPath(paths[0], folders);
    },
  });
  const notes: ConversionNote[] = [...ambiguous].map(([name, paths]) => ({
    kind: 'assumed',
    ...firstCell(reading, name),
    message: `There are ${paths.length} files named "${nameOf(name)}"; ${relativePath(folders.outputFolder, paths[0] as string)} was taken.`,
  }));
  return { ...reading, notes: [...reading.notes, ...notes] };
}

function firstCell(reading: TableReading, name: string): { source: number; start: number; end: number } {
  const start = Math.max(0, reading.instrument.sources[0]?.text.indexOf(name) ?? 0);
  return { source: 0, start, end: start + name.length };
}

/** The path of a file as it is to be written, so that `default_path` before it leads to the file. */
function writtenPath(file: string, { outputFolder, defaultPath = '' }: TableFolders): string {
  const path = relativePath(outputFolder, file);
  const prefix = defaultPath.replaceAll('\\', '/');
  if (path.startsWith(prefix)) return path.slice(prefix.length);
  return prefix.endsWith('/') ? relativePath(joinPath(outputFolder, prefix), file) : path;
}

/** Finds files by the names that a table gives: with its folders, by name alone, in another letter case, without ending. */
class SampleFinder {
  readonly #byName = new Map<string, string[]>();
  readonly #byStem = new Map<string, string[]>();

  constructor(paths: readonly string[], folder: string) {
    // The nearest to the output comes first where several bear one name.
    const near = [...paths].sort(
      (a, b) => relativePath(folder, a).split('/').length - relativePath(folder, b).split('/').length,
    );
    for (const path of near) {
      const name = nameOf(path).toLowerCase();
      add(this.#byName, name, path);
      add(this.#byStem, name.replace(/\.\w+$/, ''), path);
    }
  }

  /** The files that a name can mean, the likeliest first. */
  find(name: string): string[] {
    const written = name.replaceAll('\\', '/');
    const lower = nameOf(written).toLowerCase();
    const all = this.#byName.get(lower) ?? this.#byStem.get(lower) ?? [];
    const inFolder = all.filter((path) =>
      path.toLowerCase().endsWith(`/${written.toLowerCase().replace(/^(\.\.?\/)+/, '')}`),
    );
    const fitting = inFolder.length > 0 ? inFolder : all;
    const exact = fitting.filter((path) => nameOf(path) === nameOf(written));
    return exact.length > 0 ? exact : fitting;
  }

  /** What the headers of the files say, by the names in the table. */
  async facts(files: Files, names: Iterable<string>): Promise<Map<string, SampleFacts>> {
    const store = new SampleStore(files);
    const paths = new Map<string, string>();
    for (const name of names) {
      const path = this.find(name)[0];
      if (path === undefined) continue;
      paths.set(name, path);
      store.reading(path);
    }
    await store.loadWanted();
    const facts = new Map<string, SampleFacts>();
    for (const [name, path] of paths) {
      const reading = store.reading(path);
      if (reading?.kind === 'facts') facts.set(name, reading.facts);
    }
    return facts;
  }
}

function add(map: Map<string, string[]>, key: string, path: string): void {
  const list = map.get(key);
  if (list) list.push(path);
  else map.set(key, [path]);
}
