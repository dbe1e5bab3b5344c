/** Runs in a browser's page: the editor's side of the protocol towards a server in a worker, with files in memory. */
import type { MessageConnection } from 'vscode-languageserver-protocol/browser';
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createMessageConnection,
} from 'vscode-languageserver-protocol/browser';
import { WholeFiles } from '../../../../client/browser/wholeFiles';
import {
  FileRangeRequest,
  FileStatRequest,
  FolderListRequest,
  MeasureScriptRequest,
} from '../../../../server/protocol/requests/fileRequests';

type PageWorker = ConstructorParameters<typeof BrowserMessageReader>[0];
declare const Worker: new (address: string) => PageWorker;
/** What the test puts there: the files by URI, in base 64, and the address of the script that measures, if there is one. */
declare const given: { files: Record<string, string>; measureScript?: string };

const contents = new Map(Object.entries(given.files).map(([uri, text]) => [uri, bytesOf(text)]));
const whole = new WholeFiles(async (uri) => {
  const content = contents.get(uri);
  if (!content) throw new Error('There is no such file.');
  return content;
});
const worker = new Worker('/server.js');
const connection = createMessageConnection(
  new BrowserMessageReader(worker),
  new BrowserMessageWriter(worker),
);

connection.onRequest(FileStatRequest.type, ({ file }) => {
  const content = contents.get(file);
  if (content) return { kind: 'file', size: content.length, modified: 1 };
  return namesIn(file).size > 0 ? { kind: 'folder', size: 0, modified: 1 } : null;
});
connection.onRequest(FolderListRequest.type, ({ file }) => {
  const entries = [...namesIn(file)].map(([name, kind]) => ({ name, kind }));
  return entries.length > 0 ? entries : null;
});
connection.onRequest(FileRangeRequest.type, ({ start, length, ...state }) =>
  whole.range(state, start, length),
);
connection.onRequest(MeasureScriptRequest.type, () => {
  if (given.measureScript === undefined) throw new Error('There is no such script.');
  return given.measureScript;
});
connection.onRequest('workspace/configuration', ({ items }: { items: unknown[] }) => items.map(() => ({})));
connection.onRequest('client/registerCapability', () => null);
connection.onRequest('workspace/diagnostic/refresh', () => null);
connection.listen();

function namesIn(folder: string): Map<string, 'file' | 'folder'> {
  const names = new Map<string, 'file' | 'folder'>();
  for (const uri of contents.keys()) {
    if (!uri.startsWith(`${folder}/`)) continue;
    const [name = '', ...more] = uri.slice(folder.length + 1).split('/');
    names.set(name, more.length > 0 ? 'folder' : 'file');
  }
  return names;
}

function bytesOf(base64: string): Uint8Array {
  return Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
}

/** What the test calls in the page. */
export interface EditorPage {
  connection: MessageConnection;
}

Object.assign(globalThis, { editor: { connection } satisfies EditorPage });
