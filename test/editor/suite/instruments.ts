import * as vscode from 'vscode';
import { openFile } from './documents';
import { workbenchTest } from './host/testList';
import { until } from './host/until';

/** The first of the tree. The explorer has a row of that name as well. */
const row = '[role=treeitem][aria-label^="clipped.sfz, "]';

workbenchTest('the tree Instruments tells the state of each and opens text and map', async (workbench) => {
  await openFile('faults/key-gap.sfz');
  // The tree comes once the folder was looked through.
  await until('the tree', async () => {
    await vscode.commands.executeCommand('zonewright.instruments.focus');
    return (await workbench.count({ selector: row })) > 0;
  });
  await vscode.commands.executeCommand('zonewright.checkInstruments');
  await workbench.waitFor({ selector: `${row}:not([aria-label*="not checked"])` });
  await workbench.screenshot('instruments-tree');
  await workbench.click({ selector: row });
  await until(
    'its text',
    () => vscode.window.activeTextEditor?.document.fileName.endsWith('clipped.sfz') === true,
  );
  await workbench.move({ selector: row });
  await workbench.click({ selector: `${row} [aria-label="Show Instrument on the Map"]` });
  await workbench.waitFor({ view: '#keyboard-map', selector: '[id^=shape-]' });
});
