import * as vscode from 'vscode';
import { openFile, workspaceFolder, writeWorkspaceFile } from '../suite/documents';
import { workbenchTest } from '../suite/host/testList';
import { until } from '../suite/host/until';
import type { Workbench } from '../suite/host/workbench';

const sizes = [
  [1440, 900],
  [1024, 700],
] as const;

/** Takes a screen in each kind of theme, as large as windows are and as small as they get. */
function screen(name: string, open: (workbench: Workbench) => Promise<void>): void {
  workbenchTest(
    `screen: ${name}`,
    async (workbench) => {
      await vscode.commands.executeCommand('notifications.clearAll');
      await vscode.commands.executeCommand('workbench.action.closePanel');
      await open(workbench);
      for (const [width, height] of sizes)
        await workbench.inWindowOf(width, height, async () => {
          for (const theme of ['light', 'dark', 'highContrast'] as const) {
            await workbench.useColourTheme(theme);
            await workbench.settled();
            await workbench.screenshot(`screen-${name}-${theme}-${width}`);
          }
        });
    },
    { timeoutSeconds: 120 },
  );
}

const demo = 'millrace-chimes/millrace-chimes.sfz';

screen('findings', async () => {
  const { document } = await openFile('first-bars/first-bars.sfz');
  await until('findings', () => vscode.languages.getDiagnostics(document.uri).length >= 3);
  await vscode.commands.executeCommand('workbench.actions.view.problems');
});

screen('map', async (workbench) => {
  await openFile(demo);
  await vscode.commands.executeCommand('zonewright.showKeyboardMap');
  await workbench.waitFor({ view: '#keyboard-map', selector: '[id^=shape-]' });
});

screen('table', async (workbench) => {
  const table = vscode.Uri.joinPath(workspaceFolder(), 'millrace-chimes/zones.tsv');
  await vscode.env.clipboard.writeText(new TextDecoder().decode(await vscode.workspace.fs.readFile(table)));
  await writeWorkspaceFile('millrace-chimes/new.sfz', '<control>\ndefault_path=Samples/\n\n');
  await openFile('millrace-chimes/new.sfz');
  await vscode.commands.executeCommand('zonewright.previewTable');
  await workbench.waitFor({ view: '#table-preview', selector: '#write' });
});

screen('report', async (workbench) => {
  await openFile('first-bars/first-bars.sfz');
  await vscode.commands.executeCommand('zonewright.sampleReport');
  await workbench.waitFor({ view: '.first-list', selector: 'h1', timeoutSeconds: 60 });
});

screen('notes', async (workbench) => {
  await writeWorkspaceFile(
    'notes/there.sfz',
    '<region> sample=*sine lokey=59 hikey=61 1st=2\n<region> sample=*sine lokey=62 hikey=63 cutoff=900\n',
  );
  await openFile('notes/there.sfz');
  void vscode.commands.executeCommand('zonewright.convertToXml');
  await workbench.click({ selector: '.notifications-toasts >> text=Show notes' });
  await workbench.waitFor({ view: '.markdown-body', selector: 'h1', timeoutSeconds: 40 });
});

screen('fixes', async (workbench) => {
  for (const name of ['one', 'two'])
    await writeWorkspaceFile(`fixes/${name}.sfz`, '<region> sample=*sine key=60 loopmode=no_loop\n');
  await openFile('fixes/one.sfz');
  const folder = vscode.Uri.joinPath(workspaceFolder(), 'fixes');
  void vscode.commands.executeCommand('zonewright.fixAllInFolder', folder);
  await workbench.waitFor({ selector: '.quick-input-list .monaco-list-row:has-text("two.sfz")' });
});
