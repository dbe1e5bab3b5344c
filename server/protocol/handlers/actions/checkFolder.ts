import { MessageType } from 'vscode-languageserver';
import { counted } from '../../../model/wording/counted';
import type { FolderCheck, FolderFindings } from '../../folderFindings';
import type { ServerContext } from '../../serverContext';
import { tell } from '../../tell';

/** Checks the instruments of folders with its progress shown, and tells how much was found. */
export async function checkFolders(
  { connection }: ServerContext,
  folderFindings: FolderFindings,
  folders: readonly string[],
): Promise<FolderCheck> {
  const progress = await connection.window.createWorkDoneProgress();
  progress.begin('Checking instruments', 0, undefined, true);
  let checked: FolderCheck;
  try {
    checked = await folderFindings.check(folders, progress);
  } finally {
    progress.done();
  }
  const { files, filesWithFindings, findings } = checked;
  const found =
    findings === 0
      ? 'Nothing was found.'
      : `${counted(findings, 'finding', 'findings')} in ${counted(filesWithFindings, 'file', 'files')}; the list of problems shows them.`;
  const message =
    files === 0
      ? 'There is no instrument in the folder.'
      : `${counted(files, 'file', 'files')} of instruments checked. ${found}`;
  tell(
    connection,
    MessageType.Info,
    progress.token.isCancellationRequested ? `Stopped. ${message}` : message,
  );
  return checked;
}
