import type { CancellationToken } from 'vscode';
import { commands, type Disposable, l10n, ProgressLocation, Uri, window, workspace } from 'vscode';
import { joinedBytes } from '../server/model/joinedBytes';
import { base64Bytes } from '../server/protocol/conversion/base64';
import type { MakePackParams, MakePackResult, PackRefusal } from '../server/protocol/requests/packRequests';
import { MakePackRequest, PackPartRequest } from '../server/protocol/requests/packRequests';
import { mayHoldInstrument } from './languages';
import type { ServerClient } from './serverClient';

/** An editor holds a file whole before it writes it; larger packs are for the command line. */
const mostBytes = 2 ** 30;

/** The command that packs the instrument in the active editor to be shared. */
export function registerMakePack(client: ServerClient): Disposable {
  return commands.registerCommand('zonewright.makePack', () => makePack(client));
}

async function makePack(client: ServerClient): Promise<void> {
  const document = window.activeTextEditor?.document;
  if (!mayHoldInstrument(document) || document.isUntitled) {
    await window.showWarningMessage(l10n.t('Open the saved instrument to pack first.'));
    return;
  }
  const facts = await askedFacts();
  if (!facts) return;
  const uri = document.uri.toString();
  const title = l10n.t('Making the pack');
  const made = await window.withProgress(
    { location: ProgressLocation.Notification, title, cancellable: true },
    (_, token) => write(client, document.uri, { uri, ...facts }, token),
  );
  if (!made) return;
  if ('problem' in made) await window.showWarningMessage(made.problem);
  else
    await window.showInformationMessage(
      (made.notFlac > 0 ? `${stayingText(made.notFlac)} ` : '') +
        l10n.t(
          '{0} was written with {1} files. Share it only where the licence of the recordings lets you; the law differs by country.',
          made.name,
          made.contents.length,
        ),
    );
}

/** The licence and the maker, asked for; nothing is made up. `undefined` where a person wants no pack after all. */
async function askedFacts(): Promise<Omit<MakePackParams, 'uri'> | undefined> {
  const licence = await window.showInputBox({
    title: l10n.t('Make a pack'),
    prompt: l10n.t(
      'The licence of the recordings, as a name or a sentence. They belong to those who made them: ask where you do not know.',
    ),
    placeHolder: 'CC0 1.0',
  });
  if (licence === undefined) return undefined;
  if (licence.trim() === '') {
    const without = l10n.t('Pack without a licence');
    const answer = await window.showWarningMessage(
      l10n.t(
        'Without a licence nobody may pass the pack on, and you may not either unless the recordings are yours. The law differs by country.',
      ),
      { modal: true },
      without,
    );
    if (answer !== without) return undefined;
  }
  const maker = await window.showInputBox({
    title: l10n.t('Make a pack'),
    prompt: l10n.t('Who made the recordings? Leave it empty if that should not be said.'),
  });
  if (maker === undefined) return undefined;
  const audio = await askedAudio();
  if (!audio) return undefined;
  return {
    ...(licence.trim() === '' ? { withoutLicence: true } : { licence: licence.trim() }),
    ...(maker.trim() !== '' && { maker: maker.trim() }),
    ...(audio.isFlac && { audio: 'flac' }),
  };
}

/** How the samples are packed; `undefined` where a person wants no pack after all. */
function askedAudio(): Thenable<{ isFlac: boolean } | undefined> {
  const items = [
    { label: l10n.t('Samples as they are'), isFlac: false },
    {
      label: l10n.t('Samples as FLAC'),
      detail: l10n.t(
        'Smaller and exactly the same sound, with loops and root keys kept. Many players read loops only from WAV, so keep WAV if the instrument relies on the loops in its files.',
      ),
      isFlac: true,
    },
  ];
  return window.showQuickPick(items, {
    title: l10n.t('Make a pack'),
    placeHolder: l10n.t('How are the samples packed?'),
  });
}

async function write(
  client: ServerClient,
  near: Uri,
  params: MakePackParams,
  token: CancellationToken,
): Promise<MakePackResult | PackRefusal | undefined> {
  const result = await client.sendRequest(MakePackRequest.type, params, token);
  if ('problem' in result) return result;
  const target = await window.showSaveDialog({
    defaultUri: Uri.joinPath(near, '..', result.name),
    filters: { Zip: ['zip'] },
    saveLabel: l10n.t('Write the pack'),
  });
  if (!target) return undefined;
  const parts: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    if (token.isCancellationRequested) return undefined;
    const { data, problem } = await client.sendRequest(PackPartRequest.type, { pack: result.pack });
    if (problem !== undefined) return { problem };
    if (data === undefined) break;
    const part = base64Bytes(data);
    parts.push(part);
    length += part.length;
    if (length > mostBytes)
      return {
        problem: l10n.t(
          'The pack would have more than 1 GB. Make it on the command line with zonewright library pack.',
        ),
      };
  }
  await workspace.fs.writeFile(target, joinedBytes(parts));
  return { ...result, name: target.path.slice(target.path.lastIndexOf('/') + 1) };
}

function stayingText(count: number): string {
  return count === 1
    ? l10n.t('1 sample stays as it is, since FLAC would change it.')
    : l10n.t('{0} samples stay as they are, since FLAC would change them.', count);
}
