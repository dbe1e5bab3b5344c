import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { isFilled, openText, workspaceFolder, writeWorkspaceFile } from './documents';
import { test, workbenchTest } from './host/testList';
import { until } from './host/until';
import type { Workbench } from './host/workbench';

const view = '#table-preview';

const odd = 'Stroke\tFirst\tLast\nbell-one.wav\t36\t47\nbell-two.wav\t48\t59\n';

/** Chooses in a list of the preview as a person does with the keyboard. */
async function choose(workbench: Workbench, id: string, value: string): Promise<void> {
  await workbench.waitFor({ view, selector: `#${id}` });
  await workbench.evaluate(
    `(() => { const list = document.getElementById(${JSON.stringify(id)}); list.value = ${JSON.stringify(value)}; list.dispatchEvent(new Event('change', { bubbles: true })); })()`,
    view,
  );
}

/** In how many tabs a document stands. */
function tabsOf({ uri }: vscode.TextDocument): number {
  const tabs = vscode.window.tabGroups.all.flatMap((group) => group.tabs);
  return tabs.filter(({ input }) => input instanceof vscode.TabInputText && String(input.uri) === String(uri))
    .length;
}

async function writtenText(workbench: Workbench, holds: RegExp): Promise<void> {
  await until(`${holds} in the preview`, async () =>
    holds.test(await workbench.text({ view, selector: '#markup' })),
  );
}

workbenchTest(
  'a table is previewed, corrected and written; the correction is remembered and forgotten',
  async (workbench) => {
    void vscode.commands.executeCommand('zonewright.forgetTableCorrections');
    await vscode.env.clipboard.writeText(odd);
    const editor = await openText('sfz', '// mine\n\n');
    editor.selection = new vscode.Selection(1, 0, 1, 0);
    await vscode.commands.executeCommand('zonewright.previewTable');
    await writtenText(workbench, /bell-one\.wav/);
    await choose(workbench, 'column-1', 'pitch_keycenter');
    await choose(workbench, 'column-2', 'unknown');
    await writtenText(workbench, /bell-two\.wav pitch_keycenter=48$/m);
    await workbench.screenshot('table-preview-dark');
    assert.equal(editor.document.getText(), '// mine\n\n');
    await workbench.click({ view, selector: '#write' });
    await until('the regions', () => /bell-two\.wav pitch_keycenter=48$/m.test(editor.document.getText()));
    // The document is shown where it was, not once more in the place of the preview.
    await until('the preview closed', () => vscode.window.tabGroups.all.length === 1);
    assert.equal(tabsOf(editor.document), 1);
    await vscode.commands.executeCommand('undo');
    assert.equal(editor.document.getText(), '// mine\n\n');

    await vscode.window.showTextDocument(editor.document);
    void vscode.commands.executeCommand('zonewright.pasteTable');
    await until('the regions as corrected', () =>
      /bell-two\.wav pitch_keycenter=48$/m.test(editor.document.getText()),
    );
    await vscode.commands.executeCommand('zonewright.reviewWrittenTable');
    await workbench.waitFor({ view, selector: '#forget' });
    // Messages lie over the buttons of a panel that reaches down to the corner.
    await vscode.commands.executeCommand('notifications.clearAll');
    await workbench.click({ view, selector: '#forget' });
    await workbench.waitFor({ view, selector: '#forget' }, 'hidden');
    await writtenText(workbench, /bell-two\.wav lokey=48 hikey=59/);
    assert.deepEqual(
      (await workbench.problems()).filter(({ inView }) => inView),
      [],
    );
  },
);

