import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { openFile } from './documents';
import { workbenchTest } from './host/testList';
import { until } from './host/until';
import type { Workbench } from './host/workbench';

const view = '#keyboard-map';
const shapes = '[id^=shape-]';

async function openMap(workbench: Workbench): Promise<void> {
  await vscode.commands.executeCommand('zonewright.showKeyboardMap');
  await workbench.waitFor({ view, selector: shapes });
}

workbenchTest('the map shows the instrument, and a click on a shape leads to its text', async (workbench) => {
  const editor = await openFile('millrace-chimes/millrace-chimes.sfz');
  await openMap(workbench);
  const label = 'felt-medium-B4-1';
  await workbench.click({ view, selector: `${shapes}[aria-label*="${label}"]` });
  const wanted = editor.document.positionAt(
    editor.document.getText().indexOf(`<region> sample=${label}`),
  ).line;
  await until('the cursor at the region', () => editor.selection.active.line === wanted);
  await workbench.screenshot('map-click');
  assert.deepEqual(
    (await workbench.problems()).filter(({ inView }) => inView),
    [],
  );
});

workbenchTest('the map follows the cursor and the text as it is typed', async (workbench) => {
  const editor = await openFile('millrace-chimes/millrace-chimes.sfz');
  await openMap(workbench);
  const before = await workbench.count({ view, selector: shapes });
  const { document } = editor;
  const place = document.positionAt(document.getText().indexOf('<region> sample=bowed-C4') + 10);
  editor.selection = new vscode.Selection(place, place);
  await workbench.waitFor({ view, selector: `${shapes}[aria-selected=true][aria-label*="bowed-C4"]` });
  const end = document.lineAt(document.lineCount - 1).range.end;
  await editor.edit((edit) => edit.insert(end, '\n<region> sample=bowed-C4.wav key=20\n'));
  await until(
    'one more shape',
    async () => (await workbench.count({ view, selector: shapes })) === before + 1,
  );
});

workbenchTest('the map can be used with the keyboard alone', async (workbench) => {
  const editor = await openFile('millrace-chimes/millrace-chimes.sfz');
  await openMap(workbench);
  await workbench.click({ view, selector: `${shapes}[aria-label*="felt-soft-C4-1"]` });
  const clicked = editor.document.positionAt(
    editor.document.getText().indexOf('<region> sample=felt-soft-C4-1'),
  ).line;
  await until('the cursor at the clicked region', () => editor.selection.active.line === clicked);
  // The last shape holds two takes: the first Enter leads to their list, the second chooses one.
  await workbench.press('End', 'Enter', 'Enter');
  await until('the cursor at another region', () => {
    const { line } = editor.selection.active;
    return line !== clicked && editor.document.lineAt(line).text.startsWith('<region>');
  });
  await workbench.screenshot('map-keyboard');
});

workbenchTest('the map marks what the editor finds wrong, and shows that alone', async (workbench) => {
  await openFile('faults/sample-missing.sfz');
  await openMap(workbench);
  await workbench.waitFor({ view, selector: `${shapes}[aria-label*="problem"]` });
  const all = await workbench.count({ view, selector: shapes });
  await workbench.click({ view, selector: '#problem-filter' });
  await until('fewer shapes', async () => (await workbench.count({ view, selector: shapes })) < all);
  await workbench.screenshot('map-problems');
  await workbench.click({ view, selector: '#show-all' });
  await until('all shapes', async () => (await workbench.count({ view, selector: shapes })) === all);
});

for (const theme of ['light', 'dark', 'highContrast'] as const) {
  workbenchTest(`the map is drawn in the ${theme} theme`, async (workbench) => {
    await workbench.useColourTheme(theme);
    await openFile('faults/range-overlap.sfz');
    await openMap(workbench);
    await workbench.screenshot(`map-faults-${theme}`);
    await openFile('millrace-chimes/millrace-chimes.sfz');
    await workbench.waitFor({ view, selector: `${shapes}[aria-label*="felt-soft-C4-1"]` });
    await workbench.screenshot(`map-${theme}`);
  });
}
