import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import type { BuildOutcome } from '../library/build/buildOutcome';
import type { BuildThreadData } from '../library/build/buildThread';
import { brokenDown, buildThread } from '../library/build/buildThread';
import type { FileWriter } from '../library/build/fileWriter';
import type { BuildHost, OpenCrew } from '../library/build/runBuild';
import type { LibraryInstrument } from '../library/libraryInstrument';
import { clearUnfinished, stagedWriter } from '../workspace/files/stagedWriter';
import { sumOf } from '../workspace/measuring/cacheFolder';
import { NodeJobPool } from '../workspace/threads/nodeJobPool';
import type { Terminal } from './terminal';

/** What a machine with a disk and threads is to a build. */
type Machine = Pick<Terminal, 'files' | 'program' | 'measuring'>;

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
  };
}

function crewOf(
  { files, program, measuring }: Machine,
  data: BuildThreadData,
  writer: FileWriter,
  threads: number,
): OpenCrew {
  const bundle = `${program}/buildWorker.js`;
  if (program === undefined || threads === 1 || !existsSync(bundle)) {
    const cache = data.keeps ? measuring?.storage() : undefined;
    return { width: 1, build: buildThread(data, { files, writer, cache, sumOf }), close: async () => {} };
  }
  const pool = new NodeJobPool<LibraryInstrument, BuildOutcome>(bundle, data, threads);
  return {
    width: pool.width,
    build: async (one) => (await pool.run(one)) ?? brokenDown(one),
    close: () => pool.close(),
  };
}
