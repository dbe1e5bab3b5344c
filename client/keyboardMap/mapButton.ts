import type { Disposable, TextEditor } from 'vscode';
import { commands, Disposable as Disposables, window } from 'vscode';
import { CheckInstrumentRequest } from '../../server/protocol/requests/instrumentListRequests';
import { looksLikeInstrument } from '../looksLikeInstrument';
import type { ServerClient } from '../serverClient';

const holdsInstrument = 'zonewright.xmlHoldsInstrument';

/** Lets the button of the map stand above XML of other names too, where it holds an instrument. */
export function registerMapButton(client: ServerClient): Disposable {
  const look = async (editor: TextEditor | undefined) => {
    const document = editor?.document;
    const isAsked =
      document?.languageId === 'xml' && client.isRunning && looksLikeInstrument(document.getText());
    const state = isAsked
      ? await client.sendRequest(CheckInstrumentRequest.type, {
          uri: document.uri.toString(),
        })
      : null;
    if (editor === window.activeTextEditor)
      await commands.executeCommand('setContext', holdsInstrument, state !== null);
  };
  return Disposables.from(
    window.onDidChangeActiveTextEditor((editor) => void look(editor)),
    client.whenStarted(() => void look(window.activeTextEditor)),
  );
}
