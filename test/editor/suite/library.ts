import * as vscode from 'vscode';
import { writeWorkspaceFile } from './documents';
import { workbenchTest } from './host/testList';
import { until } from './host/until';

const view = '#library';

const library = {
  title: 'Two rivers',
  build: { prove: true },
  instruments: [
    { name: 'Chimes', source: '../millrace-chimes/millrace-chimes.sfz', facts: { licence: 'CC0 1.0' } },
    { name: 'From a table', source: '../millrace-chimes/zones.tsv', samples: '../millrace-chimes/Samples' },
    { name: 'Nothing', source: 'nothing.txt' },
  ],
};

workbenchTest(
  'a library is built, stands in the tree and on a page, and leads to its texts',
  async (workbench) => {
    const folder = await writeWorkspaceFile('rivers/nothing.txt', 'Nothing is here.');
    await writeWorkspaceFile('rivers/zonewright.library.json', JSON.stringify(library, undefined, 2));
    const built = vscode.Uri.joinPath(folder, '../built/records/Chimes.json');
    // The result is told in a notification that waits for an answer.
    void vscode.commands.executeCommand('zonewright.buildLibrary');
    const isBuilt = async () => (await vscode.workspace.fs.stat(built)).size > 0;
    await until('what was built', isBuilt, 30);
    await vscode.commands.executeCommand('zonewright.showLibrary');
    // The page follows the build, which goes on behind the first instrument.
    await until('the page of all that was built', async () => {
      const text = await workbench.text({ view, selector: 'tbody' });
      return /Chimes[\s\S]*sounds alike[\s\S]*CC0 1\.0[\s\S]*Nothing[\s\S]*nothing\.txt is neither/.test(
        text,
      );
    });
    await vscode.commands.executeCommand('zonewright.libraryTree.focus');
    await until('the tree', async () => {
      const tree = await workbench.text({
        selector: '.pane[aria-label*="Instrument Library"], .pane-body .tree-explorer-viewlet-tree-view',
      });
      return /Chimes[^\n]*\n?[^\n]*sounds alike/.test(tree);
    });
    for (const theme of ['light', 'dark', 'highContrast'] as const) {
      await workbench.useColourTheme(theme);
      await vscode.commands.executeCommand('notifications.hideToasts');
      await workbench.screenshot(`library-${theme}`);
    }
    await workbench.click({ view, selector: 'tbody .name' });
    await until(
      'the text',
      () => vscode.window.activeTextEditor?.document.uri.path.endsWith('built/sfz/Chimes.sfz') === true,
    );
  },
);
