import { type ExtensionContext, Uri, window, workspace } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { MeasureScriptRequest } from '../../server/protocol/requests/fileRequests';
import { instrumentLanguages, mayHoldInstrument } from '../languages';
import { clientId, clientName, clientOptions } from '../serverOptions';
import { registerEditorFiles } from './editorFiles';

/** Pages that the extension writes itself, such as the two sides of a difference, are not for the server. */
const ownPages = /^zonewright-/;

/** The language server in a web worker, not started yet; the worker ends with the extension. */
export function workerServer(context: ExtensionContext): LanguageClient {
  const script = (name: string) => Uri.joinPath(context.extensionUri, 'dist', 'browser', name).toString(true);
  const filesOf = placeOfFiles();
  const options = clientOptions(
    instrumentLanguages.map((language) => ({ language })),
    filesOf && { filesOf: filesOf.toString() },
  );
  const worker = new Worker(script('server.js'));
  context.subscriptions.push({ dispose: () => worker.terminate() });
  const client = new LanguageClient(clientId, clientName, worker, {
    ...options,
    middleware: {
      didOpen: async (document, next) => {
        if (!ownPages.test(document.uri.scheme)) await next(document);
      },
    },
  });
  context.subscriptions.push(
    ...registerEditorFiles(client),
    client.onRequest(MeasureScriptRequest.type, () => script('measureWorker.js')),
  );
  return client;
}

/** A URI of the place that files come from: that of the first folder, else of an instrument that is open. */
function placeOfFiles(): Uri | undefined {
  const [folder] = workspace.workspaceFolders ?? [];
  if (folder) return folder.uri;
  const active = window.activeTextEditor?.document;
  const open = [...(active ? [active] : []), ...workspace.textDocuments];
  return open.find((document) => mayHoldInstrument(document) && !document.isUntitled)?.uri;
}
