import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { openFile, writeWorkspaceFile } from './documents';
import { workbenchTest } from './testList';
import { until } from './until';

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
        ({ uri, isClosed }) => !isClosed && uri.scheme === 'untitled' && uri.path.includes('/templates/'),
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
