import type { Disposable } from 'vscode';
import { commands, l10n, ViewColumn, window, workspace } from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import { ConvertRequest } from '../server/protocol/requests';
import { mayHoldInstrument } from './languages';
import type { NotesDocuments } from './notesDocuments';

const languageOf = { sfz: 'sfz', xml: 'instrument-xml' } as const;

/** Commands that open the instrument in the other notation beside its text, unsaved. */
export function registerConversion(client: LanguageClient, notes: NotesDocuments): Disposable[] {
  const convert = async (to: 'sfz' | 'xml') => {
    const document = window.activeTextEditor?.document;
    if (!mayHoldInstrument(document)) {
      await window.showWarningMessage(l10n.t('Open the instrument that is to be converted first.'));
      return;
    }
    const result = await client.sendRequest(ConvertRequest.type, { uri: document.uri.toString(), to });
    if (!result) {
      await window.showWarningMessage(l10n.t('This document holds no instrument that can be read.'));
      return;
    }
    const converted = await workspace.openTextDocument({ content: result.text, language: languageOf[to] });
    await window.showTextDocument(converted, { viewColumn: ViewColumn.Beside });
    await notes.tell(
      l10n.t('The instrument was converted.'),
      l10n.t('Notes on the conversion'),
      result.notes,
    );
  };
  return [
    commands.registerCommand('zonewright.convertToSfz', () => convert('sfz')),
    commands.registerCommand('zonewright.convertToXml', () => convert('xml')),
  ];
}
