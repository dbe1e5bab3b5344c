import type { CodeAction, CodeActionParams, WorkspaceEdit } from 'vscode-languageserver';
import { mainSource } from '../../../features/readDocument';
import type { SelectedDocument } from '../../../features/refactor/refactoring';
import { refactorings } from '../../../features/refactor/refactorings';
import { joinEdits } from '../../../model/editing/edits';
import { offsetOf, rangeOf } from '../../conversion/positions';
import { uriOfPath } from '../../conversion/uris';
import { readDocument } from '../../requestedDocument';
import type { ServerContext } from '../../serverContext';

/** The kinds of refactorings, for the client to know. */
export const refactorKinds: readonly string[] = [...new Set(refactorings.map(({ kind }) => kind))];

/** What an action holds until its change is asked for. */
interface Postponed {
  refactoring: string;
  uri: string;
  version: number;
  start: number;
  end: number;
}

/** The refactorings that can be done at a selection; their changes are worked out when one is chosen. */
export async function refactorActions(
  server: ServerContext,
  { textDocument: { uri }, range, context }: CodeActionParams,
): Promise<CodeAction[]> {
  const wanted = refactorings.filter(
    ({ kind }) =>
      !context.only ||
      context.only.some((only) => only === '' || kind === only || kind.startsWith(`${only}.`)),
  );
  const document = wanted.length > 0 ? await readDocument(server, uri) : undefined;
  if (!document) return [];
  const source = mainSource(document);
  const selected = { ...document, start: offsetOf(source, range.start), end: offsetOf(source, range.end) };
  const version = server.openDocument(uri)?.version ?? 0;
  const { dataSupport, resolveSupport } = server.capabilities.textDocument?.codeAction ?? {};
  const later = dataSupport === true && resolveSupport?.properties.includes('edit') === true;
  const actions: CodeAction[] = [];
  for (const { id, kind, offer } of wanted) {
    if (id === 'regionsToFile' && !makesFiles(server)) continue;
    const title = offer(selected);
    if (title === undefined) continue;
    const { start, end } = selected;
    const data: Postponed = { refactoring: id, uri, version, start, end };
    const action: CodeAction = { title, kind, data };
    if (later) actions.push(action);
    else {
      const resolved = await resolveRefactor(server, action);
      if (resolved.edit) actions.push(resolved);
    }
  }
  return actions;
}

/** Works out the change of an action; there is none where the document is another by now. */
export async function resolveRefactor(server: ServerContext, action: CodeAction): Promise<CodeAction> {
  const { refactoring: id, uri, version, start, end } = (action.data ?? {}) as Partial<Postponed>;
  const refactoring = refactorings.find((one) => one.id === id);
  if (!refactoring || uri === undefined || start === undefined || end === undefined) return action;
  const document = await readDocument(server, uri);
  if (!document || server.openDocument(uri)?.version !== version) return action;
  const selected: SelectedDocument = { ...document, start, end };
  const made = await refactoring.make(selected);
  if (!made?.edits.every(({ source }) => source === 0)) return action;
  const source = mainSource(document);
  const edits = joinEdits(made.edits).map((edit) => ({
    range: rangeOf(source, edit),
    newText: edit.newText,
  }));
  return { ...action, edit: editOf(server, uri, edits, made.newFile) };
}

function editOf(
  server: ServerContext,
  uri: string,
  edits: NonNullable<WorkspaceEdit['changes']>[string],
  newFile: { path: string; text: string } | undefined,
): WorkspaceEdit {
  if (!server.capabilities.workspace?.workspaceEdit?.documentChanges) return { changes: { [uri]: edits } };
  const version = server.openDocument(uri)?.version ?? null;
  const change = { textDocument: { uri, version }, edits };
  if (!newFile) return { documentChanges: [change] };
  const target = uriOfPath(newFile.path);
  const start = { line: 0, character: 0 };
  return {
    documentChanges: [
      { kind: 'create', uri: target, options: { overwrite: false } },
      {
        textDocument: { uri: target, version: null },
        edits: [{ range: { start, end: start }, newText: newFile.text }],
      },
      change,
    ],
  };
}

function makesFiles({ capabilities }: ServerContext): boolean {
  const { documentChanges, resourceOperations } = capabilities.workspace?.workspaceEdit ?? {};
  return documentChanges === true && resourceOperations?.includes('create') === true;
}
