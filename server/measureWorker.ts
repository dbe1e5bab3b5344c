import { parentPort } from 'node:worker_threads';
import { nodeFiles } from './workspace/files/nodeFiles';
import { measuringThread } from './workspace/measuring/measureThread';

if (parentPort) {
  const port = parentPort;
  port.on(
    'message',
    measuringThread(nodeFiles, (answer) => port.postMessage(answer)),
  );
}
