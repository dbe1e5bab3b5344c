import { parentPort } from 'node:worker_threads';
import { measuringThread } from './workspace/measureThread';
import { nodeFiles } from './workspace/nodeFiles';

if (parentPort) {
  const port = parentPort;
  port.on(
    'message',
    measuringThread(nodeFiles, (answer) => port.postMessage(answer)),
  );
}
