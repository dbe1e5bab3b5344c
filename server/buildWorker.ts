import { homedir } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import type { BuildJob, BuildThreadData } from './library/build/buildThread';
import { buildThread } from './library/build/buildThread';
import { blockingFiles } from './workspace/files/blockingFiles';
import { flacLibraryIn } from './workspace/files/flacLibraryIn';
import { stagedWriter } from './workspace/files/stagedWriter';
import { cacheFolder, sumOf } from './workspace/measuring/cacheFolder';
import { userCacheFolder } from './workspace/measuring/userCacheFolder';
import type { JobMessage } from './workspace/threads/nodeJobPool';

if (parentPort) {
  const port = parentPort;
  const data = workerData as BuildThreadData;
  const { platform, env: environment } = process;
  const kept = data.keeps ? userCacheFolder({ platform, home: homedir(), environment }) : undefined;
  const build = buildThread(data, {
    files: blockingFiles,
    writer: stagedWriter(data.roots),
    cache: kept === undefined ? undefined : cacheFolder(kept),
    sumOf,
    flacLibrary: () => flacLibraryIn(data.bundles ?? ''),
  });
  port.on('message', ({ id, content }: JobMessage<BuildJob>) => {
    void build(content).then((outcome) => port.postMessage({ id, content: outcome }));
  });
}
