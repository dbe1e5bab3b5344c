import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
  createMessageConnection,
  ProposedFeatures,
} from 'vscode-languageserver/browser';
import { uriOfPath } from './protocol/conversion/uris';
import { fewAtOnce } from './protocol/fewAtOnce';
import { LanguageServer } from './protocol/languageServer';
import { remoteFiles } from './protocol/remoteFiles';
import type { FileParams } from './protocol/requests/fileRequests';
import {
  FileRangeRequest,
  FileStatRequest,
  FolderListRequest,
  MeasureScriptRequest,
} from './protocol/requests/fileRequests';
import { sessionOrder } from './protocol/sessionOrder';
import { webMeasurer } from './workspace/measuring/webMeasureThread';

declare const self: DedicatedWorkerGlobalScope;

// An answer that can no longer be delivered is no reason to give up the others.
self.addEventListener('unhandledrejection', (event) => {
  event.preventDefault();
  console.error(event.reason instanceof Error ? event.reason.message : event.reason);
});

const connection = createConnection(
  ProposedFeatures.all,
  new BrowserMessageReader(self),
  new BrowserMessageWriter(self),
  { messageStrategy: fewAtOnce(sessionOrder()) },
);
const files = remoteFiles(connection, uriOfPath);
new LanguageServer(connection, files, {
  measurer: () =>
    webMeasurer({
      files,
      script: () => connection.sendRequest(MeasureScriptRequest.type, null),
      giveFiles,
    }),
}).listen();

/** Hands requests for files, by path, on to the editor. */
function giveFiles(port: MessagePort): () => void {
  const worker = createMessageConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port));
  for (const { type } of [FileStatRequest, FolderListRequest, FileRangeRequest]) {
    worker.onRequest(type.method, (params: FileParams) =>
      connection.sendRequest<unknown>(type.method, { ...params, file: uriOfPath(params.file) }),
    );
  }
  worker.listen();
  return () => worker.dispose();
}
