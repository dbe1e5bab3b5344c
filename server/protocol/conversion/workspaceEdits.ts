import type { AnnotatedTextEdit, TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { EditedFile } from '../../features/fileEdits';
import type { FileMove } from '../../model/fileMoves';
import { nameOf } from '../../model/paths';
import type { ServerContext } from '../serverContext';
import { rangeOf } from './positions';
import { uriOfPath } from './uris';

/** The files that change, and one that is renamed after that, for which a client shows a preview where it can. */
export interface PreviewedRename {
  files: readonly EditedFile[];
  move: FileMove;
}

/** Changes of files as the client takes them. `unsaved` is the URI of a document that is no file and so has no path. */
export function workspaceEditOf(
  server: ServerContext,
  files: readonly EditedFile[],
  { annotation, unsaved }: { annotation?: string | undefined; unsaved?: string } = {},
): WorkspaceEdit {
  const uriOf = (path: string) =>
    path === '' && unsaved !== undefined
      ? unsaved
      : (server.documents.openDocument(path)?.uri ?? uriOfPath(path));
  const editsIn = ({ source, edits }: EditedFile) =>
    edits.map(
      (edit): AnnotatedTextEdit =>
        ({
          range: rangeOf(source, edit),
          newText: edit.newText,
          ...(annotation !== undefined && { annotationId: annotation }),
        }) as AnnotatedTextEdit,
    );
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

/** Text changes, then the renaming of a file, all to be confirmed: under one heading, so that one tick takes them all. */
export function previewedEdit(server: ServerContext, { files, move }: PreviewedRename): WorkspaceEdit {
  const { changeAnnotationSupport } = server.capabilities.workspace?.workspaceEdit ?? {};
  const annotation = changeAnnotationSupport ? 'rename' : undefined;
  const edit = workspaceEditOf(server, files, { annotation });
  const rename = {
    kind: 'rename' as const,
    oldUri: uriOfPath(move.from),
    newUri: uriOfPath(move.to),
    options: { overwrite: false },
    ...(annotation !== undefined && { annotationId: annotation }),
  };
  return {
    documentChanges: [...(edit.documentChanges ?? []), rename],
    ...(changeAnnotationSupport && {
      changeAnnotations: {
        rename: {
          label: 'Rename the sample file and update the instruments that use it',
          description: `"${nameOf(move.from)}" becomes "${nameOf(move.to)}".`,
          needsConfirmation: true,
        },
      },
    }),
  };
}
