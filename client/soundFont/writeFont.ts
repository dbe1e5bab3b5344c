import type { Disposable } from 'vscode';
import { commands, l10n, ProgressLocation, Uri, window, workspace } from 'vscode';
import { joinedBytes } from '../../server/model/joinedBytes';
import { base64Bytes } from '../../server/protocol/conversion/base64';
import type { WriteFontResult } from '../../server/protocol/requests/fontRequests';
import { FontPartRequest, WriteFontRequest } from '../../server/protocol/requests/fontRequests';
import { mayHoldInstrument } from '../languages';
import { showPage } from '../markdownPage';
import type { ServerClient } from '../serverClient';

/** The command that writes the instrument in the active editor as a SoundFont. */
export function registerFontWriting(client: ServerClient): Disposable {
  return commands.registerCommand('zonewright.convertToSoundFont', () => writeFont(client));
}

async function writeFont(client: ServerClient): Promise<void> {
  const document = window.activeTextEditor?.document;
  if (!mayHoldInstrument(document) || document.isUntitled) {
    await window.showWarningMessage(l10n.t('Open the saved instrument to write as a SoundFont first.'));
    return;
  }
  const name = document.uri.path
    .slice(document.uri.path.lastIndexOf('/') + 1)
    .replace(/(\.instrument)?\.\w+$/, '');
  const uri = document.uri.toString();
  const target = await window.showSaveDialog({
    defaultUri: Uri.joinPath(document.uri, '..', `${name}.sf2`),
    filters: { SoundFont: ['sf2'] },
    saveLabel: l10n.t('Write SoundFont'),
  });
  if (!target) return;
  const title = l10n.t('Writing the SoundFont');
  const written = await window.withProgress(
    { location: ProgressLocation.Notification, title, cancellable: true },
    async (progress, token) => {
      const result = await client.sendRequest(WriteFontRequest.type, { uri, name }, token);
      if ('problem' in result) return result;
      const parts: Uint8Array[] = [];
      for (;;) {
        if (token.isCancellationRequested) return undefined;
        const { data, problem } = await client.sendRequest(FontPartRequest.type, { font: result.font });
        if (problem !== undefined) return { problem };
        if (data === undefined) break;
        const part = base64Bytes(data);
        parts.push(part);
        progress.report({ increment: (100 * part.length) / result.bytes });
      }
      await workspace.fs.writeFile(target, joinedBytes(parts));
      return result;
    },
  );
  if (!written) return;
  if ('problem' in written) await window.showWarningMessage(written.problem);
  else await tell(target, written);
}

async function tell(target: Uri, { notes, kept, page }: WriteFontResult): Promise<void> {
  const name = target.path.slice(target.path.lastIndexOf('/') + 1);
  const told =
    notes.length === 0
      ? l10n.t('{0} was written. All {1} values were carried over exactly.', name, kept)
      : l10n.t(
          '{0} was written. {1} values were carried over exactly. The notes list the rest: {2}.',
          name,
          kept,
          notes.length,
        );
  const [show, open] = [l10n.t('Show notes'), l10n.t('Open')];
  const answer = await window.showInformationMessage(told, open, show);
  if (answer === open) await commands.executeCommand('vscode.open', target);
  if (answer !== show) return;
  await showPage('markdown', page);
}
