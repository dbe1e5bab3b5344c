import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { instrumentLanguages } from './languages';
import { clientId, clientName, clientOptions } from './serverOptions';

/** The language server as a process of its own, not started yet. */
export function processServer(context: ExtensionContext): LanguageClient {
  const module = Uri.joinPath(context.extensionUri, 'dist', 'server.js').fsPath;
  const documents = instrumentLanguages.flatMap((language) => [
    { language, scheme: 'file' },
    { language, scheme: 'untitled' },
  ]);
  return new LanguageClient(
    clientId,
    clientName,
    { module, transport: TransportKind.ipc },
    clientOptions(documents, { cacheFolder: Uri.joinPath(context.globalStorageUri, 'measures').fsPath }),
  );
}
