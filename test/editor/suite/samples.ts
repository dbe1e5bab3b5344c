import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeEverything, isFilled, openFile, workspaceFolder, writeWorkspaceFile } from './documents';
import { answerFolderDialog } from './host/folderDialog';
import { workbenchTest } from './host/testList';
import { until } from './host/until';
import { sineWave } from './host/waves';

// The second region says that A4 is A5; its loop of 80.31 periods jumps where it closes.
const instrument = `<group> lokey=60 hikey=68
<region> sample=measured/a.wav pitch_keycenter=69
<region> lokey=69 hikey=80 sample=measured/b.wav pitch_keycenter=81
  loop_mode=loop_continuous loop_start=1000 loop_end=9030
`;

workbenchTest('samples are measured behind the text and reported on', async (workbench) => {
  await workbench.useColourTheme('light');
  await vscode.commands.executeCommand('notifications.clearAll');
  const path = 'measured.sfz';
  for (const name of ['a', 'b']) await writeWorkspaceFile(`measured/${name}.wav`, sineWave());
  const uri = await writeWorkspaceFile(path, instrument);
  await openFile(path);
  const codes = () => vscode.languages.getDiagnostics(uri).map(({ code }) => code);
  await until('the findings of measures', () => {
    return codes().includes('root-mismatch') && codes().includes('loop-seam');
  });
  await vscode.commands.executeCommand('zonewright.sampleReport');
  const view = '.first-list';
  assert.equal(await workbench.text({ view, selector: 'h1' }), 'Samples of measured.sfz');
  // 441 Hz is 3.93 cents above A4 (ISO 16).
  const first = await workbench.text({ view, selector: '.first-list li' });
  assert.match(first, /measured\/b\.wav.*sounds an octave below its root key/s);
  assert.match(first, /the loop 1000 to 9030 jumps where it closes/);
  assert.equal(await workbench.count({ view, selector: 'svg[role=img]' }), 4);
  for (const theme of ['light', 'dark', 'highContrast'] as const) {
    await workbench.useColourTheme(theme);
    await workbench.screenshot(`sample-report-${theme}`);
  }
  await openFile(path);
  await vscode.commands.executeCommand('zonewright.sampleReportTable');
  const table = await until('the table', () =>
    vscode.workspace.textDocuments.find((document) => document.getText().startsWith('File,')),
  );
  assert.equal(table.getText().trim().split(/\r?\n/).length, 3);
  await closeEverything();
  for (const name of [path, 'measured']) {
    await vscode.workspace.fs.delete(vscode.Uri.joinPath(uri, '..', name), { recursive: true });
  }
});

workbenchTest(
  'a folder that is not there is located by a person, and its paths follow',
  async (workbench) => {
    const uri = await writeWorkspaceFile(
      'located/a.sfz',
      '<control> default_path=Samples/\n<region> key=60 sample=low-bell.wav\n<region> key=61 pitch_keycenter=60 sample=high-bell.wav\n',
    );
    const elsewhere = vscode.Uri.joinPath(workspaceFolder(), 'archive/bells');
    for (const name of ['low-bell.wav', 'high-bell.wav'])
      await vscode.workspace.fs.copy(recording('felt-soft-C4-1.wav'), vscode.Uri.joinPath(elsewhere, name), {
        overwrite: true,
      });
    const editor = await openFile('located/a.sfz');
    const { document } = editor;
    await until('one finding', () => {
      const found = vscode.languages.getDiagnostics(uri).map(({ code }) => code);
      return found.join() === 'sample-missing';
    });
    // No click: where the caret stands already, it lies over the word.
    const word = document.positionAt(document.getText().indexOf('low-bell.wav') + 3);
    editor.selection = new vscode.Selection(word, word);
    await until('the folder to be offered', async () => {
      const fixes = await vscode.commands.executeCommand<vscode.CodeAction[]>(
        'vscode.executeCodeActionProvider',
        uri,
        editor.selection,
      );
      return fixes.some(({ title }) => title.startsWith('Use the folder "../archive/bells"'));
    });
    // No other test leaves files of these names. The folder is in the open ones, so it is offered first; here a person looks for it all the same.
    const first = '.action-widget .focused >> text=Use the folder "../archive/bells"';
    await until('the fixes', async () => {
      // The caret that was placed may reach the screen after the keys.
      await workbench.press('Control+.');
      await workbench.waitFor({ selector: first, timeoutSeconds: 2 });
      return true;
    });
    await workbench.press('ArrowDown');
    await workbench.waitFor({ selector: '.action-widget .focused >> text=Locate the folder' });
    await workbench.press('Enter');
    await workbench.waitFor({ selector: '.quick-input-widget >> text=Where is the folder' });
    await until('the folder to begin from', () =>
      workbench.evaluate<boolean>(
        "document.querySelector('.quick-input-box input').value.endsWith('/located/')",
      ),
    );
    await workbench.screenshot('locate-folder');
    await answerFolderDialog(workbench, elsewhere);
    await until('the paths', () => document.getText().includes('default_path=../archive/bells/'));
    await until('no finding', () => {
      const found = vscode.languages.getDiagnostics(uri);
      assert.deepEqual(
        found.map(({ message }) => message),
        [],
      );
      return true;
    });
    await workbench.screenshot('located-folder');
    await document.save();
    for (const one of [vscode.Uri.joinPath(uri, '..'), vscode.Uri.joinPath(elsewhere, '..')])
      await vscode.workspace.fs.delete(one, { recursive: true });
  },
);

workbenchTest('a folder of recordings becomes an instrument from the explorer', async (workbench) => {
  await vscode.commands.executeCommand('notifications.clearAll');
  const folder = vscode.Uri.joinPath(workspaceFolder(), 'takes');
  const names = ['bowed-C4.wav', 'bowed-F4.wav', 'bowed-C6.wav'];
  for (const name of names)
    await vscode.workspace.fs.copy(recording(name), vscode.Uri.joinPath(folder, name));
  await vscode.commands.executeCommand('revealInExplorer', folder);
  const row = { selector: '.explorer-folders-view .monaco-list-row:has-text("takes")' };
  await workbench.waitFor(row);
  await workbench.click(row, { button: 'right' });
  await workbench.waitFor({ selector: '.monaco-menu >> text=New Instrument from a Folder of Recordings' });
  await workbench.screenshot('folder-menu');
  await workbench.click({ selector: '.monaco-menu >> text=New Instrument from a Folder of Recordings' });
  const view = '#recordings-preview';
  await workbench.waitFor({ view, selector: 'text=bowed-C4.wav' });
  await workbench.screenshot('preview-of-recordings');
  await workbench.click({ view, selector: '#write' });
  const { document } = await until('the instrument', () => {
    const active = vscode.window.activeTextEditor;
    return active?.document.uri.path.endsWith('/takes/takes.sfz') && isFilled(active.document)
      ? active
      : undefined;
  });
  for (const name of names) assert.ok(document.getText().includes(`sample=${name}`), document.getText());
  await workbench.screenshot('instrument-of-recordings');
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  await vscode.workspace.fs.delete(folder, { recursive: true });
});

function recording(name: string): vscode.Uri {
  return vscode.Uri.joinPath(workspaceFolder(), 'millrace-chimes/Samples', name);
}
