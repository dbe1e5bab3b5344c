import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { openFile, workspaceFolder, writeWorkspaceFile } from './documents';
import { workbenchTest } from './host/testList';
import { until } from './host/until';

const smithy = `<?xml version="1.0" encoding="UTF-8"?>
<smithy>
  <shelf title="Felt">
    <bar recording="Samples/felt-soft-C4-1.wav" lowest-key="48" highest-key="62" root-key="60" loudness="1"/>
    <bar recording="Samples/felt-soft-F4-1.wav" lowest-key="63" highest-key="68" root-key="65" loudness="1"/>
  </shelf>
</smithy>
`;
const table = `Sample\tLow Key\tHigh Key\tRoot
felt-soft-B4-1.wav\t69\t74\t71
felt-soft-F5-1.wav\t75\t80\t77
`;

workbenchTest(
  'XML in an unknown vocabulary is read, settled by a click, and pasted into in kind',
  async (workbench) => {
    await workbench.useColourTheme('light');
    await vscode.commands.executeCommand('notifications.clearAll');
    await vscode.commands.executeCommand('workbench.action.closeSidebar');
    await vscode.commands.executeCommand('workbench.action.closePanel');
    const path = 'millrace-chimes/smithy.xml';
    await writeWorkspaceFile(path, smithy);
    const editor = await openFile(path);
    const { document } = editor;
    const doubts = () =>
      vscode.languages.getDiagnostics(document.uri).filter(({ code }) => code === 'vocabulary-doubt');
    await until('the open point', () => doubts().length === 1);
    await workbench.waitFor({ selector: '.codelens-decoration >> text=/worked out from this text/' });
    await workbench.waitFor({ selector: '.editor-actions [aria-label^="Show Keyboard Map"]' });
    await workbench.screenshot('vocabulary-worked-out');

    const [doubt] = doubts();
    const range = doubt?.range;
    const fixes = await until('fixes', async () => {
      const found = await vscode.commands.executeCommand<vscode.CodeAction[]>(
        'vscode.executeCodeActionProvider',
        document.uri,
        range,
      );
      return found.some(({ command }) => command?.command === 'zonewright.saveVocabulary') && found;
    });
    const keep = fixes.find(({ title }) => /Keep how it is read now/.test(title));
    await vscode.commands.executeCommand(
      keep?.command?.command as string,
      ...(keep?.command?.arguments ?? []),
    );
    await until('nothing open', () => doubts().length === 0);
    await workbench.waitFor({ selector: '.codelens-decoration >> text=/vocabulary.json/' });

    const end = document.positionAt(document.getText().indexOf('  </shelf>'));
    editor.selection = new vscode.Selection(end, end);
    await workbench.waitFor({ selector: '.monaco-editor.focused' });
    await workbench.evaluate(`navigator.clipboard.writeText(${JSON.stringify(table)})`);
    await workbench.paste();
    await until('the pasted regions', () => document.getText().includes('felt-soft-F5-1.wav'));
    assert.match(
      document.getText(),
      /\n {4}<bar recording="Samples\/felt-soft-F5-1\.wav" lowest-key="75" highest-key="80" root-key="77"\/>\n/,
    );
    await workbench.screenshot('vocabulary-pasted');
    await vscode.commands.executeCommand('workbench.action.files.revert');
    for (const name of ['smithy.vocabulary.json', path]) {
      await vscode.workspace.fs.delete(vscode.Uri.joinPath(workspaceFolder(), name));
    }
  },
);
