import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { openFile, openText, workspaceFolder } from './documents';
import { test, workbenchTest } from './host/testList';
import { until } from './host/until';

async function copyTable(): Promise<string> {
  const table = vscode.Uri.joinPath(workspaceFolder(), 'millrace-chimes/zones.tsv');
  const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(table));
  await vscode.env.clipboard.writeText(text);
  return text;
}

/** How many regions a text has, told from its tags alone. */
function regionCount(document: vscode.TextDocument): number {
  return document.getText().match(/<region\b/g)?.length ?? 0;
}

test('the command pastes a copied table as regions, and one undo takes it back', async () => {
  const rows = (await copyTable()).trim().split('\n').length - 1;
  for (const [language, before] of [
    ['sfz', '// mine\n\n'],
    ['instrument-xml', '<instrument>\n  \n</instrument>\n'],
  ] as const) {
    const editor = await openText(language, before);
    const cursor = editor.document.positionAt(before.indexOf('\n') + (language === 'sfz' ? 2 : 3));
    editor.selection = new vscode.Selection(cursor, cursor);
    void vscode.commands.executeCommand('zonewright.pasteTable');
    await until(`${rows} regions`, () => regionCount(editor.document) === rows);
    await vscode.commands.executeCommand('undo');
    assert.equal(editor.document.getText(), before);
  }
});

workbenchTest('what is no table leaves the document as it is, and says so', async (workbench) => {
  await vscode.env.clipboard.writeText('just a sentence');
  const editor = await openText('sfz', '// mine\n');
  void vscode.commands.executeCommand('zonewright.pasteTable');
  await workbench.waitFor({ selector: '.notifications-toasts >> text=/No zone table was found/' });
  assert.equal(editor.document.getText(), '// mine\n');
  await vscode.commands.executeCommand('notifications.clearAll');
});

workbenchTest(
  'pasting a table gives regions, says what was assumed, and offers plain text',
  async (workbench) => {
    const text = await copyTable();
    const rows = text.trim().split('\n').length - 1;
    await openFile('millrace-chimes/millrace-chimes.sfz');
    const editor = await openText('sfz', '<control>\ndefault_path=Samples/\n\n');
    const end = editor.document.lineAt(editor.document.lineCount - 1).range.end;
    editor.selection = new vscode.Selection(end, end);
    // A panel that comes back at the start may take the focus once more.
    await until('the server', async () => {
      await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
      const found = await vscode.commands.executeCommand<unknown[]>(
        'vscode.executeDocumentSymbolProvider',
        editor.document.uri,
      );
      return found?.length > 0;
    });
    await workbench.waitFor({ selector: '.monaco-editor.focused' });
    // The editor keeps what is copied to itself here; the keys paste what the browser holds.
    await workbench.evaluate(`navigator.clipboard.writeText(${JSON.stringify(text)})`);
    await workbench.paste();
    await until(`${rows} regions`, () => regionCount(editor.document) === rows);
    await workbench.waitFor({ selector: '.notifications-toasts >> text=/regions written/' });
    await workbench.waitFor({ selector: '.post-edit-widget' });
    await workbench.screenshot('paste-regions');
    await vscode.commands.executeCommand('undo');
    assert.equal(regionCount(editor.document), 0);
  },
);

workbenchTest('one key pastes a copied table as the text that it is', async (workbench) => {
  const editor = await openText('sfz', '// mine\n');
  const end = editor.document.lineAt(editor.document.lineCount - 1).range.end;
  editor.selection = new vscode.Selection(end, end);
  await workbench.waitFor({ selector: '.monaco-editor.focused' });
  const text = 'Sample\tRoot\nbell.wav\t60\n';
  await vscode.env.clipboard.writeText(text);
  await workbench.press('Control+Shift+V');
  await until('the text', () => editor.document.getText() === `// mine\n${text}`);
});
