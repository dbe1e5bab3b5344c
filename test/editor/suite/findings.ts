import assert from 'node:assert/strict';
import { cp, rename, rm } from 'node:fs/promises';
import * as vscode from 'vscode';
import { openFile, openText, shownPage, workspaceFolder, writeWorkspaceFile } from './documents';
import { test, workbenchTest } from './host/testList';
import { until } from './host/until';

/** The findings of a document, once there are any or, with a code, once there is one of that code. */
async function findingsOf(document: vscode.TextDocument, code?: string): Promise<vscode.Diagnostic[]> {
  return until(`findings of ${code ?? 'any kind'}`, () => {
    const found = vscode.languages.getDiagnostics(document.uri);
    const wanted = code === undefined ? found : found.filter((one) => one.code === code);
    return wanted.length > 0 && wanted;
  });
}

async function noFindings(document: vscode.TextDocument): Promise<void> {
  await until('no findings', () => vscode.languages.getDiagnostics(document.uri).length === 0);
}

test('a planted fault is reported at its place, and goes when the text is mended', async () => {
  const { document } = await openFile('faults/loop-past-end.sfz');
  const [first] = await findingsOf(document, 'loop-past-end');
  assert.equal(first?.source, 'zonewright');
  assert.equal(document.getText(first?.range), '4410');
  const edit = new vscode.WorkspaceEdit();
  for (const { range } of await findingsOf(document, 'loop-past-end'))
    edit.replace(document.uri, range, '4409');
  await vscode.workspace.applyEdit(edit);
  await noFindings(document);
});

test('the quick fix of a finding settles it, and one undo takes it back', async () => {
  const { document } = await openFile('faults/opcode-alias.sfz');
  const [finding] = await findingsOf(document, 'opcode-alias');
  const before = document.getText();
  const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
    'vscode.executeCodeActionProvider',
    document.uri,
    finding?.range,
    vscode.CodeActionKind.QuickFix.value,
    10,
  );
  const fix = actions.find(({ edit }) => edit !== undefined);
  assert.ok(fix?.edit, `no fix among: ${actions.map(({ title }) => title).join(', ')}`);
  await vscode.workspace.applyEdit(fix.edit);
  await noFindings(document);
  await vscode.commands.executeCommand('undo');
  assert.equal(document.getText(), before);
});

workbenchTest('the safe fixes of a whole folder are shown, applied and listed', async (workbench) => {
  const text = '<region> sample=*sine key=60 loopmode=no_loop\n';
  const open = await writeWorkspaceFile('fix/open.sfz', text);
  const closed = await writeWorkspaceFile('fix/closed.sfz', text);
  const { document } = await openFile('fix/open.sfz');
  await findingsOf(document, 'opcode-alias');
  const left = await writeWorkspaceFile('fix/left.sfz', text);
  const fixing = vscode.commands.executeCommand('zonewright.fixAllInFolder', vscode.Uri.joinPath(open, '..'));
  const row = (name: string) => ({ selector: `.quick-input-list .monaco-list-row:has-text("${name}")` });
  await workbench.waitFor(row('left.sfz'));
  await workbench.move(row('closed.sfz'));
  await workbench.click({ selector: `${row('closed.sfz').selector} .codicon-diff` });
  await workbench.waitFor({ selector: '.monaco-diff-editor .char-insert' });
  await workbench.screenshot('fixes-before');
  assert.equal(document.getText(), text);
  await workbench.click({ selector: `${row('left.sfz').selector} .quick-input-list-label` });
  await workbench.press('Enter');
  await fixing;
  assert.equal(document.getText(), text.replace('loopmode', 'loop_mode'));
  const textOf = async (uri: vscode.Uri) => new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
  await until('the closed file, saved', async () => (await textOf(closed)).includes('loop_mode'));
  assert.equal(await textOf(left), text);
  const page = await shownPage();
  assert.match(page.getText(), /What was changed: 2/);
  assert.match(page.getText(), /\| left\.sfz \| opcode-alias \| 1 \|/);
  assert.doesNotMatch(page.getText(), /\| closed\.sfz \| opcode-alias \| 1 \|/);
  await workbench.screenshot('fixes-after');
  await vscode.workspace.fs.delete(vscode.Uri.joinPath(open, '..'), { recursive: true });
});

test('a sample that appears and vanishes changes the findings', async () => {
  const uri = await writeWorkspaceFile(
    'millrace-chimes/late.sfz',
    '<region> sample=Samples/late.wav key=60\n',
  );
  const { document } = await openFile('millrace-chimes/late.sfz');
  await findingsOf(document, 'sample-missing');
  const sample = vscode.Uri.joinPath(uri, '../Samples/late.wav');
  await vscode.workspace.fs.copy(vscode.Uri.joinPath(uri, '../Samples/felt-soft-C4-1.wav'), sample);
  await noFindings(document);
  await vscode.workspace.fs.delete(sample);
  await findingsOf(document, 'sample-missing');
  await vscode.workspace.fs.delete(uri);
});

test('an instrument in a plain XML document is served, and other XML is left alone', async () => {
  const ours = await openText(
    'xml',
    '<instrument><region sample="gone.wav" lokey="64" hikey="60"/></instrument>',
  );
  await findingsOf(ours.document, 'range-inverted');
  assert.equal(ours.document.languageId, 'xml');
  const other = await openText('xml', '<recipe><region sample="gone.wav" lokey="64" hikey="60"/></recipe>');
  await findingsOf(ours.document, 'range-inverted');
  assert.deepEqual(vscode.languages.getDiagnostics(other.document.uri), []);
});

