import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { openFile } from './documents';
import { workbenchTest } from './host/testList';
import { until } from './host/until';

const view = '#keyboard-map';

workbenchTest(
  'the map plays samples of an instrument, quiet at first, and hears changes of its text',
  async (workbench) => {
    const editor = await openFile('millrace-chimes/millrace-chimes.sfz');
    await vscode.commands.executeCommand('zonewright.showKeyboardMap');
    await workbench.waitFor({ view, selector: '[role=option]' });
    await workbench.click({ view, selector: '#sound-switch' });
    await workbench.waitFor({ view, selector: '.audition-surface', timeoutSeconds: 20 });
    assert.match(await workbench.text({ view, selector: '.audition-status' }), /Start quiet|Careful/);
    await workbench.click({ view, selector: '.audition-surface' });
    const played = async (text: RegExp) => {
      await workbench.press('q');
      return text.test(await workbench.text({ view, selector: '.audition-readout' }));
    };
    await until('a region that sounds', () => played(/[1-9]\d* regions? sounds?\./));
    await workbench.screenshot('sound');
    const text = editor.document.getText();
    const whole = new vscode.Range(editor.document.positionAt(0), editor.document.positionAt(text.length));
    await editor.edit((edit) => edit.replace(whole, '<region> sample=*sine lokey=0 hikey=20\n'));
    await until('silence by the new text', () => played(/0 regions sound\./));
    assert.deepEqual(
      (await workbench.problems()).filter(({ inView }) => inView),
      [],
    );
  },
);

workbenchTest('the regions at the cursor are played from the text', async (workbench) => {
  const editor = await openFile('millrace-chimes/millrace-chimes.sfz');
  const place = editor.document.positionAt(
    editor.document.getText().indexOf('<region> sample=bowed-C4') + 10,
  );
  editor.selection = new vscode.Selection(place, place);
  await vscode.commands.executeCommand('zonewright.playRegions');
  await workbench.waitFor({ view, selector: '#stop-sound', timeoutSeconds: 20 });
  await until('what was played is told', async () =>
    /[1-9]\d* regions? sounds?\./.test(await workbench.text({ view, selector: '.audition-readout' })),
  );
  await vscode.commands.executeCommand('zonewright.stopSound');
});

workbenchTest(
  'a link in a hover plays a sample, and links to other commands do nothing',
  async (workbench) => {
    const editor = await openFile('millrace-chimes/millrace-chimes.sfz');
    const { document } = editor;
    const at = document.positionAt(document.getText().indexOf('sample=bowed-C4') + 9);
    let text: vscode.MarkdownString | undefined;
    await until('a hover with links', async () => {
      const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
        'vscode.executeHoverProvider',
        document.uri,
        at,
      );
      const texts = hovers
        .flatMap(({ contents }) => contents)
        .filter((one) => one instanceof vscode.MarkdownString);
      text = texts.find(({ value }) => value.includes('Play sample'));
      return text !== undefined;
    });
    assert.deepEqual(text?.isTrusted, {
      enabledCommands: ['zonewright.playRegions', 'zonewright.playSample'],
    });
    const [, command = '', words = ''] = /<command:([\w.]+)\?([^>]+)>/.exec(text?.value ?? '') ?? [];
    await vscode.commands.executeCommand(command, ...(JSON.parse(decodeURIComponent(words)) as unknown[]));
    await workbench.waitFor({ view, selector: '#stop-sound', timeoutSeconds: 20 });
    assert.deepEqual(
      (await workbench.problems()).filter(({ inView }) => inView),
      [],
    );
    await vscode.commands.executeCommand('zonewright.stopSound');
  },
);

workbenchTest('a MIDI keyboard is asked for, and what it needs is told', async (workbench) => {
  void vscode.commands.executeCommand('zonewright.connectMidi');
  await until('what is missing', async () =>
    /MIDI/.test(await workbench.text({ selector: '.notification-list-item' })),
  );
  assert.match(
    await workbench.text({ selector: '.notification-list-item' }),
    /npm install --prefix ".*midi" @julusian\/midi@/,
  );
  await vscode.commands.executeCommand('notifications.clearAll');
  await vscode.commands.executeCommand('zonewright.disconnectMidi');
});
