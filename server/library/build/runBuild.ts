import type { FlacLibrary } from '../../audio/encode/flacEncoder';
import type { Files } from '../../model/files';
import type { ResolvedLibrary } from '../libraryInstrument';
import type { PackOrder } from '../pack/packBuilt';
import { writeOverview } from '../report/writeOverview';
import type { BuildCrew, BuildOptions } from './buildLibrary';
import { buildLibrary, packLibrary, removeLeftOut } from './buildLibrary';
import type { BuildOutcome } from './buildOutcome';
import { writtenFolders } from './buildState';
import type { BuildSteps } from './buildSteps';
import { allSteps } from './buildSteps';
import type { BuildThreadData } from './buildThread';
import type { FileWriter } from './fileWriter';

/** Who builds, until it is closed. */
export interface OpenCrew extends BuildCrew {
  close(): Promise<void>;
}

/** What of a build depends on the machine: its disk and its threads. */
export interface BuildHost {
  files: Files;
  /** Writes below some folders. */
  writer(roots: readonly string[]): FileWriter;
  /** Takes away what builds that were ended have left unfinished. */
  clearUnfinished(roots: readonly string[]): void;
  crew(data: BuildThreadData, writer: FileWriter): OpenCrew;
  /** The encoder of FLAC, loaded when it is asked for; missing where there is none. */
  flacLibrary?: (() => Promise<FlacLibrary>) | undefined;
}

/** How a build is asked for. */
export interface BuildOrder extends BuildOptions, Pick<BuildThreadData, 'program' | 'force' | 'keeps'> {
  /** Steps beside those that the library file asks for. */
  steps?: BuildSteps;
  /** Told of instruments that are no longer in the library, and of which everything built was taken away. */
  onRemoved?: (name: string) => void;
}

/** How packs of a whole library are asked for. */
export interface PackLibraryOrder extends BuildOptions, Pick<BuildThreadData, 'program' | 'force'> {
  pack: PackOrder;
}

/** Packs what was built of a library, as far as its packs are not current. */
export async function runPacks(
  host: BuildHost,
  library: ResolvedLibrary,
  order: PackLibraryOrder,
): Promise<BuildOutcome[]> {
  const { program, force, pack } = order;
  const roots = [...writtenFolders(library), ...(pack.output === undefined ? library.packs : [pack.output])];
  return withCrew(host, library, { program, force, keeps: false, steps: library.steps, roots }, (crew) =>
    packLibrary(library, crew, pack, order),
  );
}

/** Has a crew work on a library; what it or another left unfinished is taken away before and after. */
async function withCrew<T>(
  host: BuildHost,
  library: ResolvedLibrary,
  data: Omit<BuildThreadData, 'library'>,
  work: (crew: BuildCrew, writer: FileWriter) => Promise<T>,
): Promise<T> {
  const { roots } = data;
  host.clearUnfinished(roots);
  const writer = host.writer(roots);
  const crew = host.crew({ ...data, library: { ...library, instruments: [], problems: [] } }, writer);
  try {
    return await work(crew, writer);
  } finally {
    await crew.close();
    host.clearUnfinished(roots);
  }
}

/** Builds a library from beginning to end, and its overview where it is not a part alone. */
export async function runBuild(
  host: BuildHost,
  library: ResolvedLibrary,
  order: BuildOrder,
): Promise<BuildOutcome[]> {
  const { program, force, keeps, part, signal } = order;
  const steps = order.steps ? allSteps(library.steps, order.steps) : library.steps;
  const roots = [...writtenFolders(library), ...(steps.packs ? library.packs : [])];
  return withCrew(host, library, { program, force, keeps, steps, roots }, async (crew, writer) => {
    for (const name of await removeLeftOut(host.files, writer, library)) order.onRemoved?.(name);
    const outcomes = await buildLibrary(library, crew, steps.packs, order);
    // A part knows nothing of the others: its report is joined with theirs.
    if (!part && !signal?.aborted) await writeOverview(host.files, writer, library);
    return outcomes;
  });
}
