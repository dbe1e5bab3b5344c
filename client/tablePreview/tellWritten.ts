import type { TextDocument } from 'vscode';
import { l10n } from 'vscode';
import type { TableNote } from '../../server/protocol/requests/tableRequests';
import type { NotesDocuments } from '../notesDocuments';

/** The command that opens the preview of the table that was written last. */
export const reviewCommand = 'zonewright.reviewWrittenTable';

/** Says how many regions were written and offers the notes and the preview. */
export async function tellWritten(
  notes: NotesDocuments,
  document: TextDocument,
  count: number,
  list: readonly TableNote[],
): Promise<void> {
  const name = document.uri.path.slice(document.uri.path.lastIndexOf('/') + 1);
  const title = l10n.t('Notes on the table pasted into {0}', name);
  const done = count === 1 ? l10n.t('1 region written.') : l10n.t('{0} regions written.', count);
  await notes.tell(done, title, list, { label: l10n.t('Preview table'), command: reviewCommand });
}
