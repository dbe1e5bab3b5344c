import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { availableParallelism } from 'node:os';
import type { Files } from '../../model/files';
import { MeasurePool } from './measurePool';
import type { Measurer } from './measurer';
import { sameThreadMeasurer } from './measurer';

/** Memory that one thread may take, in megabytes; past it the thread breaks down alone. */
const mostMegabytes = 1024;
/** Of it, what is made and dropped with each sample; with less it is looked through far more often. */
const youngMegabytes = 24;

/**
 * Measures in worker threads, one fewer than this machine has cores where nothing else is said, where the bundle that they run stands in a folder;
 * in the same thread where it does not, as when the program runs from its source.
 */
export function nodeMeasurer(files: Files, folder: string, threads = availableParallelism() - 1): Measurer {
  const bundle = `${folder}/measureWorker.js`;
  if (!existsSync(bundle)) return sameThreadMeasurer(files);
  return new MeasurePool((events) => {
    // Loaded with the first thread: most runs need none.
    const { Worker } = createRequire(bundle)('node:worker_threads') as typeof import('node:worker_threads');
    const worker = new Worker(bundle, {
      resourceLimits: { maxOldGenerationSizeMb: mostMegabytes, maxYoungGenerationSizeMb: youngMegabytes },
    });
    worker.on('message', events.answered);
    // An error is followed by the exit, which says all that matters.
    worker.on('error', () => {});
    worker.once('exit', events.ended);
    worker.unref();
    return {
      send: (message) => worker.postMessage(message),
      setBusy: (isBusy) => (isBusy ? worker.ref() : worker.unref()),
      end: async () => {
        await worker.terminate();
      },
    };
  }, threads);
}
