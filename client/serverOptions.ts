import { workspace } from 'vscode';
import type { DocumentSelector, LanguageClientOptions } from 'vscode-languageclient';

import { folderCheckCommands } from './folderChecks';

/** The name under which the editor keeps the server's output, and the one that a person reads. */
export const clientId = 'zonewright';
export const clientName = 'Zonewright';

const playCommand = 'zonewright.playRegions';
const playSampleCommand = 'zonewright.playSample';

/** What every host starts the server with; `more` is told to the server beside it. */
export function clientOptions(
  documents: DocumentSelector,
  more: Readonly<Record<string, string>> = {},
): LanguageClientOptions {
  return {
    documentSelector: documents,
    // Links in hovers may start these, and no other command.
    markdown: { isTrusted: { enabledCommands: [playCommand, playSampleCommand] } },
    synchronize: { configurationSection: 'zonewright' },
    // Asked for at each start, also after the server broke down.
    initializationOptions: () => ({
      suggestCommand: 'editor.action.triggerSuggest',
      mapCommand: 'zonewright.showKeyboardMap',
      playCommand,
      playSampleCommand,
      openCommand: 'zonewright.openFile',
      fixFolderCommand: 'zonewright.fixAllInFolder',
      locateFolderCommand: 'zonewright.locateFolder',
      saveVocabularyCommand: 'zonewright.saveVocabulary',
      ownCommands: folderCheckCommands,
      trusted: workspace.isTrusted,
      ...more,
    }),
  };
}
