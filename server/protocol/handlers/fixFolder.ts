import { MessageType, ShowMessageNotification } from 'vscode-languageserver';
import { URI } from 'vscode-uri';
import type { EditedFile } from '../../features/fileEdits';
import { safeFixes } from '../../features/quickFixes';
import { judgedFiles } from '../../workspace/judgedFiles';
import { pathOfUri } from '../conversion/uris';
import { workspaceEditOf } from '../conversion/workspaceEdits';
import type { LanguageServer } from '../languageServer';

/** The command that applies the safe fixes in all instruments of a folder, or of all open folders. */
export const fixFolderCommand = 'zonewright.fixAllInFolder';

/** Takes the command; it answers how many findings were settled in how many files. */
export function handleFixFolder(server: LanguageServer): void {
  const { connection } = server;
  connection.onExecuteCommand(async ({ command, arguments: given = [] }) => {
    if (command !== fixFolderCommand) return null;
    const folder = folderIn(given[0]);
    return fixFolders(server, folder === undefined ? server.folders : [folder]);
  });
}

async function fixFolders(
  server: LanguageServer,
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
    tell(server, MessageType.Info, 'There is no finding with a safe fix in the instruments of the folder.');
    return answer;
  }
  const { applied } = await connection.workspace.applyEdit({
    label: 'Apply all safe fixes',
    edit: workspaceEditOf(server, changed),
  });
  if (!applied) {
    tell(
      server,
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
    server,
    MessageType.Info,
    `${counted(fixed, 'finding', 'findings')} fixed in ${counted(changed.length, 'file', 'files')}.${rest}`,
  );
  return answer;
}

/** Says something that asks for no answer. */
function tell(server: LanguageServer, type: MessageType, message: string): void {
  void server.connection.sendNotification(ShowMessageNotification.type, { type, message });
}

/** The folder that an editor names: as a URI, written out or in parts. */
function folderIn(value: unknown): string | undefined {
  if (typeof value === 'string') return pathOfUri(value);
  if (typeof value !== 'object' || value === null) return undefined;
  const { scheme, authority, path } = value as Record<string, unknown>;
  if (typeof scheme !== 'string' || typeof path !== 'string') return undefined;
  return pathOfUri(
    URI.from({ scheme, path, ...(typeof authority === 'string' && { authority }) }).toString(),
  );
}

function counted(number: number, one: string, several: string): string {
  return `${number} ${number === 1 ? one : several}`;
}
