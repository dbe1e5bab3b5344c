import { parentPort } from 'node:worker_threads';
import { comparingThread } from './workspace/comparing/compareThread';
import { blockingFiles } from './workspace/files/blockingFiles';

if (parentPort) {
  const port = parentPort;
  port.on(
    'message',
    comparingThread(blockingFiles, (answer) => port.postMessage(answer)),
  );
}
