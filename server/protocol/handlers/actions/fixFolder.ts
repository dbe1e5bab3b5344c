import { MessageType } from 'vscode-languageserver';
import type { EditedFile } from '../../../features/fileEdits';
import { safeFixes } from '../../../features/quickFixes';
import { counted } from '../../../model/wording/counted';
import { judgedFiles } from '../../../workspace/judgedFiles';
import { workspaceEditOf } from '../../conversion/workspaceEdits';
import type { ServerContext } from '../../serverContext';
import { tell } from '../../tell';

/** Applies the safe fixes in all instruments of folders; answers how many findings were settled in how many files. */
export async function fixFolders(
  server: ServerContext,
  folders: readonly string[],
): Promise<{ fixed: number; files: number; left: number }> {
  const { connection, documents } = server;
  const changed: EditedFile[] = [];
  let fixed = 0;
  let left = 0;
  for await (const { source, findings, position } of judgedFiles(documents, folders)) {
    const fixes = safeFixes(findings, position);
    left += fixes.left;
    if (fixes.count === 0) continue;
    changed.push({ source, edits: fixes.edits });
    fixed += fixes.count;
  }
  const answer = { fixed, files: changed.length, left };
  if (changed.length === 0) {
    tell(
      connection,
      MessageType.Info,
      'There is no finding with a safe fix in the instruments of the folder.',
    );
    return answer;
  }
  const { applied } = await connection.workspace.applyEdit({
    label: 'Apply all safe fixes',
    edit: workspaceEditOf(server, changed),
  });
  if (!applied) {
    tell(
      connection,
      MessageType.Warning,
      'The editor did not take the fixes, so nothing was changed. Try it again.',
    );
    return { fixed: 0, files: 0, left: fixed + left };
  }
  const rest =
    left > 0
      ? ` ${counted(left, 'more fix touches', 'more fixes touch')} the same text; run the command again for them.`
      : '';
  tell(
    connection,
    MessageType.Info,
    `${counted(fixed, 'finding', 'findings')} fixed in ${counted(changed.length, 'file', 'files')}.${rest}`,
  );
  return answer;
}
