import type { Files } from '../../model/files';
import { joinPath, relativePath } from '../../model/paths';
import { readWholeText } from '../../workspace/files/readWhole';
import type { BuildOutcome } from '../build/buildOutcome';
import { absolute, folderPlaceName, relative, stateFolderOf } from '../build/buildState';
import { contentSum } from '../build/contentSum';
import type { Dependencies, ReadingPlace } from '../build/dependencies';
import { areUnchanged } from '../build/dependencies';
import type { FileWriter } from '../build/fileWriter';
import type { InstrumentFacts, PackSettings } from '../libraryFile';
import type { LibraryInstrument, ResolvedLibrary } from '../libraryInstrument';

/** Changes when packs, or what is kept of them, are made otherwise. */
const packVersion = 1;

/** What is kept of a pack to know the next time whether it is current: written when the pack is in its place. */
interface PackState {
  version: number;
  settings: string;
  /** By paths from the folder of the library. */
  dependencies: Dependencies;
  /** Paths from the folder of the library. */
  written: { path: string; size: number; modified: number }[];
  outcome: BuildOutcome;
}

/** Where what a pack is made of is read: what was built is a source here. */
export function packReadingPlace(library: ResolvedLibrary, output: string): ReadingPlace {
  const written = [stateFolderOf(library), ...library.packs, output];
  // What was built of other instruments is nothing to a pack.
  return { folder: library.folder, written, unlisted: library.output };
}

/** The sum of all that counts for how an instrument is packed, wherever its library lies. */
export function packSum(
  { folder }: ResolvedLibrary,
  { name, fileName, targets, facts }: LibraryInstrument,
  order: { settings: PackSettings; facts: InstrumentFacts; output: string },
  program: string,
): Promise<string> {
  const output = relativePath(folder, order.output);
  const text = JSON.stringify([
    ...[packVersion, program, name, fileName, targets],
    ...[facts, order.facts, order.settings, output],
  ]);
  return contentSum(text.replaceAll(JSON.stringify(folder).slice(1, -1), '.'));
}

/** The state that the last pack of an instrument left; `undefined` where it left none, or in another form. */
export async function readPackState(
  files: Files,
  library: ResolvedLibrary,
  output: string,
  fileName: string,
): Promise<PackState | undefined> {
  const whole = await readWholeText(files, packStatePath(library, output, fileName));
  if (whole.kind !== 'text') return undefined;
  try {
    const state = JSON.parse(whole.text) as Partial<PackState> | null;
    return state?.version === packVersion ? (state as PackState) : undefined;
  } catch {
    return undefined;
  }
}

/** Whether a pack is as it was written, of what it would be made of now. */
export async function isCurrentPack(
  files: Files,
  library: ResolvedLibrary,
  state: PackState,
  settings: string,
  output: string,
): Promise<boolean> {
  if (state.settings !== settings) return false;
  for (const { path, size, modified } of state.written) {
    const stat = await files.stat(joinPath(library.folder, path));
    if (stat?.size !== size || stat.modified !== modified) return false;
  }
  const dependencies = absolute(library.folder, state.dependencies);
  return areUnchanged(files, dependencies, packReadingPlace(library, output));
}

/** Keeps what was packed; `dependencies` and `written` are absolute paths. */
export async function keepPackState(
  { files, writer }: { files: Files; writer: Pick<FileWriter, 'write'> },
  library: ResolvedLibrary,
  output: string,
  fileName: string,
  made: Omit<PackState, 'version' | 'written'> & { written: readonly string[] },
): Promise<void> {
  const written: PackState['written'] = [];
  for (const path of made.written) {
    const { size = 0, modified = 0 } = (await files.stat(path)) ?? {};
    written.push({ path: relativePath(library.folder, path), size, modified });
  }
  const dependencies = relative(library.folder, made.dependencies);
  const state: PackState = { ...made, version: packVersion, dependencies, written };
  await writer.write(packStatePath(library, output, fileName), `${JSON.stringify(state)}\n`);
}

/** Packs of other kinds in other folders do not put one another out of date. */
function packStatePath(library: ResolvedLibrary, output: string, fileName: string): string {
  return `${stateFolderOf(library)}/packs/${folderPlaceName(library.folder, output)}/${fileName}.json`;
}
