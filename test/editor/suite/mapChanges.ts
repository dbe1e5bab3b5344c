import * as vscode from 'vscode';
import { openText } from './documents';
import { workbenchTest } from './host/testList';
import { until } from './host/until';
import type { Workbench } from './host/workbench';

const view = '#keyboard-map';
const text = `<group> hivel=63
<region> sample=*sine lokey=c3 hikey=f3 pitch_keycenter=d3
<region> sample=*saw lokey=f#3 hikey=b3 pitch_keycenter=a3
`;

/** Where a part of a shape is, from the upper left corner of the map: 0 is its left or upper border, 1 the other. */
async function placeIn(workbench: Workbench, shape: number, across: number, down: number) {
  return workbench.evaluate<{ x: number; y: number; key: number }>(
    `(() => {
      const map = document.querySelector('.map').getBoundingClientRect();
      const box = document.querySelector('#shape-${shape}').getBoundingClientRect();
      return { x: box.left - map.left + ${across} * box.width, y: box.top - map.top + ${down} * box.height, key: box.width / 6 };
    })()`,
    view,
  );
}

async function openMap(workbench: Workbench): Promise<vscode.TextEditor> {
  const editor = await openText('sfz', text);
  await vscode.commands.executeCommand('zonewright.showKeyboardMap');
  await workbench.waitFor({ view, selector: '#shape-1' });
  let before = '';
  await until('a map that stays where it is', async () => {
    const now = JSON.stringify(await placeIn(workbench, 1, 0, 0));
    const isStill = now === before;
    before = now;
    return isStill;
  });
  return editor;
}

for (const theme of ['dark', 'light', 'highContrast'] as const) {
  workbenchTest(
    `a border that is dragged in the ${theme} map moves in the text, and one undo takes it back`,
    async (workbench) => {
      await workbench.useColourTheme(theme);
      const { document } = await openMap(workbench);
      const { x, y, key } = await placeIn(workbench, 0, 1, 0.5);
      await workbench.drag({ view, selector: '.map' }, { x: x - 2, y }, { x: x - 2 + key, y });
      const moved = text.replace('hikey=f3', 'hikey=f#3').replace('lokey=f#3', 'lokey=g3');
      await until('the moved border', () => document.getText() === moved);
      await workbench.screenshot(`map-dragged-${theme}`);
      await workbench.press('Control+z');
      await until('the text as it was', () => document.getText() === text);
    },
  );
}

workbenchTest('shapes of the map are moved, split and set back by keys alone', async (workbench) => {
  const { document } = await openMap(workbench);
  await workbench.evaluate(`document.querySelector('.map').focus()`, view);
  await workbench.press('g', 'ArrowRight', 'ArrowUp', 'Enter');
  const moved = text.replace(
    'lokey=c3 hikey=f3 pitch_keycenter=d3',
    'lokey=c#3 hikey=f#3 pitch_keycenter=d3 lovel=2 hivel=64',
  );
  await until('the moved region', () => document.getText() === moved);
  await until(
    'the map to follow',
    async () => (await workbench.count({ view, selector: '[id^=shape-][aria-label*="C#3 to F#3"]' })) === 1,
  );
  await workbench.press('s');
  await until('one region more', () => document.getText().split('<region>').length === 4);
  await workbench.press('Control+z');
  await until('the moved region again', () => document.getText() === moved);
  await until('the focus in the map again', () =>
    workbench.evaluate<boolean>('document.hasFocus() && document.activeElement.className === "map"', view),
  );
  await workbench.press('Control+z');
  await until('the text as it was', () => document.getText() === text);
});

workbenchTest(
  'typing while a border of the map is moved ends that and keeps what is typed',
  async (workbench) => {
    const editor = await openMap(workbench);
    await workbench.evaluate(`document.querySelector('.map').focus()`, view);
    await workbench.press('g', 'ArrowRight');
    await workbench.waitFor({ view, selector: '.gesture:text("Moving")' });
    await editor.edit((edit) => edit.insert(new vscode.Position(0, 0), '// typed\n'));
    await workbench.waitFor({ view, selector: '.gesture:text("changed in the meantime")' });
    await workbench.press('Enter');
    await until('nothing but what was typed', () => editor.document.getText() === `// typed\n${text}`);
  },
);
