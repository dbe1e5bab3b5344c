import { notesPage } from '../../../features/notesPage';
import { nameOf } from '../../../model/paths';
import { lineNotes } from '../../../model/writing/lineNotes';
import { convertInstrument } from '../../../workspace/convertInstrument';
import { notations } from '../../../workspace/notations/notationOf';
import { instrumentOfRecordings, recordingsBelow } from '../../../workspace/readRecordingsFolder';
import type { AnswerRequest } from '../../answerLater';
import { pathOfUri } from '../../conversion/uris';
import type { RecordingsResult } from '../../requests/recordingsRequest';
import { RecordingsRequest } from '../../requests/recordingsRequest';
import type { ServerContext } from '../../serverContext';
import { workShown } from '../../workShown';

type Heard = Awaited<ReturnType<typeof recordingsBelow>> & { folder: string };

/** Answers the request for an instrument of recordings alone. What was heard in the last folder is kept. */
export function handleRecordings(answer: AnswerRequest, { connection, documents }: ServerContext): void {
  let last: Heard | undefined;

  answer(RecordingsRequest.type, async (params, token) => {
    const folder = pathOfUri(params.folderUri);
    if (folder === undefined) return { problem: 'The folder is not where files can be read.' };
    const { leftOut } = params;
    const known = leftOut && last?.folder === folder ? last : undefined;
    const heard =
      known ??
      (await workShown(connection, params, token, async (afterStep) => ({
        folder,
        ...(await recordingsBelow(documents.files, folder, afterStep)),
      })));
    last = heard;
    if (heard.recordings.length === 0)
      return { problem: `There is no audio file in "${nameOf(folder)}" that can be read.` };
    const result = await made(heard, params.format, new Set(leftOut));
    if (result.regionCount === 0 && !leftOut)
      return {
        problem: `Neither the names nor the sound of the files in "${nameOf(folder)}" say which notes they are.`,
      };
    return result;
  });

  const made = async (
    { folder, recordings, unreadable }: Heard,
    format: 'sfz' | 'xml',
    leftOut: ReadonlySet<string>,
  ): Promise<RecordingsResult> => {
    const kept = recordings.filter(({ path }) => !leftOut.has(path));
    const { instrument, notes, decisions } = instrumentOfRecordings(kept, folder, folder);
    const regionCount = instrument.regions.length;
    const { text, kept: values } = await convertInstrument(
      { instrument, folder, notes },
      notations[format],
      {},
      documents.samples,
    );
    const lines = lineNotes(instrument, notes);
    return {
      ...{ text: regionCount === 0 ? '' : text, regionCount, decisions, unreadable },
      // What is said of one recording stands beside it.
      notes: lines.filter(({ kind }) => kind !== 'ignored').map(({ kind, message }) => ({ kind, message })),
      page: notesPage(`An instrument of the recordings in ${nameOf(folder)}`, lines, values),
    };
  };
}
