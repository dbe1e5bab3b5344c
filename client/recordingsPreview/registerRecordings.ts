import type { CancellationToken, Disposable, ExtensionContext } from 'vscode';
import { commands, l10n, ProgressLocation, Uri, window, workspace } from 'vscode';
import type { RecordingsParams, RecordingsResult } from '../../server/protocol/requests/recordingsRequest';
import { RecordingsRequest } from '../../server/protocol/requests/recordingsRequest';
import type { ServerClient } from '../serverClient';
import { RecordingsPanel } from './recordingsPanel';

/** The command that makes an instrument of a folder of recordings: shows what becomes of each before anything is written. */
export function registerRecordings(context: ExtensionContext, client: ServerClient): Disposable[] {
  const panel = new RecordingsPanel(context, (folder, choice) =>
    made(client, { folderUri: folder.toString(), ...choice }),
  );
  return [
    panel,
    commands.registerCommand('zonewright.newInstrumentFromFolder', async (given?: unknown) => {
      const folder = given instanceof Uri ? given : await chosenFolder();
      const result = folder && (await listened(client, folder));
      if (result) panel.open(folder, result);
    }),
  ];
}

function listened(client: ServerClient, folder: Uri): Thenable<RecordingsResult | undefined> {
  const title = l10n.t('Listening to the recordings');
  return window.withProgress(
    { location: ProgressLocation.Notification, title, cancellable: true },
    (_progress, token) => made(client, { folderUri: folder.toString(), format: 'sfz' }, token),
  );
}

/** What the server makes of a folder; `undefined` where there is nothing, which is told, or a person has stopped it. */
async function made(
  client: ServerClient,
  params: RecordingsParams,
  token?: CancellationToken,
): Promise<RecordingsResult | undefined> {
  try {
    const result = await client.sendRequest(RecordingsRequest.type, params, token);
    if (!('problem' in result)) return result;
    await window.showWarningMessage(result.problem);
  } catch (error) {
    if (!token?.isCancellationRequested) throw error;
  }
  return undefined;
}

async function chosenFolder(): Promise<Uri | undefined> {
  const [first] = workspace.workspaceFolders ?? [];
  const chosen = await window.showOpenDialog({
    canSelectFolders: true,
    canSelectFiles: false,
    ...(first && { defaultUri: first.uri }),
    title: l10n.t('Which folder holds the recordings?'),
    openLabel: l10n.t('Look at them'),
  });
  return chosen?.[0];
}
