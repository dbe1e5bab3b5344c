import type { Disposable, TextDocument } from 'vscode';
import { Disposable as Disposables, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { State } from 'vscode-languageclient';
import { mayHoldInstrument } from './languages';
import { looksLikeInstrument } from './looksLikeInstrument';

/**
 * Starts the server once something needs it: an instrument in the folder, or a document that looks like one. Whoever asks
 * the server something starts it too. Plain XML of other kinds does not.
 */
export function startServerWhenNeeded(client: BaseLanguageClient): Disposable {
  const start = () => {
    watches.dispose();
    if (client.state === State.Stopped) void client.start();
  };
  const look = (document: TextDocument) => {
    if (isWorthStarting(document)) start();
  };
  const watches = Disposables.from(
    workspace.onDidOpenTextDocument(look),
    workspace.onDidChangeTextDocument(({ document }) => look(document)),
    client.onDidChangeState(({ newState }) => {
      if (newState === State.Running) watches.dispose();
    }),
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

const told = new WeakSet<BaseLanguageClient>();

/** Settles once the server runs and has been told of the documents that are open: before that it would say that it knows none. */
export async function whenDocumentsAreTold(client: BaseLanguageClient): Promise<void> {
  if (told.has(client)) return;
  await client.start();
  // The client tells of open documents right behind its start, each in a turn of its own.
  await new Promise((done) => setTimeout(done, 0));
  told.add(client);
}

/** Runs something each time that the server has started, and now where it has. */
export function whenStarted(client: BaseLanguageClient, run: () => void): Disposable {
  if (client.isRunning()) run();
  return client.onDidChangeState(({ newState }) => {
    if (newState === State.Running) run();
  });
}

function isWorthStarting(document: TextDocument): boolean {
  if (!mayHoldInstrument(document) || document.uri.scheme.startsWith('zonewright-')) return false;
  return document.languageId !== 'xml' || looksLikeInstrument(document.getText());
}
