import type { LibraryInstrument, ResolvedLibrary } from '../libraryInstrument';
import type { BuildTools } from './buildInstrument';
import { buildInstrument } from './buildInstrument';
import type { BuildOutcome } from './buildOutcome';
import type { BuildSteps } from './buildSteps';
import { HeldFinders } from './heldFinders';
import { withHeldListings } from './heldListings';
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
}

/** What a thread does with each instrument. */
export function buildThread(
  { library, program, steps, force }: BuildThreadData,
  host: Pick<BuildTools, 'files' | 'writer' | 'cache' | 'sumOf'>,
): (one: LibraryInstrument) => Promise<BuildOutcome> {
  const held = { files: withHeldListings(host.files), finders: new HeldFinders() };
  const tools: BuildTools = { ...host, ...held, program, steps, force };
  return (one) => buildInstrument(library, one, tools);
}

/** What is said of an instrument whose thread broke down. */
export function brokenDown({ name, source }: LibraryInstrument): BuildOutcome {
  return {
    name,
    source,
    state: 'failed',
    message: 'It takes more memory than there is, or is broken in a way that nothing here foresees.',
    outputs: [],
    totals: noFindings(),
    notes: { assumed: 0, approximated: 0, dropped: 0 },
  };
}