workbenchTest('what was pasted can be written otherwise in its place', async (workbench) => {
  await vscode.env.clipboard.writeText('Sample\tRoot\nbell_p.wav\tC3\nbell_f.wav\tC3\n');
  const before = '<region> sample=*sine key=1\n\n<region> sample=*saw key=2\n';
  const editor = await openText('sfz', before);
  editor.selection = new vscode.Selection(1, 0, 1, 0);
  void vscode.commands.executeCommand('zonewright.pasteTable');
  await until('the regions', () => /bell_f\.wav/.test(editor.document.getText()));
  await vscode.commands.executeCommand('zonewright.reviewWrittenTable');
  await workbench.click({ view, selector: '#grouping-layers' });
  await writtenText(workbench, /group_label=p/);
  await workbench.click({ view, selector: '#write' });
  await until('the groups', () => /group_label=f/.test(editor.document.getText()));
  assert.equal(editor.document.getText().match(/<region>/g)?.length, 4);
  assert.equal(editor.document.getText().match(/bell_p\.wav/g)?.length, 1);
});

workbenchTest('the notes on a pasted table lead to its preview', async (workbench) => {
  await vscode.commands.executeCommand('notifications.clearAll');
  await vscode.env.clipboard.writeText('Sample\tRoot\nbell.wav\tC3\n');
  await openText('sfz', '');
  void vscode.commands.executeCommand('zonewright.pasteTable');
  await workbench.click({ selector: '.notifications-toasts >> text=Show notes' });
  const notes = await until('the notes', () =>
    vscode.workspace.textDocuments.find(({ uri }) => uri.scheme === 'zonewright-notes'),
  );
  const links = await until('the link', async () => {
    const found = await vscode.commands.executeCommand<vscode.DocumentLink[]>(
      'vscode.executeLinkProvider',
      notes.uri,
    );
    return found.length > 0 && found;
  });
  assert.equal(notes.getText(links[0]?.range), notes.lineAt(0).text);
  assert.equal(links[0]?.target?.toString(true), 'command:zonewright.reviewWrittenTable');
  await vscode.commands.executeCommand('zonewright.reviewWrittenTable');
  await writtenText(workbench, /bell\.wav/);
});

workbenchTest('the preview is readable in every kind of theme', async (workbench) => {
  await vscode.env.clipboard.writeText(odd);
  await openText('sfz', '');
  await vscode.commands.executeCommand('zonewright.previewTable');
  await writtenText(workbench, /bell-one\.wav/);
  for (const theme of ['light', 'highContrast', 'highContrastLight'] as const) {
    await workbench.useColourTheme(theme);
    await workbench.waitFor({ view, selector: '#write' });
    const [ink, paper] = await workbench.evaluate<[string, string]>(
      `(() => { const { color, backgroundColor } = getComputedStyle(document.body); return [color, backgroundColor]; })()`,
      view,
    );
    assert.notEqual(ink, paper);
    await workbench.screenshot(`table-preview-${theme}`);
  }
});

