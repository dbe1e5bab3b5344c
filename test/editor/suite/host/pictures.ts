import * as vscode from 'vscode';
import { openFile, workspaceFolder, writeWorkspaceFile } from '../documents';
import { workbenchTest } from './testList';
import { until } from './until';
import type { Workbench } from './workbench';

// The pictures of the README. They run with the other tests, so that they cannot fall behind.

const view = '#keyboard-map';
const shapes = '[id^=shape-]';

/** The demo instrument in the middle of the work on it, with a few faults. */
async function openDraft(): Promise<vscode.TextEditor> {
  const folder = workspaceFolder();
  const whole = await vscode.workspace.fs.readFile(
    vscode.Uri.joinPath(folder, 'millrace-chimes/millrace-chimes.sfz'),
  );
  const draft = new TextDecoder()
    .decode(whole)
    .replace('felt-soft-F4-2.wav', 'felt-soft-F4-02.wav')
    .replace('lokey=a4 hikey=d5 pitch_keycenter=b4 tune=-7', 'lokey=a4 hikey=f5 pitch_keycenter=b4 tune=-7')
    .replace('loop_mode=no_loop ampeg_release', 'loop_mode=no_lop ampeg_release');
  await writeWorkspaceFile('millrace-chimes/draft.sfz', draft);
  return openFile('millrace-chimes/draft.sfz');
}

async function tidy(): Promise<void> {
  await vscode.commands.executeCommand('notifications.clearAll');
  await vscode.commands.executeCommand('workbench.action.closeSidebar');
}

async function showMap(workbench: Workbench): Promise<void> {
  await vscode.commands.executeCommand('zonewright.showKeyboardMap');
  await workbench.waitFor({ view, selector: shapes });
  await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
  // What the mouse rests on would show instead of what is chosen.
  await workbench.move({ selector: '.part.statusbar' });
}

workbenchTest('picture: an instrument with findings and its map', async (workbench) => {
  await workbench.useColourTheme('light');
  await tidy();
  const editor = await openDraft();
  const { document } = editor;
  await until('findings', () => vscode.languages.getDiagnostics(document.uri).length >= 3);
  await showMap(workbench);
  const line = document.positionAt(document.getText().indexOf('felt-soft-F4-02')).line;
  const at = new vscode.Position(line, 0);
  editor.selection = new vscode.Selection(at, at);
  editor.revealRange(new vscode.Range(at, at), vscode.TextEditorRevealType.InCenter);
  await workbench.waitFor({ view, selector: `${shapes}[aria-selected=true]` });
  await workbench.screenshot('picture-editor-light');
});

workbenchTest('picture: a pasted table', async (workbench) => {
  await workbench.useColourTheme('light');
  await tidy();
  await vscode.commands.executeCommand('workbench.action.closePanel');
  const table = vscode.Uri.joinPath(workspaceFolder(), 'millrace-chimes/zones.tsv');
  const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(table));
  await writeWorkspaceFile('millrace-chimes/new.sfz', '<control>\ndefault_path=Samples/\n\n');
  const editor = await openFile('millrace-chimes/new.sfz');
  const end = editor.document.lineAt(editor.document.lineCount - 1).range.end;
  editor.selection = new vscode.Selection(end, end);
  // Pasted before the server has started: the paste waits for it.
  await until(
    'the extension',
    () => vscode.extensions.getExtension('zonewright.zonewright')?.isActive === true,
  );
  await workbench.waitFor({ selector: '.monaco-editor.focused' });
  await workbench.evaluate(`navigator.clipboard.writeText(${JSON.stringify(text)})`);
  await workbench.paste();
  await workbench.waitFor({ selector: '.notifications-toasts >> text=/regions written/' });
  editor.revealRange(new vscode.Range(0, 0, 0, 0));
  await workbench.screenshot('picture-paste');
});

workbenchTest('picture: the map in the dark', async (workbench) => {
  await workbench.useColourTheme('dark');
  await tidy();
  const editor = await openFile('millrace-chimes/millrace-chimes.sfz');
  await showMap(workbench);
  const at = editor.document.positionAt(
    editor.document.getText().indexOf('<region> sample=felt-medium-B4-1'),
  );
  editor.selection = new vscode.Selection(at, at);
  await workbench.waitFor({ view, selector: `${shapes}[aria-selected=true][aria-label*="felt-medium-B4"]` });
  await vscode.commands.executeCommand('workbench.action.toggleMaximizedPanel');
  await workbench.screenshot('picture-map-dark');
  await vscode.commands.executeCommand('workbench.action.toggleMaximizedPanel');
});
