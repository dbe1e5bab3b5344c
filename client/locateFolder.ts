import type { Disposable } from 'vscode';
import { commands, l10n, Uri, window } from 'vscode';

/** Has a person choose the folder that paths shall lead into in the place of one that is not there. */
export function registerLocateFolder(): Disposable {
  return commands.registerCommand('zonewright.locateFolder', async (absent: string) => {
    const uri = Uri.parse(absent);
    const name = uri.path.slice(uri.path.lastIndexOf('/') + 1);
    const [chosen] =
      (await window.showOpenDialog({
        canSelectFolders: true,
        canSelectFiles: false,
        defaultUri: Uri.joinPath(uri, '..'),
        title: l10n.t('Where is the folder “{0}” now?', name),
        openLabel: l10n.t('Use this folder'),
      })) ?? [];
    if (chosen) await commands.executeCommand('zonewright.leadPaths', absent, chosen.toString());
  });
}