workbenchTest('a saved table becomes a new instrument beside it', async (workbench) => {
  const uri = vscode.Uri.joinPath(workspaceFolder(), 'millrace-chimes/zones.tsv');
  const rows =
    new TextDecoder()
      .decode(await vscode.workspace.fs.readFile(uri))
      .trim()
      .split('\n').length - 1;
  await vscode.commands.executeCommand('zonewright.convertTableFile', uri);
  await choose(workbench, 'format', 'xml');
  await writtenText(workbench, /<instrument/);
  await workbench.screenshot('table-preview-new');
  await workbench.click({ view, selector: '#write' });
  const editor = await until('the new document', () => {
    const active = vscode.window.activeTextEditor;
    return active?.document.languageId === 'instrument-xml' && isFilled(active.document) ? active : undefined;
  });
  assert.equal(editor.document.getText().match(/<region\b/g)?.length, rows);
  assert.equal(editor.document.isUntitled, true);
  assert.match(editor.document.uri.path, /millrace-chimes\/zones(-\d+)?\.instrument\.xml$/);
  assert.match(editor.document.getText(), /sample="Samples\//);
});

workbenchTest('regions without a row in the table are taken out when a person says so', async (workbench) => {
  await vscode.commands.executeCommand('notifications.clearAll');
  const before = '<region> sample=bell.wav lokey=36 hikey=47\n<region> sample=gong.wav key=30\n';
  const uri = await writeWorkspaceFile('table-gone/gone.sfz', before);
  const { document } = await vscode.window.showTextDocument(uri, { preview: false });
  await vscode.env.clipboard.writeText('Sample\tLow\tHigh\nbell.wav\t36\t48\n');
  void vscode.commands.executeCommand('zonewright.updateFromTable');
  await workbench.waitFor({
    selector: '.notifications-toasts >> text=1 more region of the document is not in the table and stays.',
  });
  await workbench.screenshot('table-gone');
  await workbench.click({ selector: '.notifications-toasts >> text=Remove those too' });
  await workbench.click({ selector: '.notifications-toasts >> text=Apply' });
  await until('the change', () => document.getText() === '<region> sample=bell.wav lokey=36 hikey=48\n');
  await document.save();
});

workbenchTest(
  'a table pasted with nothing open becomes an instrument where its samples lie',
  async (workbench) => {
    await vscode.commands.executeCommand('notifications.clearAll');
    const folder = vscode.Uri.joinPath(workspaceFolder(), 'strings');
    const recording = vscode.Uri.joinPath(workspaceFolder(), 'millrace-chimes/Samples/felt-soft-C4-1.wav');
    for (const name of ['viol-low.wav', 'viol-high.wav'])
      await vscode.workspace.fs.copy(recording, vscode.Uri.joinPath(folder, 'Samples', name));
    await vscode.env.clipboard.writeText(
      'Sample\tLow\tHigh\tShade\nviol-low.wav\t36\t48\tteal\nviol-high.wav\t49\t60\tochre\n',
    );
    await workbench.press('F1');
    await workbench.type('Paste Copied Zone Table');
    await workbench.waitFor({
      selector: '.quick-input-list .monaco-list-row.focused >> text=Paste Copied Zone Table',
    });
    await workbench.press('Enter');
    await writtenText(workbench, /sample=Samples\/viol-low\.wav/);
    assert.match(await workbench.text({ view, selector: 'h1' }), /strings\/strings\.sfz/);
    await workbench.screenshot('table-preview-home');
    await workbench.click({ view, selector: '#write' });
    const { document } = await until('the new document', () => {
      const active = vscode.window.activeTextEditor;
      return active?.document.languageId === 'sfz' && isFilled(active.document) ? active : undefined;
    });
    assert.match(document.uri.path, /\/strings\/strings\.sfz$/);
    await workbench.click({ selector: '.notifications-toasts >> text=Show notes' });
    await workbench.waitFor({
      selector:
        '.editor-instance[aria-label*="Notes on the table"], .monaco-editor[data-uri^="zonewright-notes"]',
    });
    await workbench.screenshot('notes-of-a-paste');
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    await vscode.workspace.fs.delete(folder, { recursive: true });
  },
);

test('regions are brought up to date after a look at the difference, with one undo', async () => {
  const before = '<region> sample=bell.wav lokey=36 hikey=47\n<region> sample=gong.wav key=30\n';
  const uri = await writeWorkspaceFile('table-update/update.sfz', before);
  const editor = await vscode.window.showTextDocument(uri, { preview: false });
  await vscode.env.clipboard.writeText('Sample\tLow\tHigh\nbell.wav\t36\t48\n');
  void vscode.commands.executeCommand('zonewright.updateFromTable');
  const isDifference = ({ input }: vscode.Tab) =>
    input instanceof vscode.TabInputTextDiff && input.original.toString() === uri.toString();
  const shown = () => vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs).find(isDifference);
  const tab = await until('the difference', () => shown());
  assert.equal(editor.document.getText(), before);
  const { modified } = tab.input as vscode.TabInputTextDiff;
  const proposed = await vscode.workspace.openTextDocument(modified);
  assert.equal(proposed.getText(), before.replace('hikey=47', 'hikey=48'));
  void vscode.commands.executeCommand('zonewright.applyTableUpdate');
  await until('the change', () => editor.document.getText() === proposed.getText());
  await until('the difference closed', () => !shown());
  await vscode.window.showTextDocument(editor.document);
  await vscode.commands.executeCommand('undo');
  assert.equal(editor.document.getText(), before);
});
