import type { TextDocumentEdit, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { EditedFile } from '../../features/fileEdits';
import type { FileMove } from '../../model/fileMoves';
import type { ServerContext } from '../serverContext';
import { rangeOf } from './positions';
import { uriOfPath } from './uris';

/** Changes of files as the client takes them. `unsaved` is the URI of a document that is no file and so has no path. */
export function workspaceEditOf(
  server: ServerContext,
  files: readonly EditedFile[],
  { unsaved }: { unsaved?: string } = {},
): WorkspaceEdit {
  const uriOf = (path: string) =>
    path === '' && unsaved !== undefined
      ? unsaved
      : (server.documents.openDocument(path)?.uri ?? uriOfPath(path));
  const editsIn = ({ source, edits }: EditedFile) =>
    edits.map((edit): TextEdit => ({ range: rangeOf(source, edit), newText: edit.newText }));
  if (!server.capabilities.workspace?.workspaceEdit?.documentChanges)
    return { changes: Object.fromEntries(files.map((file) => [uriOf(file.source.path), editsIn(file)])) };
  return {
    documentChanges: files.map((file): TextDocumentEdit => {
      const uri = uriOf(file.source.path);
      const version = server.openDocument(uri)?.version ?? null;
      return { textDocument: { uri, version }, edits: editsIn(file) };
    }),
  };
}

/** Whether the client renames files as part of a change. */
export function renamesFiles({ capabilities }: ServerContext): boolean {
  const { documentChanges, resourceOperations } = capabilities.workspace?.workspaceEdit ?? {};
  return documentChanges === true && resourceOperations?.includes('rename') === true;
}

/** Text changes, then the renaming of a file, as one change. */
export function renamingEdit(
  server: ServerContext,
  { files, move }: { files: readonly EditedFile[]; move: FileMove },
): WorkspaceEdit {
  const rename = {
    kind: 'rename' as const,
    oldUri: uriOfPath(move.from),
    newUri: uriOfPath(move.to),
    options: { overwrite: false },
  };
  return { documentChanges: [...(workspaceEditOf(server, files).documentChanges ?? []), rename] };
}
