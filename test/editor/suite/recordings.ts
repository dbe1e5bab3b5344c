import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { waveBytes } from '../../unit/server/host/waveBytes';
import { workspaceFolder, writeWorkspaceFile } from './documents';
import { workbenchTest } from './host/testList';
import { until } from './host/until';

const view = '#recordings-preview';
const rate = 44100;

/** Half a second of a sound with three partials. */
function tone(hertz: number, level: number): Uint8Array {
  return waveBytes(rate / 2, (at) => {
    let value = 0;
    for (let partial = 1; partial <= 3; partial++)
      value += Math.sin((2 * Math.PI * hertz * partial * at) / rate) / partial;
    return level * value * Math.exp(-at / 8000);
  });
}

workbenchTest(
  'a folder of recordings is shown with each decision before an instrument is made of it',
  async (workbench) => {
    for (const [name, hertz] of [
      ['C3', 261.63],
      ['G3', 392],
      ['C4', 523.25],
    ] as const)
      for (const [layer, level] of [
        ['soft', 2000],
        ['loud', 14000],
      ] as const)
        await writeWorkspaceFile(`tarn harp/tarn ${name} ${layer}.wav`, tone(hertz, level));
    await writeWorkspaceFile('tarn harp/room.wav', tone(0, 0));
    const folder = vscode.Uri.joinPath(workspaceFolder(), 'tarn harp');
    void vscode.commands.executeCommand('zonewright.newInstrumentFromFolder', folder);
    const text = await until('the decisions', async () => {
      const shown = await workbench.text({ view, selector: 'table' }).catch(() => '');
      return shown.includes('tarn C4 loud.wav') && shown;
    });
    assert.match(text, /It sounds at 72 \(C5\)/);
    assert.match(text, /room\.wav[\s\S]*Left out: it is silent/);
    for (const theme of ['light', 'dark', 'highContrast'] as const) {
      await workbench.useColourTheme(theme);
      await vscode.commands.executeCommand('notifications.hideToasts');
      await workbench.screenshot(`recordings-${theme}`);
    }
    await workbench.click({ view, selector: 'input[aria-label="Take tarn G3 soft.wav"]' });
    await until('one less', async () =>
      /5 regions; 2 recordings/.test(await workbench.text({ view, selector: 'header' })),
    );
    await workbench.click({ view, selector: '#write' });
    const document = await until('the new instrument', () => {
      const active = vscode.window.activeTextEditor?.document;
      return active?.isUntitled && active.getText().includes('tarn') ? active : undefined;
    });
    assert.equal(document.getText().match(/<region>/g)?.length, 5);
    assert.doesNotMatch(document.getText(), /tarn G3 soft/);
  },
);
