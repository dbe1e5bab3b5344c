import type { TextDocument } from 'vscode';
import { Uri, workspace } from 'vscode';
import { newFileEndings } from '../../server/model/fileNames';
import { showFilled } from '../showFilled';

/** The endings of new documents, by notation. */
export const newDocumentEndings = { ...newFileEndings, vocabulary: '.xml' } as const;
const languageOf = { sfz: 'sfz', xml: 'instrument-xml', vocabulary: 'xml' } as const;
const mostTries = 100;

/**
 * Opens and shows a new document with a text, unsaved. It has a name in a folder where there is one, so that saving it
 * needs no question and its paths lead from there; no file and no open document has that name.
 */
export async function openNewInstrument(
  text: string,
  format: keyof typeof newDocumentEndings,
  folder: Uri | undefined,
  name: string,
  show: (document: TextDocument) => Thenable<unknown>,
): Promise<TextDocument> {
  const uri = folder && (await freeName(folder, name, newDocumentEndings[format]));
  const document = uri
    ? await workspace.openTextDocument(uri.with({ scheme: 'untitled' }))
    : await workspace.openTextDocument({ language: languageOf[format] });
  await showFilled(document, text, show);
  return document;
}

async function freeName(folder: Uri, name: string, suffix: string): Promise<Uri | undefined> {
  // A document with a name is saved among the files of the editor's own place, so others cannot have one.
  const [first] = workspace.workspaceFolders ?? [];
  if (!['file', 'vscode-remote', first?.uri.scheme].includes(folder.scheme)) return undefined;
  for (let number = 1; number <= mostTries; number++) {
    const uri = Uri.joinPath(folder, `${name}${number === 1 ? '' : `-${number}`}${suffix}`);
    const isOpen = workspace.textDocuments.some(({ uri: { path } }) => path === uri.path);
    if (!isOpen && !(await exists(uri))) return uri;
  }
  return undefined;
}

/** Whether a file or folder is there. */
export async function exists(uri: Uri): Promise<boolean> {
  try {
    await workspace.fs.stat(uri);
    return true;
  } catch {
    return false;
  }
}
