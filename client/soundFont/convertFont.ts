import type { CancellationToken, Progress } from 'vscode';
import { l10n, ProgressLocation, Uri, window, workspace } from 'vscode';
import { joinedBytes } from '../../server/model/joinedBytes';
import { base64Bytes } from '../../server/protocol/conversion/base64';
import type { FontTextResult } from '../../server/protocol/requests/fontRequests';
import { FontSampleRequest, FontTextRequest } from '../../server/protocol/requests/fontRequests';
import type { PresetNumbers } from '../../server/soundfont/font';
import { showPage } from '../markdownPage';
import type { ServerClient } from '../serverClient';

const samplesFolder = 'Samples';
/** Bytes that one answer gives at the most. */
const partBytes = 1 << 22;

/** Why nothing more was written, as a sentence for people. */
class ConversionFault extends Error {}

/** Asks for a folder and writes presets of a SoundFont into it: text, and the samples as WAV files in a folder beside it. */
export async function convertFont(
  client: ServerClient,
  uri: Uri,
  preset: PresetNumbers | undefined,
): Promise<void> {
  const folder = await chosenFolder(uri);
  if (!folder) return;
  const address = uri.toString();
  const result = await client.sendRequest(FontTextRequest.type, {
    uri: address,
    samples: samplesFolder,
    ...(preset && { preset }),
  });
  if ('problem' in result) {
    await window.showWarningMessage(result.problem);
    return;
  }
  try {
    const isDone = await window.withProgress(
      { location: ProgressLocation.Notification, title: l10n.t('Writing samples'), cancellable: true },
      (progress, token) => write(client, address, folder, result, progress, token),
    );
    if (isDone) await tell(folder, result);
  } catch (error) {
    if (!(error instanceof ConversionFault)) throw error;
    await window.showWarningMessage(error.message);
  }
}

async function chosenFolder(font: Uri): Promise<Uri | undefined> {
  const [folder] =
    (await window.showOpenDialog({
      defaultUri: Uri.joinPath(font, '..'),
      canSelectFiles: false,
      canSelectFolders: true,
      openLabel: l10n.t('Convert into This Folder'),
      title: l10n.t('Folder for the text, and for the samples below it'),
    })) ?? [];
  return folder;
}

async function write(
  client: ServerClient,
  address: string,
  folder: Uri,
  { texts, samples }: FontTextResult,
  progress: Progress<{ message?: string; increment?: number }>,
  token: CancellationToken,
): Promise<boolean> {
  for (const { file } of texts) {
    if ((await bytesAt(Uri.joinPath(folder, file))) !== undefined)
      throw new ConversionFault(l10n.t('{0} is there already. Choose another folder.', file));
  }
  const all = samples.reduce((sum, { bytes }) => sum + bytes, 0);
  for (const { name, bytes } of samples) {
    if (token.isCancellationRequested) return false;
    progress.report({ message: name, increment: (100 * bytes) / all });
    await writeSample(client, address, Uri.joinPath(folder, samplesFolder, name), name, bytes);
  }
  // The texts come last, so that where one is there, all that it names is there.
  for (const { file, text } of texts)
    await workspace.fs.writeFile(Uri.joinPath(folder, file), new TextEncoder().encode(text));
  return true;
}

/** Writes a sample where it is not there yet; one that is there with other bytes is not written over. */
async function writeSample(
  client: ServerClient,
  uri: string,
  target: Uri,
  name: string,
  bytes: number,
): Promise<void> {
  const parts: Uint8Array[] = [];
  for (let start = 0; start < bytes; ) {
    const { data } = await client.sendRequest(FontSampleRequest.type, {
      uri,
      name,
      start,
      length: partBytes,
    });
    const part = base64Bytes(data ?? '');
    if (part.length === 0) throw new ConversionFault(l10n.t('The sample {0} cannot be read.', name));
    parts.push(part);
    start += part.length;
  }
  const whole = joinedBytes(parts);
  const before = await bytesAt(target);
  if (before === undefined) await workspace.fs.writeFile(target, whole);
  else if (before.length !== whole.length || before.some((byte, at) => byte !== whole[at]))
    throw new ConversionFault(
      l10n.t('{0} is there with other content. Choose another folder.', `${samplesFolder}/${name}`),
    );
}

async function bytesAt(uri: Uri): Promise<Uint8Array | undefined> {
  try {
    return await workspace.fs.readFile(uri);
  } catch {
    return undefined;
  }
}

async function tell(folder: Uri, { texts, samples, page }: FontTextResult): Promise<void> {
  const [show, open] = [l10n.t('Show notes'), l10n.t('Open')];
  const answer = await window.showInformationMessage(
    l10n.t(
      '{0} and {1} were written. Look at the licence of the samples before you share them.',
      texts.length === 1 ? l10n.t('One text') : l10n.t('{0} texts', texts.length),
      samples.length === 1 ? l10n.t('one sample') : l10n.t('{0} samples', samples.length),
    ),
    open,
    show,
  );
  if (answer === show) {
    await showPage('markdown', page);
  } else if (answer === open && texts[0]) await window.showTextDocument(Uri.joinPath(folder, texts[0].file));
}
