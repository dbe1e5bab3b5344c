import { commands, l10n, Uri, ViewColumn, window } from 'vscode';
import type { LibraryRow } from '../../server/library/report/libraryRow';
import type { LibraryView } from '../../server/protocol/requests/libraryRequests';
import type { LibraryPlace } from './messages';

/** Opens what is asked for of an instrument: its text, its map, its map with its sound, its notes or what it was made of. */
export async function openPlace(library: LibraryView, row: LibraryRow, place: LibraryPlace): Promise<void> {
  const folder = Uri.parse(library.folder);
  const output = Uri.parse(library.output);
  const text = row.text === undefined ? undefined : Uri.joinPath(output, row.text);
  try {
    if (place === 'source' || !text) {
      const source = Uri.joinPath(folder, row.source.replace(/#\d+:\d+$/, ''));
      await commands.executeCommand('vscode.open', source, { viewColumn: ViewColumn.Active });
    } else if (place === 'notes') {
      await commands.executeCommand('vscode.open', Uri.joinPath(output, 'notes', `${row.fileName}.md`));
    } else {
      await commands.executeCommand('vscode.open', text, { viewColumn: ViewColumn.Active });
      if (place === 'map') await commands.executeCommand('zonewright.showKeyboardMap');
      if (place === 'sound') await commands.executeCommand('zonewright.playKeys');
    }
  } catch {
    await window.showWarningMessage(l10n.t('{0} cannot be opened. Build the library again.', row.name));
  }
}
