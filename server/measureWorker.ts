import { parentPort } from 'node:worker_threads';
import { blockingFiles } from './workspace/files/blockingFiles';
import { measuringThread } from './workspace/measuring/measureThread';

if (parentPort) {
  const port = parentPort;
  port.on(
    'message',
    measuringThread(blockingFiles, (answer) => port.postMessage(answer)),
  );
}
