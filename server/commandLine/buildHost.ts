import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import type { BuildOutcome } from '../library/build/buildOutcome';
import type { BuildJob, BuildThreadData } from '../library/build/buildThread';
import { brokenDown, buildThread } from '../library/build/buildThread';
import type { FileWriter } from '../library/build/fileWriter';
import type { BuildHost, OpenCrew } from '../library/build/runBuild';
import { OutputError } from '../model/output';
import { flacLibraryIn } from '../workspace/files/flacLibraryIn';
import { clearUnfinished, stagedWriter } from '../workspace/files/stagedWriter';
import { sumOf } from '../workspace/measuring/cacheFolder';
import { NodeJobPool } from '../workspace/threads/nodeJobPool';
import type { Terminal } from './terminal';

/** Threads at the most. */
export const mostThreads = 64;

/** What a machine with a disk and threads is to a build. */
type Machine = Pick<Terminal, 'files' | 'program' | 'measuring' | 'packing'>;

/**
 * Builds on this machine: in threads, one for each core where nothing else is said; in the same thread where the program runs
 * from its source or one thread is asked for.
 */
export function buildHost(machine: Machine, threads = availableParallelism()): BuildHost {
  return {
    files: machine.files,
    writer: stagedWriter,
    clearUnfinished,
    crew: (data, writer) => crewOf(machine, data, writer, threads),
    flacLibrary: flacOf(machine),
  };
}

function flacOf({ program, packing }: Machine): BuildHost['flacLibrary'] {
  return packing?.flacLibrary ?? (program === undefined ? undefined : () => flacLibraryIn(program));
}

async function noFlac(): Promise<never> {
  throw new OutputError('there is no FLAC here; pack the audio as it is');
}

function crewOf(machine: Machine, data: BuildThreadData, writer: FileWriter, threads: number): OpenCrew {
  const { files, program, measuring } = machine;
  const bundle = `${program}/buildWorker.js`;
  if (program === undefined || threads === 1 || !existsSync(bundle)) {
    const cache = data.keeps ? measuring?.storage() : undefined;
    const flacLibrary = flacOf(machine) ?? noFlac;
    const host = { files, writer, cache, sumOf, flacLibrary };
    return { width: 1, run: buildThread(data, host), close: async () => {} };
  }
  const pool = new NodeJobPool<BuildJob, BuildOutcome>(bundle, { ...data, bundles: program }, threads);
  return {
    width: pool.width,
    run: async (job) => (await pool.run(job)) ?? brokenDown(job.one),
    close: () => pool.close(),
  };
}
