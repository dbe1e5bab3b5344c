import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { instrumentLanguages } from './languages';

/** Starts the language server in a process of its own; it ends with the extension. */
export async function startLanguageServer(context: ExtensionContext): Promise<LanguageClient> {
  const module = Uri.joinPath(context.extensionUri, 'dist', 'server.js').fsPath;
  const client = new LanguageClient(
    'zonewright',
    'Zonewright',
    { module, transport: TransportKind.ipc },
    {
      documentSelector: instrumentLanguages.flatMap((language) => [
        { language, scheme: 'file' },
        { language, scheme: 'untitled' },
      ]),
      synchronize: { configurationSection: 'zonewright' },
      initializationOptions: {
        suggestCommand: 'editor.action.triggerSuggest',
        mapCommand: 'zonewright.showKeyboardMap',
        openCommand: 'zonewright.openFile',
        saveVocabularyCommand: 'zonewright.saveVocabulary',
        cacheFolder: Uri.joinPath(context.globalStorageUri, 'measures').fsPath,
      },
    },
  );
  await client.start();
  context.subscriptions.push({ dispose: () => client.stop() });
  return client;
}
