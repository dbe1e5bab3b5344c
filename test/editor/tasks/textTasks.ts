import * as vscode from 'vscode';
import { openFile, writeWorkspaceFile } from '../suite/documents';
import { until } from '../suite/host/until';
import { task } from './taskList';

const suggestion = (label: string) => ({
  selector: `.suggest-widget.visible .monaco-list-row.focused .label-name:has-text("${label}")`,
});

/** An instrument in XML of other names; two of its values have no place in SFZ. */
const rack = `<rack maker="somebody">
  <bar wav="Samples/felt-soft-C4-1.wav" low="48" high="50" root="49" colour="teal"/>
  <bar wav="Samples/felt-soft-F4-1.wav" low="51" high="53" root="52" colour="ochre"/>
  <bar wav="Samples/felt-soft-B4-1.wav" low="54" high="60" root="57" colour="plum"/>
</rack>
`;

task({
  title: '8 convert an instrument and read the notes',
  byHand: {
    keys: rack.length,
    clicks: 4,
    how: 'the text typed anew as SFZ, about as long; what is lost is not told',
  },
  async prepare() {
    await writeWorkspaceFile('millrace-chimes/rack.xml', rack);
    await openFile('millrace-chimes/rack.xml');
  },
  async carryOut(person, workbench) {
    await person.command('convert instrument to sfz', 'Convert Instrument to SFZ');
    await until('the text', () =>
      vscode.workspace.textDocuments.some(
        (document) => document.isUntitled && document.getText().match(/<region>/g)?.length === 3,
      ),
    );
    await person.click({ selector: '.notifications-toasts >> text=Show notes' });
    await workbench.waitFor({
      view: '.markdown-body',
      selector: 'h1 >> text=/Conversion notes/',
      timeoutSeconds: 40,
    });
  },
});

const lines = Array.from(
  { length: 10 },
  (_, at) => `<region> sample=*sine lokey=${60 + at} hikey=${60 + at}`,
);

task({
  title: '10 type ten regions',
  byHand: { keys: lines.join('\n').length, clicks: 0, how: 'every letter typed' },
  async prepare(workbench) {
    const uri = await writeWorkspaceFile('tasks/typed.sfz', '');
    await openFile('tasks/typed.sfz');
    await until('the server', async () => {
      const { items } = await vscode.commands.executeCommand<vscode.CompletionList>(
        'vscode.executeCompletionItemProvider',
        uri,
        new vscode.Position(0, 0),
      );
      return items.length > 0;
    });
    await workbench.waitFor({ selector: '.monaco-editor.focused' });
  },
  async carryOut(person, workbench) {
    for (let at = 0; at < lines.length; at++) {
      const key = String(60 + at);
      await person.type('<re');
      await workbench.waitFor(suggestion('region'));
      await person.press('Enter');
      await person.type(' sa');
      await workbench.waitFor(suggestion('sample'));
      await person.press('Enter');
      await person.type('*sine lo');
      await workbench.waitFor(suggestion('lokey'));
      await person.press('Enter');
      await person.type(`${key} hi`);
      await workbench.waitFor(suggestion('hikey'));
      await person.press('Enter');
      await person.type(key);
      if (at < lines.length - 1) await person.press('Enter');
    }
    await until('the text', () => vscode.window.activeTextEditor?.document.getText() === lines.join('\n'));
  },
});
