import type { Disposable, TextDocument } from 'vscode';
import { Disposable as Disposables, workspace } from 'vscode';
import { mayHoldInstrument } from './languages';
import { looksLikeInstrument } from './looksLikeInstrument';
import type { ServerClient } from './serverClient';

/**
 * Starts the server once something needs it: an instrument in the folder, or a document that looks like one. Whoever asks
 * the server something starts it too. Plain XML of other kinds does not.
 */
export function startServerWhenNeeded(client: ServerClient): Disposable {
  const start = () => {
    watches.dispose();
    void client.start();
  };
  const look = (document: TextDocument) => {
    if (isWorthStarting(document)) start();
  };
  const watches = Disposables.from(
    workspace.onDidOpenTextDocument(look),
    workspace.onDidChangeTextDocument(({ document }) => look(document)),
    client.whenStarted(() => watches.dispose()),
  );
  if (workspace.textDocuments.some(isWorthStarting)) start();
  else {
    const instruments = '**/{*.sfz,*.SFZ,*.instrument.xml,zonewright.library.json}';
    void workspace.findFiles(instruments, undefined, 1).then(({ length }) => {
      if (length > 0) start();
    });
  }
  return watches;
}

function isWorthStarting(document: TextDocument): boolean {
  if (!mayHoldInstrument(document) || document.uri.scheme.startsWith('zonewright-')) return false;
  return document.languageId !== 'xml' || looksLikeInstrument(document.getText());
}
