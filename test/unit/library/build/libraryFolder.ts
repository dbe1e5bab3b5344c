import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { flacLibrary as encoder } from '../../../../server/flacLibrary';
import type { BuildOptions } from '../../../../server/library/build/buildLibrary';
import { buildLibrary } from '../../../../server/library/build/buildLibrary';
import type { BuildOutcome } from '../../../../server/library/build/buildOutcome';
import { writtenFolders } from '../../../../server/library/build/buildState';
import type { BuildSteps } from '../../../../server/library/build/buildSteps';
import { allSteps } from '../../../../server/library/build/buildSteps';
import { buildThread } from '../../../../server/library/build/buildThread';
import type { FileWriter } from '../../../../server/library/build/fileWriter';
import type { ResolvedLibrary } from '../../../../server/library/libraryInstrument';
import { openLibrary } from '../../../../server/library/openLibrary';
import { nodeFiles } from '../../../../server/workspace/files/nodeFiles';
import { clearUnfinished, stagedWriter } from '../../../../server/workspace/files/stagedWriter';
import { sumOf } from '../../../../server/workspace/measuring/cacheFolder';
import { temporaryFolder } from '../../../temporaryFolder';
import { waveBytes } from '../../server/host/waveBytes';

const flacLibrary = async () => encoder;

export const libraryFile = 'zonewright.library.json';

/** A folder on the disk with files in it; `*.wav` get a short sound where nothing is given. It goes when the test file ends. */
export function folderOf(files: Record<string, string>): string {
  const folder = temporaryFolder('zonewright-library');
  put(folder, files);
  return folder;
}

export function put(folder: string, files: Record<string, string>): void {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), path.endsWith('.wav') && text === '' ? waveBytes(100) : text);
  }
}

/** A library of a text, a table, XML of other names, and what is none. */
export function smallLibrary(): Record<string, string> {
  const instruments = [
    { name: 'Bell', source: 'old/bell.sfz', facts: { maker: 'Ines Falk', licence: 'CC0 1.0' } },
    { name: 'Reed', source: 'tables/reed.tsv', samples: 'audio', targets: ['sfz', 'xml'] },
    { name: 'Broken', source: 'old/nothing.txt' },
    { name: 'Gong', source: 'old/gong.xml' },
  ];
  return {
    [libraryFile]: JSON.stringify({ title: 'Two rivers', instruments }),
    'old/bell.sfz':
      '#include "parts.sfz"\n<region> sample=bell.wav key=60\n<region> sample=lost.wav key=61\n',
    'old/parts.sfz': '<global> ampeg_release=0.4\n',
    'old/bell.wav': '',
    'old/nothing.txt': 'Nothing is here.',
    'old/gong.xml':
      '<rack><strike file="gong.wav" from="36" to="40" pitch="38"/><strike file="gong2.wav" from="41" to="45" pitch="43"/></rack>',
    'old/gong.wav': '',
    'old/gong2.wav': '',
    'tables/reed.tsv': 'Sample\tLow\tHigh\tRoot\nreed a.wav\t40\t50\t45\nreed b.wav\t51\t60\t55\n',
    'audio/reed a.wav': '',
    'audio/reed b.wav': '',
  };
}

export async function opened(folder: string): Promise<ResolvedLibrary> {
  const library = await openLibrary(nodeFiles, folder);
  if (library.kind !== 'library') throw new Error(library.reason);
  return library.library;
}

export interface BuildWith extends BuildOptions {
  force?: boolean;
  steps?: BuildSteps;
  /** The program's version. */
  program?: string;
  /** What writes; the disk where nothing is said. */
  writer?: (disk: FileWriter) => FileWriter;
}

/** Builds the library of a folder in this thread, as a program that starts anew does. */
export async function build(folder: string, options: BuildWith = {}): Promise<BuildOutcome[]> {
  const { force = false, program = '1', writer = (disk) => disk } = options;
  const library = await opened(folder);
  const steps = allSteps(library.steps, options.steps ?? library.steps);
  const roots = [...writtenFolders(library), ...(steps.packs ? library.packs : [])];
  clearUnfinished(roots);
  const data = { library, program, steps, force, keeps: false, roots };
  const host = {
    files: nodeFiles,
    writer: writer(stagedWriter(roots)),
    cache: undefined,
    sumOf,
    flacLibrary,
  };
  const outcomes = await buildLibrary(
    library,
    { width: 1, run: buildThread(data, host) },
    steps.packs,
    options,
  );
  clearUnfinished(roots);
  return outcomes;
}

/** All files below a folder with their bytes as text. */
export function filesIn(folder: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const entry of readdirSync(folder, { withFileTypes: true, recursive: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    found[path.slice(folder.length + 1)] = readFileSync(path, 'latin1');
  }
  return found;
}

/** What became of each instrument, by name. */
export function statesOf(outcomes: readonly BuildOutcome[]): Record<string, string> {
  return Object.fromEntries(outcomes.map(({ name, state }) => [name, state]));
}
