import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeEverything, openFile, openText, writeWorkspaceFile } from './documents';
import { workbenchTest } from './host/testList';
import { until } from './host/until';
import type { Workbench } from './host/workbench';

const view = '#keyboard-map';
const shapes = '[id^=shape-]';

async function openMap(workbench: Workbench): Promise<void> {
  await vscode.commands.executeCommand('zonewright.showKeyboardMap');
  await workbench.waitFor({ view, selector: shapes });
}

const sizeOf = (workbench: Workbench) =>
  workbench.evaluate<{ height: number; plot: number; isCut: boolean }>(
    `({
      height: innerHeight,
      plot: document.querySelector('.picture').getBoundingClientRect().bottom,
      isCut: document.documentElement.scrollWidth > innerWidth,
    })`,
    view,
  );

workbenchTest('the map has room for its keyboard in a low panel', async (workbench) => {
  await openFile('millrace-chimes/millrace-chimes.sfz');
  await openMap(workbench);
  // The border above the panel is dragged, by as much as the map is too high.
  const lower = async (pixels: number) =>
    workbench.drag({ selector: '.part.panel' }, { x: 300, y: 0 }, { x: 300, y: pixels });
  const before = (await sizeOf(workbench)).height;
  await lower(before - 250);
  await until('the keyboard to be in view', async () => {
    const { height, plot, isCut } = await sizeOf(workbench);
    return height <= 260 && plot <= height && !isCut;
  });
  await workbench.screenshot('map-low-panel');
  await lower((await sizeOf(workbench)).height - before);
});

workbenchTest('the map works in the side bar', async (workbench) => {
  await openFile('millrace-chimes/millrace-chimes.sfz');
  await openMap(workbench);
  await vscode.commands.executeCommand('vscode.moveViews', {
    viewIds: ['zonewright.keyboardMap'],
    destinationId: 'workbench.view.explorer',
  });
  await vscode.commands.executeCommand('zonewright.keyboardMap.focus');
  await workbench.waitFor({ view, selector: shapes });
  await until('a map as narrow as the side bar', async () => {
    const width = await workbench.evaluate<number>('innerWidth', view);
    return width < 500 && !(await sizeOf(workbench)).isCut;
  });
  await workbench.screenshot('map-side-bar');
  await vscode.commands.executeCommand('zonewright.keyboardMap.resetViewLocation');
});

workbenchTest('a screen reader is told of each shape that the keys come to', async (workbench) => {
  await openFile('millrace-chimes/millrace-chimes.sfz');
  await openMap(workbench);
  await workbench.evaluate(`document.querySelector('.map').focus()`, view);
  const told = () =>
    workbench.evaluate<string>(
      `(() => {
        const map = document.activeElement;
        const option = document.getElementById(map.getAttribute('aria-activedescendant'));
        return [map.getAttribute('role'), map.getAttribute('aria-label'), option?.getAttribute('role'), option?.getAttribute('aria-label')].join('|');
      })()`,
      view,
    );
  await workbench.press('Home');
  const first = await told();
  assert.match(
    first,
    /^listbox\|Regions by key and velocity\|option\|C3 to D4, velocity \d+ to \d+, group .+, \d+ regions?, sample .+, root key C4/,
  );
  await workbench.press('PageDown');
  assert.notEqual(await told(), first);
  await workbench.press('o');
  await workbench.waitFor({ view, selector: '#show-all' });
  await workbench.press('o');
});

workbenchTest('Escape leaves a text as it was while its map is changed', async (workbench) => {
  const text = '<region> sample=*sine lokey=60 hikey=64 pitch_keycenter=62\n';
  const { document } = await openText('sfz', text);
  await openMap(workbench);
  await until('the map of this text', async () => (await workbench.count({ view, selector: shapes })) === 1);
  await workbench.evaluate(`document.querySelector('.map').focus()`, view);
  // A pointer that rests on a button would show what that would change.
  await workbench.move({ selector: '.part.statusbar' });
  await workbench.press('g', 'ArrowRight', 'ArrowRight');
  await workbench.waitFor({ view, selector: '.gesture:text("Moving")' });
  await workbench.press('Escape');
  await workbench.waitFor({ view, selector: '.gesture:text("Nothing was changed")' });
  assert.equal(document.getText(), text);
  assert.equal(document.version, 1);
});

/** A second of a 440 Hz sine, 16 bits, 44,100 frames a second (Multimedia Programming Interface 1.0). */
function wave(): Uint8Array {
  const bytes = new DataView(new ArrayBuffer(44 + 88_200));
  const words = [0x52494646, 0, 0x57415645, 0x666d7420, 0, 0x01000100];
  for (const [at, word] of words.entries()) bytes.setUint32(4 * at, word);
  bytes.setUint32(4, 36 + 88_200, true);
  bytes.setUint32(16, 16, true);
  bytes.setUint32(24, 44_100, true);
  bytes.setUint32(28, 88_200, true);
  bytes.setUint16(32, 2, true);
  bytes.setUint16(34, 16, true);
  bytes.setUint32(36, 0x64617461);
  bytes.setUint32(40, 88_200, true);
  for (let frame = 0; frame < 44_100; frame++)
    bytes.setInt16(44 + 2 * frame, Math.round(9000 * Math.sin((2 * Math.PI * 440 * frame) / 44_100)), true);
  return new Uint8Array(bytes.buffer);
}

workbenchTest(
  'samples are dropped on the map or added by the menu, and one undo takes them out',
  async (workbench) => {
    const text = '<group> group_label=pads\n<region> sample=*sine lokey=c3 hikey=f3 pitch_keycenter=d3\n';
    const sample = await writeWorkspaceFile('added/pad.wav', wave());
    const uri = await writeWorkspaceFile('added/pads.sfz', text);
    const { document } = await openFile('added/pads.sfz');
    await openMap(workbench);
    await until(
      'the map of this text',
      async () => (await workbench.count({ view, selector: shapes })) === 1,
    );
    // As a browser hands over what is dragged from the explorer with Shift held down.
    await workbench.evaluate(
      `(() => {
      const dataTransfer = new DataTransfer();
      dataTransfer.setData('application/vnd.code.uri-list', ${JSON.stringify(sample.toString())});
      const { left, top } = document.querySelector('#shape-0').getBoundingClientRect();
      const at = { dataTransfer, clientX: left + 4, clientY: top + 4, bubbles: true, cancelable: true };
      document.querySelector('.map').dispatchEvent(new DragEvent('drop', at));
    })()`,
      view,
    );
    // 440 Hz is A4, key 69 (ISO 16); the keys are spelled as the document spells its own.
    const line = '<region> sample=pad.wav lokey=a4 hikey=a4 pitch_keycenter=a4';
    await until(
      'the region that was added',
      () => document.getText().replace(/ +/g, ' ') === `${text}${line}\n`,
    );
    await workbench.waitFor({ view, selector: '.gesture:text("the pitch that it sounds")' });
    await workbench.screenshot('map-sample-added');
    await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
    await vscode.commands.executeCommand('undo');
    await until('the text as it was', () => document.getText() === text);
    await vscode.commands.executeCommand('zonewright.addSamples', sample, [sample]);
    await until('a region in a group of its own', () =>
      /<group>\s*<region> sample=pad\.wav/.test(document.getText()),
    );
    await closeEverything();
    for (const one of [uri, sample]) await vscode.workspace.fs.delete(one);
  },
);
