import type { Disposable, TextEditor } from 'vscode';
import { commands, Disposable as Disposables, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { CheckInstrumentRequest } from '../../server/protocol/requests/instrumentListRequests';
import { looksLikeInstrument } from '../looksLikeInstrument';
import { whenStarted } from '../startServer';

const holdsInstrument = 'zonewright.xmlHoldsInstrument';

/** Lets the button of the map stand above XML of other names too, where it holds an instrument. */
export function registerMapButton(client: BaseLanguageClient): Disposable {
  const look = async (editor: TextEditor | undefined) => {
    const document = editor?.document;
    const isAsked =
      document?.languageId === 'xml' && client.isRunning() && looksLikeInstrument(document.getText());
    const state = isAsked
      ? await client.sendRequest(CheckInstrumentRequest.type, {
          uri: client.code2ProtocolConverter.asUri(document.uri),
        })
      : null;
    if (editor === window.activeTextEditor)
      await commands.executeCommand('setContext', holdsInstrument, state !== null);
  };
  return Disposables.from(
    window.onDidChangeActiveTextEditor((editor) => void look(editor)),
    whenStarted(client, () => void look(window.activeTextEditor)),
  );
}
