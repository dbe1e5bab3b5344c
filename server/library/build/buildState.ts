import type { Files } from '../../model/files';
import { joinPath, relativePath } from '../../model/paths';
import { readWholeText } from '../../workspace/files/readWhole';
import type { LibraryInstrument, ResolvedLibrary } from '../libraryInstrument';
import type { BuildOutcome } from './buildOutcome';
import type { BuildSteps } from './buildSteps';
import { contentSum } from './contentSum';
import type { Dependencies, ReadingPlace } from './dependencies';
import { areUnchanged } from './dependencies';
import { recordVersion } from './instrumentRecord';

/** A file that was written, as it was when the build was done. */
export interface WrittenFile {
  /** From the folder of the library. */
  path: string;
  size: number;
  modified: number;
  sum: string;
}

/**
 * What a build keeps of one instrument, to know the next time whether anything has changed: written when all else is in
 * place, so that a build that was ended at any moment before does that instrument again.
 */
export interface BuildState {
  version: number;
  program: string;
  steps: BuildSteps;
  /** The sum of all that the library file says for it. */
  settings: string;
  /** By paths from the folder of the library. */
  dependencies: Dependencies;
  written: WrittenFile[];
  /** What a build that was not finished was about to write. */
  planned?: WrittenFile[];
  outcome: BuildOutcome;
}

/** The folder beside the library file in which builds keep what they know. */
const stateFolder = '.zonewright-build';

/** The folder in which states of builds into the output of a library are kept. */
export function stateFolderOf({ folder, output }: ResolvedLibrary): string {
  return `${folder}/${stateFolder}/${folderPlaceName(folder, output)}`;
}

/** A name for a folder by its path from that of a library. */
export function folderPlaceName(folder: string, place: string): string {
  return relativePath(folder, place).replace(/[^\p{L}\p{N}.-]+/gu, '_') || 'here';
}

/** The path of the state of an instrument. */
export function statePath(library: ResolvedLibrary, fileName: string): string {
  return `${stateFolderOf(library)}/${fileName}.json`;
}

/** The folders that builds write to, which no source is in. */
export function writtenFolders(library: ResolvedLibrary): string[] {
  return [library.output, `${library.folder}/${stateFolder}`];
}

/** Where the sources of a library are read. */
export function readingPlace(library: ResolvedLibrary): ReadingPlace {
  return { folder: library.folder, written: [...writtenFolders(library), ...library.packs] };
}

/** The sum of all that counts for how an instrument is built, wherever its library lies. */
export function settingsSum(
  library: ResolvedLibrary,
  one: LibraryInstrument,
  { measures, proves }: BuildSteps,
): Promise<string> {
  const { pairing, ...settings } = one;
  const doubts = pairing?.doubts ?? [];
  const output = relativePath(library.folder, library.output);
  const text = JSON.stringify([settings, doubts, measures, proves, output]);
  return contentSum(text.replaceAll(JSON.stringify(library.folder).slice(1, -1), '.'));
}

/**
 * The state that the last build left; `undefined` where it left none. One of another version of this program holds no more than
 * which files are a build's own.
 */
export async function readState(
  files: Files,
  library: ResolvedLibrary,
  fileName: string,
): Promise<BuildState | undefined> {
  const whole = await readWholeText(files, statePath(library, fileName));
  if (whole.kind !== 'text') return undefined;
  try {
    const state = JSON.parse(whole.text) as Partial<BuildState> | null;
    return Array.isArray(state?.written) ? (state as BuildState) : undefined;
  } catch {
    return undefined;
  }
}

/** Whether this version of the program can tell by a state whether anything has changed. */
export function isOfThisForm({ version }: BuildState): boolean {
  return version === recordVersion;
}

/** Whether what was built by a state still holds: the same settings, sources as they were, results in their place. */
export async function isCurrent(
  files: Files,
  library: ResolvedLibrary,
  state: BuildState,
  settings: string,
): Promise<boolean> {
  if (!isOfThisForm(state) || state.planned || state.settings !== settings) return false;
  for (const { path, size, modified } of state.written) {
    const stat = await files.stat(joinPath(library.folder, path));
    if (stat?.size !== size || stat.modified !== modified) return false;
  }
  return areUnchanged(files, absolute(library.folder, state.dependencies), readingPlace(library));
}

/** Dependencies by paths from a folder. */
export function relative(folder: string, dependencies: Dependencies): Dependencies {
  return mapped(dependencies, (path) => relativePath(folder, path) || '.');
}

/** Dependencies by absolute paths again. */
export function absolute(folder: string, dependencies: Dependencies): Dependencies {
  return mapped(dependencies, (path) => joinPath(folder, path));
}

function mapped(dependencies: Dependencies, change: (path: string) => string): Dependencies {
  return Object.fromEntries(Object.entries(dependencies).map(([path, one]) => [change(path), one]));
}
