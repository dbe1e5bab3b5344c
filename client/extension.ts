import { type ExtensionContext, window, workspace } from 'vscode';
import { LookAgainNotification } from '../server/protocol/requests/lookAgainNotification';
import { TrustGrantedNotification } from '../server/protocol/requests/trustNotification';
import { AuditionHost } from './audition/host';
import { registerComparison } from './compareWith';
import { registerConversion } from './convertInstrument';
import { registerFolderChecks } from './folderChecks';
import { registerFolderFixes } from './folderFixes/fixFolder';
import { offerIncludedFiles } from './includedFiles';
import { registerInstruments } from './instruments/registerInstruments';
import { registerMapButton } from './keyboardMap/mapButton';
import { KeyboardMapPanel } from './keyboardMap/panel';
import { registerLibrary } from './library/registerLibrary';
import { registerLocateFolder } from './locateFolder';
import { registerMakePack } from './makePack';
import { registerMidi } from './midi/midiCommands';
import type { MidiAccess } from './midi/midiInputs';
import { NotesDocuments } from './notesDocuments';
import { registerOpenExample } from './openExample';
import { registerTablePaste } from './pasteTable';
import { registerRecordings } from './recordingsPreview/registerRecordings';
import { registerSampleReport } from './sampleReport';
import type { ServerClient } from './serverClient';
import { FontEditor } from './soundFont/fontEditor';
import { registerFontWriting } from './soundFont/writeFont';
import { startServerWhenNeeded } from './startServer';
import { registerVocabularies } from './vocabularies';

/**
 * Adds what the editor shows of the language server, which starts when something needs it and ends with the extension. `midi` reaches MIDI
 * keyboards, where the host can.
 */
export function startExtension(
  context: ExtensionContext,
  client: ServerClient,
  midi?: () => MidiAccess,
): void {
  const notes = new NotesDocuments();
  context.subscriptions.push(notes);
  context.subscriptions.push(
    client,
    window.onDidChangeWindowState(({ focused }) => {
      if (focused) client.tell(LookAgainNotification.type);
    }),
    workspace.onDidGrantWorkspaceTrust(() => client.tell(TrustGrantedNotification.type)),
    ...registerTablePaste(context, client, notes),
    ...registerConversion(client),
    ...registerVocabularies(),
    ...registerSampleReport(client),
    ...registerComparison(client),
    registerLocateFolder(),
    registerOpenExample(context),
    offerIncludedFiles(client),
    registerMapButton(client),
    registerFolderFixes(client),
    ...registerFolderChecks(client),
    ...registerInstruments(client),
    ...registerRecordings(context, client),
    FontEditor.register(context, client),
    registerFontWriting(client),
    ...registerLibrary(context, client),
    registerMakePack(client),
    ...KeyboardMapPanel.register(context, client),
    ...AuditionHost.registerSilencing(),
    ...registerMidi(midi, (message) => AuditionHost.play(message)),
    startServerWhenNeeded(client),
  );
}
