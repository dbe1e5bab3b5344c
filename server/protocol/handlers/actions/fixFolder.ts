import { MessageType } from 'vscode-languageserver';
import type { EditedFile } from '../../../features/fileEdits';
import type { FixChoice, FixesTogether } from '../../../features/quickFixes';
import { fixesTogether, onesOfKind, safeOnes } from '../../../features/quickFixes';
import { nameOf, relativePath } from '../../../model/paths';
import { counted } from '../../../model/wording/counted';
import type { JudgedFile } from '../../../workspace/judgedFiles';
import { judgedFiles } from '../../../workspace/judgedFiles';
import { stopIfCancelled } from '../../cancellation';
import { rangeOf } from '../../conversion/positions';
import { pathOfUri, uriOfPath } from '../../conversion/uris';
import { workspaceEditOf } from '../../conversion/workspaceEdits';
import type { FileFixes } from '../../requests/fixRequests';
import { FolderFixesRequest } from '../../requests/fixRequests';
import type { ServerContext } from '../../serverContext';
import { tell } from '../../tell';

/** Applies chosen fixes in all instruments of folders; answers how many findings were settled in how many files. */
export async function fixFolders(
  server: ServerContext,
  folders: readonly string[],
  choose: FixChoice,
): Promise<{ fixed: number; files: number; left: number }> {
  const { connection, documents } = server;
  const changed: EditedFile[] = [];
  let fixed = 0;
  let left = 0;
  for await (const { source, findings, position } of judgedFiles(documents, folders)) {
    const fixes = fixesTogether(findings, position, choose);
    left += fixes.left;
    if (fixes.fixed.length === 0) continue;
    changed.push({ source, edits: fixes.edits });
    fixed += fixes.fixed.length;
  }
  const answer = { fixed, files: changed.length, left };
  if (changed.length === 0) {
    const which = choose === safeOnes ? 'a safe fix' : 'such a fix';
    tell(connection, MessageType.Info, `There is no finding with ${which} in the instruments of the folder.`);
    return answer;
  }
  const { applied } = await connection.workspace.applyEdit({
    label: choose === safeOnes ? 'Apply all safe fixes' : 'Apply all fixes of a kind',
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

/** Answers what fixes would change in folders, for a client that shows it before it has anything changed. */
export function handleFolderFixes(server: ServerContext): void {
  server.connection.onRequest(FolderFixesRequest.type, async ({ folder, kind }, token) => {
    const path = folder === undefined ? undefined : pathOfUri(folder);
    const folders = path === undefined ? server.folders : [path];
    const choose = kind ? onesOfKind(kind) : safeOnes;
    const files: FileFixes[] = [];
    for await (const file of judgedFiles(server.documents, folders)) {
      stopIfCancelled(token);
      const fixes = fixesTogether(file.findings, file.position, choose);
      files.push(fileFixesOf(server, folders, file, fixes));
    }
    return files;
  });
}

function fileFixesOf(
  { documents }: ServerContext,
  folders: readonly string[],
  { source, findings, position }: JudgedFile,
  { edits, fixed, left }: FixesTogether,
): FileFixes {
  const lineOf = (offset: number) => source.positionAt(offset).line;
  const byCode = new Map<string, { code: string; count: number; line: number }>();
  for (const { code, source: at, start } of findings) {
    if (at !== position) continue;
    const known = byCode.get(code);
    if (known) known.count++;
    else byCode.set(code, { code, count: 1, line: lineOf(start) });
  }
  const around = folders.find((folder) => source.path.startsWith(`${folder}/`));
  return {
    uri: documents.openDocument(source.path)?.uri ?? uriOfPath(source.path),
    name: around === undefined ? nameOf(source.path) : relativePath(around, source.path),
    edits: edits.map((edit) => ({ range: rangeOf(source, edit), newText: edit.newText })),
    fixes: fixed.map(({ finding: { code, start }, fix: { title } }) => ({
      code,
      title,
      line: lineOf(start),
    })),
    findings: [...byCode.values()],
    left,
  };
}
