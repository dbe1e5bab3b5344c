import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import type { BuildCrew } from '../../library/build/buildLibrary';
import type { BuildOutcome } from '../../library/build/buildOutcome';
import type { BuildThreadData } from '../../library/build/buildThread';
import { brokenDown, buildThread } from '../../library/build/buildThread';
import type { FileWriter } from '../../library/build/fileWriter';
import type { LibraryInstrument } from '../../library/libraryInstrument';
import { NodeJobPool } from '../../workspace/threads/nodeJobPool';
import type { Terminal } from '../terminal';

/** Who builds, until it is closed. */
export interface OpenCrew extends BuildCrew {
  close(): Promise<void>;
}

/**
 * Builds in threads, one for each core where nothing else is said; in the same thread where the program runs from its source
 * or one thread is asked for.
 */
export function buildCrew(
  { files, program, measuring }: Terminal,
  data: BuildThreadData,
  writer: FileWriter,
  threads = availableParallelism(),
): OpenCrew {
  const bundle = `${program}/buildWorker.js`;
  if (program === undefined || threads === 1 || !existsSync(bundle)) {
    const cache = data.keeps ? measuring?.storage() : undefined;
    return { width: 1, build: buildThread(data, { files, writer, cache }), close: async () => {} };
  }
  const pool = new NodeJobPool<LibraryInstrument, BuildOutcome>(bundle, data, threads);
  return {
    width: pool.width,
    build: async (one) => (await pool.run(one)) ?? brokenDown(one),
    close: () => pool.close(),
  };
}
