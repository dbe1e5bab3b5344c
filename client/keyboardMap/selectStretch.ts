import { Selection, Uri, window, workspace } from 'vscode';
import type { Range } from 'vscode-languageserver-protocol';
import { toEditor } from '../protocolRange';

/**
 * Selects a stretch of a document, given as the arguments of a command that the server has made; the map shows what is
 * selected. Other arguments, such as those of a menu, select nothing.
 */
export async function selectStretch(uri: unknown, range: unknown): Promise<void> {
  if (typeof uri !== 'string' || !isRange(range)) return;
  const { start, end } = toEditor(range);
  const document = await workspace.openTextDocument(Uri.parse(uri));
  const open = window.visibleTextEditors.find((editor) => editor.document === document);
  const editor = await window.showTextDocument(document, { viewColumn: open?.viewColumn });
  editor.selection = new Selection(start, end);
}

function isRange(value: unknown): value is Range {
  return typeof value === 'object' && value !== null && 'start' in value && 'end' in value;
}
