import { homedir } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import type { BuildThreadData } from './library/build/buildThread';
import { buildThread } from './library/build/buildThread';
import type { LibraryInstrument } from './library/libraryInstrument';
import { blockingFiles } from './workspace/files/blockingFiles';
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
  });
  port.on('message', ({ id, content }: JobMessage<LibraryInstrument>) => {
    void build(content).then((outcome) => port.postMessage({ id, content: outcome }));
  });
}
