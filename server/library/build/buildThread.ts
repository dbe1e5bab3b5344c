import type { Files } from '../../model/files';
import { isWithin } from '../../model/paths';
import { withHeldListings } from '../../workspace/files/heldListings';
import type { LibraryInstrument, ResolvedLibrary } from '../libraryInstrument';
import type { PackOrder } from '../pack/packBuilt';
import { packBuilt } from '../pack/packBuilt';
import type { PackTools } from '../pack/putPack';
import type { BuildTools } from './buildLibraryInstrument';
import { buildLibraryInstrument } from './buildLibraryInstrument';
import type { BuildOutcome } from './buildOutcome';
import type { BuildSteps } from './buildSteps';
import { HeldFinders } from './heldFinders';
import { noFindings } from './instrumentRecord';

/** What a thread that builds is started with; it can be sent. */
export interface BuildThreadData {
  /** Without its instruments, which are sent one by one. */
  library: ResolvedLibrary;
  program: string;
  steps: BuildSteps;
  force: boolean;
  /** Whether what was measured is remembered in the user's cache folder. */
  keeps: boolean;
  /** The folders that are written to. */
  roots: string[];
  /** The folder of the program's bundles, where it runs from them. */
  bundles?: string;
}

/** What a thread is to do with an instrument: build it, or pack what was built of it as an order says. */
export interface BuildJob {
  one: LibraryInstrument;
  pack?: PackOrder;
}

/** What a thread works with. */
export type BuildThreadHost = Pick<BuildTools, 'files' | 'writer' | 'cache' | 'sumOf'> &
  Pick<PackTools, 'flacLibrary'>;

/** What a thread does with each job. */
export function buildThread(
  { library, program, steps, force }: BuildThreadData,
  host: BuildThreadHost,
): (job: BuildJob) => Promise<BuildOutcome> {
  const held = { files: withHeldListings(host.files), finders: new HeldFinders() };
  const tools: BuildTools = { ...host, ...held, program, steps, force };
  // What is built meanwhile is listed anew.
  const files: Files = {
    ...host.files,
    list: (folder) => (isWithin(library.output, folder) ? host : held).files.list(folder),
  };
  return ({ one, pack }) =>
    pack
      ? packBuilt(library, one, pack, { ...host, files, program, force })
      : buildLibraryInstrument(library, one, tools);
}

/** What is said of an instrument whose thread broke down. */
export function brokenDown({ name, source }: LibraryInstrument): BuildOutcome {
  return {
    name,
    source,
    state: 'failed',
    message: 'It needs more memory than there is, or is damaged in a way that was not foreseen.',
    outputs: [],
    totals: noFindings(),
    notes: { assumed: 0, approximated: 0, dropped: 0 },
  };
}
