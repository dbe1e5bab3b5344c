import type { CancellationToken } from 'vscode-languageserver';
import { joinPath } from '../../model/paths';
import { addRecordings } from '../../recordings/addRecordings';
import { readDropped } from '../../workspace/readRecordingsFolder';
import { writtenPath } from '../../workspace/samples/writtenPath';
import type { AnswerRequest } from '../answerLater';
import { stopIfCancelled } from '../cancellation';
import { pathOfUri } from '../conversion/uris';
import { workspaceEditOf } from '../conversion/workspaceEdits';
import type { AddSamplesParams, AddSamplesResult } from '../requests/requests';
import { AddSamplesRequest } from '../requests/requests';
import type { ServerContext } from '../serverContext';
import { workShown } from '../workShown';

/** Answers the request to add samples to an instrument, as when they are dropped on its map. */
export function handleAddSamples(answer: AnswerRequest, server: ServerContext): void {
  answer(AddSamplesRequest.type, (params, token) => addSamples(server, params, token));
}

async function addSamples(
  server: ServerContext,
  params: AddSamplesParams,
  token: CancellationToken,
): Promise<AddSamplesResult> {
  const { uri, version, sampleUris, key, after } = params;
  const { documents, connection } = server;
  const dropped = sampleUris.flatMap((one) => pathOfUri(one) ?? []);
  const { folder, recordings, unreadable } = await workShown(connection, params, token, (afterStep) =>
    readDropped(documents.files, dropped, afterStep),
  );
  stopIfCancelled(token);
  if (recordings.length === 0)
    return { refusal: 'None of these is an audio file that can be read, or holds one.' };
  // Measuring takes its time; what counts is the text after it.
  const reading = await documents.reading(uri);
  if (!reading) return { refusal: 'This document holds no instrument.' };
  if (reading.folder === undefined)
    return { refusal: 'Save the document first, so that paths can lead to its samples.' };
  if (server.openDocument(uri)?.version !== version)
    return { refusal: 'The text changed in the meantime, so nothing was written. Try again.' };
  const where = { outputFolder: reading.folder };
  const added = addRecordings(reading.notation, reading.instrument, {
    recordings,
    samplePath: (path, defaultPath) => writtenPath(joinPath(folder, path), { ...where, defaultPath }),
    key,
    after,
  });
  if ('refusal' in added) return added;
  const [source] = reading.instrument.sources;
  const edit = workspaceEditOf(server, [{ source, edits: added.edits }], { unsaved: uri });
  return { edit, told: [...added.told, ...unreadable.map((path) => `"${path}" cannot be read.`)] };
}
