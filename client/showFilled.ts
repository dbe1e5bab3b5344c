import type { TextDocument } from 'vscode';
import { Position, WorkspaceEdit, workspace } from 'vscode';

/**
 * Shows a new, empty document and puts a text into it. In this order: what has changed and is not to be seen anywhere,
 * the editor shows by itself, in the group where a person works.
 */
export async function showFilled(
  document: TextDocument,
  text: string,
  show: (document: TextDocument) => Thenable<unknown>,
): Promise<void> {
  await show(document);
  const change = new WorkspaceEdit();
  change.insert(document.uri, new Position(0, 0), text);
  await workspace.applyEdit(change);
}
