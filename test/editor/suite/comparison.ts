import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeEverything, openFile, writeWorkspaceFile } from './documents';
import { workbenchTest } from './testList';
import { until } from './until';

const first = '<group> sample=*saw ampeg_release=0.2\n<region> key=60\n<region> key=64\n';
const second = first.replace('key=64', 'key=64 tune=20');

workbenchTest('two instruments are compared by how they sound', async (workbench) => {
  await workbench.useColourTheme('light');
  await vscode.commands.executeCommand('notifications.clearAll');
  const uri = await writeWorkspaceFile('compared-first.sfz', first);
  const other = await writeWorkspaceFile('compared-second.sfz', second);
  await openFile('compared-first.sfz');
  const found = (one: vscode.Uri) =>
    vscode.languages.getDiagnostics(one).filter(({ source }) => source === 'zonewright comparison');
  await vscode.commands.executeCommand('zonewright.compareWith', other);
  await until('the findings of the comparison', () => found(uri).length > 0 && found(other).length > 0);
  assert.equal(found(uri)[0].range.start.line, 2);
  assert.match(found(uri)[0].message, /Tunings in cents differ: 0 and 20/);
  const [place] = found(other);
  assert.equal(place.range.start.line, 2);
  assert.equal(place.range.start.character, second.split('\n')[2].indexOf('tune'));
  const heading = await workbench.text({ view: 'audio', selector: 'h1' });
  assert.equal(heading, 'compared-first.sfz and compared-second.sfz');
  // The view runs no script, so that no event of it is heard.
  const state = `(() => { const one = document.querySelector('audio'); one.preload = 'metadata'; return one.error ? -1 : one.readyState; })()`;
  await until(
    'the first sound to be there',
    async () => (await workbench.evaluate<number>(state, 'audio')) > 0,
  );
  await workbench.screenshot('comparison-light');
  await workbench.useColourTheme('dark');
  await workbench.screenshot('comparison-dark');
  const edit = new vscode.WorkspaceEdit();
  edit.insert(uri, new vscode.Position(0, 0), '// changed\n');
  await vscode.workspace.applyEdit(edit);
  await until('the findings to go with the edit', () => found(uri).length === 0);
  assert.equal(found(other).length, 1);
  await vscode.commands.executeCommand('zonewright.clearComparison');
  assert.equal(found(other).length, 0);
  await closeEverything();
  for (const one of [uri, other]) await vscode.workspace.fs.delete(one);
});
