import type { CodeAction, CodeActionParams } from 'vscode-languageserver';
import { CodeActionKind, CodeActionTriggerKind, MessageType } from 'vscode-languageserver';
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
/** Folders of the open ones that are looked into where no folder beside does, when a person asks. */
const mostWalked = 1000;
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
    const files = absentFolder.files();
    const beside = await foldersWith(server, absent, files);
    const isAsked = context.triggerKind !== CodeActionTriggerKind.Automatic;
    const found = beside.length > 0 || !isAsked ? beside : await openFoldersWith(server, files);
    for (const { folder, count } of found) {
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
): Promise<FoundFolder[]> {
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
  return best(found, files);
}

interface FoundFolder {
  folder: string;
  /** How many of the files it holds. */
  count: number;
}

function best(found: readonly FoundFolder[], files: readonly string[]): FoundFolder[] {
  return found
    .filter(({ count }) => count >= leastShare * files.length)
    .sort((a, b) => b.count - a.count)
    .slice(0, mostOffered);
}

/** The folders anywhere in the open ones that hold the files of an absent one, as far as there are not too many. */
async function openFoldersWith(
  { documents, folders }: ServerContext,
  files: readonly string[],
): Promise<FoundFolder[]> {
  const names = new Map<string, ReadonlySet<string>>();
  const waiting = [...folders];
  for (const folder of waiting) {
    // What is looked through once need not be watched, as what the store of samples lists would be.
    const entries = (await documents.files.list(folder)) ?? [];
    names.set(folder, new Set(entries.filter(({ kind }) => kind === 'file').map(({ name }) => name)));
    for (const { name, kind } of entries) {
      const isWorthLooking = kind === 'folder' && !name.startsWith('.') && name !== 'node_modules';
      if (isWorthLooking && waiting.length < mostWalked) waiting.push(joinPath(folder, name));
    }
  }
  const found = [...names.keys()].map((folder) => ({
    folder,
    count: files.filter((file) => names.get(folderOf(joinPath(folder, file)))?.has(nameOf(file))).length,
  }));
  return best(found, files);
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
  const { applied } = await server.connection.workspace.applyEdit({ label: 'Change paths', edit });
  return applied;
}
