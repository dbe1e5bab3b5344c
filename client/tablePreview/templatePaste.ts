import type { CancellationToken, TextDocument } from 'vscode';
import { Range, TextEdit } from 'vscode';
import { ConvertRequest } from '../../server/protocol/requests/conversionRequests';
import type { TableNote } from '../../server/protocol/requests/tableRequests';
import type { ServerClient } from '../serverClient';

/** What a template says of itself, in comments and values (docs/templates.md). */
const marked = /\b(?:goes|stays) here\b/i;

/** A copied table in the place of a template's examples. */
export interface TemplatePaste {
  /** The one change to the document. */
  edit: TextEdit;
  /** The text of the document after it. */
  text: string;
  notes: readonly TableNote[];
}

/** Whether a document marks itself as a template that regions can be put into. */
export function isTemplate(document: TextDocument): boolean {
  return !document.isUntitled && marked.test(document.getText());
}

/**
 * Puts a copied table into the template that a document is, in the place of its examples; `undefined` where there is no table or
 * the document takes none. A title is that of the file; other facts stay marked.
 */
export async function pasteIntoTemplate(
  client: ServerClient,
  document: TextDocument,
  table: string,
  token: CancellationToken,
): Promise<TemplatePaste | undefined> {
  const uri = document.uri.toString();
  const title = document.uri.path
    .slice(document.uri.path.lastIndexOf('/') + 1)
    .replace(/(\.instrument)?\.\w+$/, '');
  const params = { uri, table, to: { templateUri: uri, facts: { title } } };
  const result = await client.sendRequest(ConvertRequest.type, params, token);
  if ('problem' in result) return undefined;
  return { edit: change(document, result.text), text: result.text, notes: result.notes };
}

/** What has to be replaced in a document so that it has a text: all between what both begin and end with. */
function change(document: TextDocument, text: string): TextEdit {
  const before = document.getText();
  const most = Math.min(before.length, text.length);
  let start = 0;
  while (start < most && before[start] === text[start]) start++;
  let end = 0;
  while (end < most - start && before.at(-1 - end) === text.at(-1 - end)) end++;
  const range = new Range(document.positionAt(start), document.positionAt(before.length - end));
  return TextEdit.replace(range, text.slice(start, text.length - end));
}
