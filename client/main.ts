import type { ExtensionContext } from 'vscode';
import { registerConversion } from './convertInstrument';
import { KeyboardMapPanel } from './keyboardMap/panel';
import { startLanguageServer } from './languageServer';
import { NotesDocuments } from './notesDocuments';
import { registerTablePaste } from './pasteTable';
import { registerSampleReport } from './sampleReport';
import { registerVocabularies } from './vocabularies';

/** Starts the language server and adds what the editor shows of it. */
export async function activate(context: ExtensionContext): Promise<void> {
  const notes = new NotesDocuments();
  context.subscriptions.push(notes);
  const client = await startLanguageServer(context);
  context.subscriptions.push(
    ...registerTablePaste(context, client, notes),
    ...registerConversion(client),
    ...registerVocabularies(),
    registerSampleReport(client),
    ...KeyboardMapPanel.register(context, client),
  );
}
