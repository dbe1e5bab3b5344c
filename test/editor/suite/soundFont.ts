import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { fontBytes, tone } from '../../unit/soundfont/fontBytes';
import { openFile, writeWorkspaceFile } from './documents';
import { answerFolderDialog } from './host/folderDialog';
import { workbenchTest } from './host/testList';
import { until } from './host/until';

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
  'a SoundFont opens as a page of its presets, of which one is seen, heard and shown as text',
  async (workbench) => {
    const uri = await writeWorkspaceFile('reeds.sf2', font);
    await vscode.commands.executeCommand('vscode.open', uri);
    await until('the presets', async () =>
      /Mill bell/.test(await workbench.text({ view, selector: 'table' })),
    );
    const tab = vscode.window.tabGroups.activeTabGroup.activeTab;
    assert.ok(tab?.input instanceof vscode.TabInputCustom && tab.input.viewType === 'zonewright.soundFont');
    await workbench.screenshot('sound-font-dark');
    await workbench.waitFor({ view, selector: '[role=option]' });
    await workbench.click({ view, selector: 'tbody tr:nth-child(2) button' });
    await until('the map of the other preset', async () =>
      /Mill bell/.test(await workbench.text({ view, selector: '.chosen h2' })),
    );
    await workbench.click({ view, selector: '#sound-switch' });
    await workbench.waitFor({ view, selector: '.audition-surface', timeoutSeconds: 20 });
    assert.match(await workbench.text({ view, selector: '.audition-status' }), /Start quiet/);
    await workbench.click({ view, selector: '.audition-surface' });
    await until('a region that sounds', async () => {
      await workbench.press('q');
      return /C4.*1 region sounds\./.test(await workbench.text({ view, selector: '.audition-readout' }));
    });
    await workbench.screenshot('sound-font-map');
    assert.deepEqual(
      (await workbench.problems()).filter(({ inView }) => inView),
      [],
    );
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

workbenchTest('a preset is converted into a folder, samples and all', async (workbench) => {
  const uri = await writeWorkspaceFile('bells.sf2', font);
  const folder = vscode.Uri.joinPath(uri, '..', 'bells');
  // What a first try wrote would be in the way of a second one.
  await vscode.workspace.fs.delete(folder, { recursive: true }).then(undefined, () => undefined);
  await vscode.workspace.fs.createDirectory(folder);
  await vscode.commands.executeCommand('vscode.open', uri);
  await workbench.waitFor({ view, selector: '[role=option]' });
  await workbench.click({ view, selector: 'tbody tr:nth-child(2) vscode-button:last-child' });
  await answerFolderDialog(workbench, folder);
  await until('the text', async () => {
    const entries = await vscode.workspace.fs.readDirectory(folder);
    return entries.some(([name]) => name === '000-009 Mill bell.sfz');
  });
  const { document } = await openFile('bells/000-009 Mill bell.sfz');
  assert.match(document.getText(), /sample=Samples\/Reed\.wav/);
  const sample = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(folder, 'Samples/Reed.wav'));
  assert.equal(String.fromCharCode(...sample.subarray(8, 12)), 'WAVE');
});

workbenchTest('a file that only has the ending of a SoundFont is told apart', async (workbench) => {
  const uri = await writeWorkspaceFile('broken.sf2', font.slice(0, 300));
  await vscode.commands.executeCommand('vscode.open', uri);
  await until('the reason', async () =>
    /cut short/.test(await workbench.text({ view, selector: '[role=status]' })),
  );
});
