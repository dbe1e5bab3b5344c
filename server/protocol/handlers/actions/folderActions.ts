import type { CodeAction, CodeActionParams } from 'vscode-languageserver';
import { CodeActionKind, MessageType } from 'vscode-languageserver';
import { folderOf, joinPath, nameOf, relativePath } from '../../../model/paths';
import { counted } from '../../../model/wording/counted';
import type { Judgement } from '../../../workspace/openDocument';
import { diagnosticOf } from '../../conversion/diagnostics';
import { offsetOf } from '../../conversion/positions';
import { uriOfPath } from '../../conversion/uris';
import { workspaceEditOf } from '../../conversion/workspaceEdits';
import type { ServerContext } from '../../serverContext';
import { tell } from '../../tell';
import { pathsAfter } from '../handleRename';

/** Leads the paths that lead into one folder into another: the URIs of both. */
export const leadPathsCommand = 'zonewright.leadPaths';

/** Folders beside an absent one that are looked into, and those that are offered. */
const mostLookedInto = 200;
const mostOffered = 3;

/** The share of the files that should be in a folder from which on another one is offered in its place (our choice). */
const leastShare = 0.5;

/** For findings that a whole folder is not there: the folders around that hold its files, and a way to choose one. */
export async function folderActions(
  server: ServerContext,
  judgement: Judgement,
  { range, context, textDocument: { uri } }: CodeActionParams,
): Promise<CodeAction[]> {
  if (context.only?.every((only) => only !== '' && only !== CodeActionKind.QuickFix)) return [];
  const source = judgement.instrument.sources[judgement.source];
  const start = offsetOf(source, range.start);
  const end = offsetOf(source, range.end);
  const actions: CodeAction[] = [];
  for (const finding of judgement.findings) {
    const { absentFolder } = finding;
    if (!absentFolder || finding.source !== judgement.source || finding.start > end || finding.end < start)
      continue;
    const absent = joinPath(folderOf(judgement.instrument.sources[0]?.path ?? ''), absentFolder.path);
    const diagnostics = [diagnosticOf(finding, judgement, server.diagnosticOptions(uri))];
    const action = (title: string, command: string, given: string[]): CodeAction => ({
      title,
      kind: CodeActionKind.QuickFix,
      diagnostics,
      command: { title, command, arguments: given },
    });
    for (const { folder, count } of await foldersWith(server, absent, absentFolder.files())) {
      const shown = relativePath(folderOf(absent), folder) || '.';
      const title = `Use the folder "${shown}", which holds ${count} of ${counted(absentFolder.count, 'sample')}`;
      actions.push(action(title, leadPathsCommand, [uriOfPath(absent), uriOfPath(folder)]));
    }
    if (server.locateFolderCommand !== undefined)
      actions.push(action('Locate the folder …', server.locateFolderCommand, [uriOfPath(absent)]));
  }
  return actions;
}

/** The folders beside an absent one, and that around it, that hold its files; those with the most first. */
async function foldersWith(
  { documents }: ServerContext,
  absent: string,
  files: readonly string[],
): Promise<{ folder: string; count: number }[]> {
  const { folders } = documents.samples;
  const around = folderOf(absent);
  const names = await folders.fetchNames(around);
  const beside = [...(names ?? [])].filter(([, kind]) => kind === 'folder').slice(0, mostLookedInto);
  const candidates = [around, ...beside.map(([name]) => joinPath(around, name))];
  const found = await Promise.all(
    candidates.map(async (folder) => {
      let count = 0;
      for (const file of files) {
        const inner = await folders.fetchNames(folderOf(joinPath(folder, file)));
        if (inner?.has(nameOf(file))) count++;
      }
      return { folder, count };
    }),
  );
  return found
    .filter(({ count }) => count >= leastShare * files.length)
    .sort((a, b) => b.count - a.count)
    .slice(0, mostOffered);
}

/** Rewrites the paths of all instruments of the open folders that lead into a folder; answers whether any did. */
export async function leadPaths(server: ServerContext, from: string, to: string): Promise<boolean> {
  const { files, problems } = await pathsAfter(server, [{ from, to }], () => {});
  const [problem] = problems;
  if (files.length === 0) {
    tell(server.connection, MessageType.Warning, problem ?? 'No path leads into that folder any more.');
    return false;
  }
  const edit = workspaceEditOf(server, files);
  const { applied } = await server.connection.workspace.applyEdit({ label: 'Lead paths elsewhere', edit });
  return applied;
}