test('completion, hover, symbols and definition answer in both notations', async () => {
  for (const path of [
    'millrace-chimes/millrace-chimes.sfz',
    'millrace-chimes/millrace-chimes.instrument.xml',
  ]) {
    const { document } = await openFile(path);
    const at = document.positionAt(document.getText().indexOf('pitch_keycenter') + 3);
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
      'vscode.executeHoverProvider',
      document.uri,
      at,
    );
    const text = hovers
      .flatMap(({ contents }) => contents.map((one) => (typeof one === 'string' ? one : one.value)))
      .join('\n');
    assert.match(text, /pitch_keycenter/, path);
    const list = await vscode.commands.executeCommand<vscode.CompletionList>(
      'vscode.executeCompletionItemProvider',
      document.uri,
      at,
    );
    assert.ok(
      list.items.some(({ label }) => (typeof label === 'string' ? label : label.label) === 'loop_start'),
      path,
    );
    const symbols = await vscode.commands.executeCommand<vscode.DocumentSymbol[]>(
      'vscode.executeDocumentSymbolProvider',
      document.uri,
    );
    assert.ok(symbols.length > 0, path);
    const sample = document.positionAt(document.getText().indexOf('felt-soft-C4-1.wav') + 2);
    const links = await vscode.commands.executeCommand<(vscode.Location | vscode.LocationLink)[]>(
      'vscode.executeDefinitionProvider',
      document.uri,
      sample,
    );
    const target = links.map((link) => ('targetUri' in link ? link.targetUri : link.uri).path);
    assert.ok(target[0]?.endsWith('/Samples/felt-soft-C4-1.wav'), `${path}: ${target.join(' ')}`);
  }
});

workbenchTest('findings show in the Problems view', async (workbench) => {
  const { document } = await openFile('faults/range-overlap.sfz');
  await findingsOf(document);
  await vscode.commands.executeCommand('workbench.actions.view.problems');
  await workbench.waitFor({ selector: '.markers-panel [role=treeitem] >> text=range-overlap' });
  await workbench.screenshot('problems');
});

test('a folder of samples that is renamed and replaced from outside is noticed', async () => {
  const uri = await writeWorkspaceFile('moved/a.sfz', '<region> sample=Samples/a.wav\n');
  const folder = vscode.Uri.joinPath(uri, '..').fsPath;
  await vscode.workspace.fs.copy(
    vscode.Uri.joinPath(workspaceFolder(), 'millrace-chimes/Samples/felt-soft-C4-1.wav'),
    vscode.Uri.joinPath(uri, '../Samples/a.wav'),
  );
  const { document } = await openFile('moved/a.sfz');
  await until('an answer', async () => {
    const found = await vscode.commands.executeCommand<unknown[]>(
      'vscode.executeDocumentSymbolProvider',
      uri,
    );
    return found?.length > 0;
  });
  await noFindings(document);
  await rename(`${folder}/Samples`, `${folder}/Elsewhere`);
  await findingsOf(document, 'sample-missing');
  await cp(`${folder}/Elsewhere`, `${folder}/Samples`, { recursive: true });
  await noFindings(document);
  await rm(`${folder}/Samples`, { recursive: true });
  await findingsOf(document, 'sample-missing');
  await rename(`${folder}/Elsewhere`, `${folder}/Samples`);
  await noFindings(document);
});

test('all instruments of a folder are checked, and what is found in closed files stays', async () => {
  const uri = await writeWorkspaceFile('whole/a.sfz', '<region> sample=none.wav\n');
  await writeWorkspaceFile('whole/b.sfz', '<region> sample=*sine\n');
  const found = () => vscode.languages.getDiagnostics(uri).map(({ code }) => code);
  await vscode.commands.executeCommand('zonewright.checkFolder', vscode.Uri.joinPath(uri, '..'));
  await until('the finding of a closed file', () => found().join() === 'sample-missing');
  // As from the explorer: what a test opens otherwise stays open for minutes.
  await vscode.commands.executeCommand('vscode.open', uri);
  await until('the finding once', () => found().join() === 'sample-missing');
  await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
  await until('the finding of a closed file again', () => found().join() === 'sample-missing');
  await vscode.workspace.fs.delete(vscode.Uri.joinPath(uri, '..'), { recursive: true });
  await until('no finding of a file that is gone', () => found().length === 0);
});

workbenchTest('an included file of any ending is offered to be read as SFZ', async (workbench) => {
  await vscode.commands.executeCommand('notifications.clearAll');
  const part = await writeWorkspaceFile('parts/bars.inc', '<region> sample=*sine\nlokey=64 hikey=60\n');
  await writeWorkspaceFile('parts/whole.sfz', '<group> pan=3\n#include "bars.inc"\n');
  const { document } = await openFile('parts/whole.sfz');
  await findingsOf(document, 'range-inverted');
  const { document: bars } = await openFile('parts/bars.inc');
  assert.notEqual(bars.languageId, 'sfz');
  await workbench.waitFor({
    selector: '.notifications-toasts >> text=bars.inc is included by whole.sfz.',
  });
  await workbench.screenshot('included-file');
  await workbench.click({ selector: '.notifications-toasts >> text=Read as SFZ' });
  const lines = () =>
    vscode.languages.getDiagnostics(part).map(({ code, range }) => `${code} ${range.start.line}`);
  await until('the finding where the fault is', () => lines().join() === 'range-inverted 1');
  await workbench.screenshot('included-file-read');
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  await vscode.workspace.fs.delete(vscode.Uri.joinPath(part, '..'), { recursive: true });
});
