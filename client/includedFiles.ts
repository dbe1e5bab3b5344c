import type { Disposable, TextEditor } from 'vscode';
import { ConfigurationTarget, l10n, languages, window, workspace } from 'vscode';
import { IncludedByRequest } from '../server/protocol/requests/instrumentListRequests';
import { mayHoldInstrument } from './languages';
import type { ServerClient } from './serverClient';

/** Enough of a text to tell, in characters. */
const looked = 20_000;

/** A header, a variable or an opcode at the start of a line (SFZ format, as its open documentation gives it). */
const likeSfz = /<(?:region|group|global|master|control|curve|effect|midi)>|#define\s+\$|^\s*[a-z]\w*=/m;

/** Offers to read a file as SFZ that an instrument includes and that the editor takes for something else. */
export function offerIncludedFiles(client: ServerClient): Disposable {
  const asked = new Set<string>();
  return window.onDidChangeActiveTextEditor(async (editor) => {
    if (!editor || !client.isRunning || !mayBeIncluded(editor) || asked.has(editor.document.uri.toString()))
      return;
    const { document } = editor;
    const uri = document.uri.toString();
    const by = await client.sendRequest(IncludedByRequest.type, { uri });
    if (!by || document.isClosed || asked.has(document.uri.toString())) return;
    asked.add(document.uri.toString());
    await offer(editor, by.name);
  });
}

function mayBeIncluded({ document }: TextEditor): boolean {
  const isRead: boolean = mayHoldInstrument(document);
  if (isRead || document.isUntitled || document.uri.scheme.startsWith('zonewright-')) return false;
  return likeSfz.test(document.getText().slice(0, looked));
}

async function offer({ document }: TextEditor, includedBy: string): Promise<void> {
  const name = document.uri.path.slice(document.uri.path.lastIndexOf('/') + 1);
  const ending = /\.\w+$/.exec(name)?.[0];
  const asSfz = l10n.t('Read as SFZ');
  const always = ending === undefined ? undefined : l10n.t('Always for {0} in this folder', `*${ending}`);
  const answer = await window.showInformationMessage(
    l10n.t('{0} is included by {1}. As SFZ it has colours, completion and its findings.', name, includedBy),
    asSfz,
    ...(always === undefined ? [] : [always]),
  );
  if (answer === undefined || document.isClosed) return;
  if (answer === always) {
    const files = workspace.getConfiguration('files');
    const before = files.inspect<Record<string, string>>('associations')?.workspaceValue ?? {};
    const isFolder = (workspace.workspaceFolders ?? []).length > 0;
    await files.update(
      'associations',
      { ...before, [`*${ending}`]: 'sfz' },
      isFolder ? ConfigurationTarget.Workspace : ConfigurationTarget.Global,
    );
  }
  await languages.setTextDocumentLanguage(document, 'sfz');
}
