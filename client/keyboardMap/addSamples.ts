import type { Uri } from 'vscode';
import { l10n, ProgressLocation, window, workspace } from 'vscode';
import type { AddSamplesParams } from '../../server/protocol/requests/requests';
import { AddSamplesRequest } from '../../server/protocol/requests/requests';
import type { ServerClient } from '../serverClient';

/** Where samples go: the document that a map shows in its version, a key for one without a root, and the region to stand behind. */
export interface SamplesPlace {
  uri: Uri;
  version: number;
  key?: number | undefined;
  after?: number | undefined;
}

/** Adds samples to an instrument in one edit of its text; gives what was decided, or why nothing was written, as a sentence. */
export async function addSamples(
  client: ServerClient,
  samples: readonly string[],
  { uri, version, key, after }: SamplesPlace,
): Promise<string> {
  const params: AddSamplesParams = {
    uri: uri.toString(),
    version,
    sampleUris: [...samples],
    ...(key !== undefined && { key }),
    ...(after !== undefined && { after }),
  };
  const answer = await window.withProgress(
    { location: ProgressLocation.Notification, title: l10n.t('Listening to the samples'), cancellable: true },
    async (_progress, token) => {
      try {
        return await client.sendRequest(AddSamplesRequest.type, params, token);
      } catch (error) {
        if (token.isCancellationRequested) return undefined;
        throw error;
      }
    },
  );
  if (!answer) return l10n.t('Nothing was changed.');
  const edit = answer.edit && (await client.asWorkspaceEdit(answer.edit));
  if (!edit) return answer.refusal ?? failed();
  return (await workspace.applyEdit(edit)) ? (answer.told ?? []).join(' ') : failed();
}

function failed(): string {
  return l10n.t('The text could not be changed. Check that it can be written to, and try again.');
}
