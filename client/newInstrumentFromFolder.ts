import type { Disposable } from 'vscode';
import { commands, l10n, ProgressLocation, Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { RecordingsRequest } from '../server/protocol/requests/recordingsRequest';
import { showPage } from './markdownPage';
import { openNewInstrument } from './tablePreview/newInstrument';

/** The command that makes an instrument of a folder of recordings and opens it there, unsaved. */
export function registerNewInstrumentFromFolder(client: BaseLanguageClient): Disposable {
  return commands.registerCommand('zonewright.newInstrumentFromFolder', async (given?: unknown) => {
    const folder = given instanceof Uri ? given : await chosenFolder();
    if (!folder) return;
    const result = await window.withProgress(
      {
        location: ProgressLocation.Notification,
        title: l10n.t('Listening to the recordings'),
        cancellable: true,
      },
      async (_progress, token) => {
        try {
          return await client.sendRequest(RecordingsRequest.type, { folderUri: folder.toString() }, token);
        } catch (error) {
          if (token.isCancellationRequested) return undefined;
          throw error;
        }
      },
    );
    if (!result) return;
    if ('problem' in result) {
      await window.showWarningMessage(result.problem);
      return;
    }
    const name = folder.path.slice(folder.path.lastIndexOf('/') + 1);
    await window.showTextDocument(await openNewInstrument(result.text, 'sfz', folder, name), {
      preview: false,
    });
    const show = l10n.t('Show notes');
    const told = l10n.t(
      '{0} regions were made of the recordings. {1} notes tell what was decided: play each key and listen.',
      result.regionCount,
      result.noteCount,
    );
    if ((await window.showInformationMessage(told, show)) !== show) return;
    await showPage('markdown', result.page);
  });
}

async function chosenFolder(): Promise<Uri | undefined> {
  const [first] = workspace.workspaceFolders ?? [];
  const chosen = await window.showOpenDialog({
    canSelectFolders: true,
    canSelectFiles: false,
    ...(first && { defaultUri: first.uri }),
    title: l10n.t('Which folder holds the recordings?'),
    openLabel: l10n.t('Make an instrument of it'),
  });
  return chosen?.[0];
}
