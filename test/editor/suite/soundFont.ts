import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { fontBytes, tone } from '../../unit/soundfont/fontBytes';
import { openFile, writeWorkspaceFile } from './documents';
import { workbenchTest } from './testList';
import { until } from './until';

const view = '#sound-font';

const font = fontBytes({
  info: [['ICOP', 'Free for all']],
  presets: [
    { name: 'Mill reed', zones: [{ gens: [[41, 0]] }] },
    {
      name: 'Mill bell',
      program: 9,
      zones: [
        {
          gens: [
            [43, [60, 72]],
            [41, 0],
          ],
        },
      ],
    },
  ],
  instruments: [
    {
      name: 'Reed',
      zones: [
        {
          gens: [
            [54, 1],
            [53, 0],
          ],
        },
      ],
    },
  ],
  samples: [{ name: 'Reed', frames: tone(4000, 100), loop: [1000, 3000] }],
});

workbenchTest(
  'a SoundFont opens as a page of its presets, of which one is shown as text',
  async (workbench) => {
    const uri = await writeWorkspaceFile('reeds.sf2', font);
    await vscode.commands.executeCommand('vscode.open', uri);
    await until('the presets', async () =>
      /Mill bell/.test(await workbench.text({ view, selector: 'table' })),
    );
    const tab = vscode.window.tabGroups.activeTabGroup.activeTab;
    assert.ok(tab?.input instanceof vscode.TabInputCustom && tab.input.viewType === 'zonewright.soundFont');
    await workbench.screenshot('sound-font-dark');
    await workbench.click({ view, selector: 'tbody tr:nth-child(2) vscode-button' });
    await until('the preset as text', () =>
      /sample=reeds\.sf2\/Reed\.wav/.test(vscode.window.activeTextEditor?.document.getText() ?? ''),
    );
    const { document } = vscode.window.activeTextEditor as vscode.TextEditor;
    assert.equal(document.languageId, 'sfz');
    assert.match(document.getText(), /lokey=60 hikey=72/);
    // Once it has a place of its own, its sample is found where it is: inside the font.
    assert.ok(await document.save());
    const { document: saved } = await openFile('000-009 Mill bell.sfz');
    await until('hints of the sample', async () => {
      const at = saved.positionAt(saved.getText().indexOf('Reed.wav') + 2);
      const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
        'vscode.executeHoverProvider',
        saved.uri,
        at,
      );
      return hovers.some(({ contents }) =>
        contents.some((one) => /4,?000 frames|0\.09/.test(typeof one === 'string' ? one : one.value)),
      );
    });
    const all = vscode.languages
      .getDiagnostics()
      .flatMap(([{ path }, found]) => (path.endsWith('.sfz') && path.includes('Mill bell') ? found : []));
    assert.deepEqual(
      all.filter(({ code }) => String(code).startsWith('sample-')),
      [],
    );
  },
);

workbenchTest('a file that only has the ending of a SoundFont is told apart', async (workbench) => {
  const uri = await writeWorkspaceFile('broken.sf2', font.slice(0, 300));
  await vscode.commands.executeCommand('vscode.open', uri);
  await until('the reason', async () =>
    /cut short/.test(await workbench.text({ view, selector: '[role=status]' })),
  );
});
