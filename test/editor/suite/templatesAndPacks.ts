import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { isFilled, openFile, writeWorkspaceFile } from './documents';
import { workbenchTest } from './host/testList';
import { until } from './host/until';

const template =
  '// (title goes here) by (maker goes here)\n<group> ampeg_release=2\n<region> sample=x.wav key=60\n';

workbenchTest(
  'an instrument is converted into a template that is chosen, and what that has a place for is asked for',
  async (workbench) => {
    await vscode.commands.executeCommand('notifications.clearAll');
    await writeWorkspaceFile('templates/house.sfz', template);
    await writeWorkspaceFile('templates/bell.sfz', '<region> sample=*sine key=61\n');
    await openFile('templates/bell.sfz');
    const done = vscode.commands.executeCommand('zonewright.convertIntoTemplate');
    // The folder of the instrument stands in the dialog already.
    await workbench.waitFor({ selector: '.quick-input-list >> text=/house.sfz/' });
    await workbench.press(...'house.sfz', 'Enter');
    await workbench.waitFor({ selector: '.quick-input-widget >> text=/"maker"/' });
    await workbench.press(...'Ines');
    await workbench.screenshot('template-fact');
    await workbench.press('Enter');
    await done;
    const document = await until('the converted text', () =>
      vscode.workspace.textDocuments.find(
        (one) => isFilled(one) && one.isUntitled && one.uri.path.includes('/templates/'),
      ),
    );
    assert.equal(
      document.getText(),
      '// bell by Ines\n<group> ampeg_release=2\n<region> sample=*sine key=61\n',
    );
  },
);

workbenchTest('an instrument is packed with the licence that a person gives', async (workbench) => {
  await vscode.commands.executeCommand('notifications.clearAll');
  const file = await writeWorkspaceFile('packs/Bell.sfz', '<region> sample=*sine key=61\n');
  await openFile('packs/Bell.sfz');
  const done = vscode.commands.executeCommand('zonewright.makePack');
  await workbench.waitFor({ selector: '.quick-input-widget >> text=/licence of the recordings/' });
  await workbench.press(...'CC0', 'Enter');
  await workbench.waitFor({ selector: '.quick-input-widget >> text=/Who made/' });
  await workbench.press('Enter');
  await workbench.waitFor({ selector: '.quick-input-list >> text=/Samples as FLAC/' });
  await workbench.press('ArrowDown', 'Enter');
  await workbench.waitFor({ selector: '.quick-input-action' });
  await workbench.screenshot('pack-save');
  await workbench.press('Enter');
  await workbench.waitFor({ selector: '.notifications-toasts >> text=/Bell.zip was written/' });
  await workbench.screenshot('pack-written');
  await vscode.commands.executeCommand('notifications.clearAll');
  await done;
  const bytes = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(file, '../Bell.zip'));
  assert.equal(String.fromCharCode(...bytes.subarray(0, 2)), 'PK');
});

workbenchTest(
  'a table is pasted in the place of the examples of a template that is open',
  async (workbench) => {
    await vscode.commands.executeCommand('notifications.clearAll');
    const before = `${template}// Held back. stays here\n`;
    await writeWorkspaceFile('templates/Tarn Harp.sfz', before);
    const editor = await openFile('templates/Tarn Harp.sfz');
    await until('the server', async () => {
      const found = await vscode.commands.executeCommand<unknown[]>(
        'vscode.executeDocumentSymbolProvider',
        editor.document.uri,
      );
      return found?.length > 0;
    });
    editor.selection = new vscode.Selection(editor.document.lineCount, 0, editor.document.lineCount, 0);
    const table = 'Sample\tLow\tHigh\tRoot\na.wav\t60\t62\t61\nb.wav\t63\t65\t64\n';
    await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
    await workbench.waitFor({ selector: '.monaco-editor.focused' });
    await workbench.evaluate(`navigator.clipboard.writeText(${JSON.stringify(table)})`);
    await workbench.paste();
    await until('the regions', () => editor.document.getText().includes('b.wav'));
    // The plain paste comes first; the other way is offered beside it.
    await workbench.click({ selector: '.post-edit-widget' });
    await workbench.waitFor({ selector: '.action-widget >> text=/in the place of the examples/' });
    await workbench.screenshot('template-paste');
    await workbench.press('ArrowDown', 'Enter');
    await until('the filled template', () => editor.document.getText().startsWith('// Tarn Harp by '));
    await workbench.waitFor({ selector: '.notifications-toasts >> text=/2 regions written.*note/' });
    assert.equal(
      editor.document.getText(),
      '// Tarn Harp by (maker goes here)\n<group> ampeg_release=2\n' +
        '<region> sample=a.wav lokey=60 hikey=62 pitch_keycenter=61\n' +
        '<region> sample=b.wav lokey=63 hikey=65 pitch_keycenter=64\n// Held back. stays here\n',
    );
  },
);
