import { notesPage } from '../../../features/notesPage';
import { nameOf } from '../../../model/paths';
import { lineNotes } from '../../../model/writing/lineNotes';
import { sfzNotation } from '../../../sfz/notation';
import { convertInstrument } from '../../../workspace/convertInstrument';
import { readRecordingsFolder } from '../../../workspace/readRecordingsFolder';
import { pathOfUri } from '../../conversion/uris';
import { RecordingsRequest } from '../../requests/recordingsRequest';
import type { ServerContext } from '../../serverContext';
import { workShown } from '../../workShown';

/** Answers the request for an instrument of recordings alone. */
export function handleRecordings({ connection, documents }: ServerContext): void {
  connection.onRequest(RecordingsRequest.type, async (params, token) => {
    const folder = pathOfUri(params.folderUri);
    if (folder === undefined) return { problem: 'The folder is not where files can be read.' };
    const reading = await workShown(connection, params, token, (afterStep) =>
      readRecordingsFolder(documents.files, folder, folder, afterStep),
    );
    if (!reading) return { problem: `There is no audio file in "${nameOf(folder)}" that can be read.` };
    const { instrument, notes } = reading;
    if (instrument.regions.length === 0)
      return { problem: `Neither the names nor the sounds of the files in "${nameOf(folder)}" tell a note.` };
    const { text, kept } = await convertInstrument(
      { instrument, folder, notes },
      sfzNotation,
      {},
      documents.samples,
    );
    const lines = lineNotes(instrument, notes);
    return {
      text,
      regionCount: instrument.regions.length,
      noteCount: lines.length,
      page: notesPage(`An instrument of the recordings in ${nameOf(folder)}`, lines, kept),
    };
  });
}
