import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createMessageConnection,
} from 'vscode-languageserver-protocol/browser';
import { remoteFiles } from './protocol/remoteFiles';
import type { ThreadMessage } from './workspace/measuring/measureThread';
import { measuringThread } from './workspace/measuring/measureThread';
import { threadIsReady } from './workspace/measuring/webMeasureThread';

declare const self: DedicatedWorkerGlobalScope;

// The first message brings the port over which files are asked for.
self.onmessage = ({ ports: [port] }) => {
  if (!port) return;
  const connection = createMessageConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port));
  connection.listen();
  const files = remoteFiles(connection, (path) => path);
  const receive = measuringThread(files, (answer) => self.postMessage(answer));
  self.onmessage = ({ data }: MessageEvent<ThreadMessage>) => receive(data);
};
self.postMessage(threadIsReady);
