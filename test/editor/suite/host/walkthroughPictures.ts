import * as vscode from 'vscode';
import { openFile, writeWorkspaceFile } from '../documents';
import { workbenchTest } from './testList';
import { until } from './until';
import type { ColourTheme, Workbench } from './workbench';

// The pictures of the walkthrough: one thing in each, small enough to be read beside its words, in each kind of theme.

const editors = '.part.editor';
const map = '#keyboard-map';
const themes: readonly (readonly [suffix: string, theme: ColourTheme])[] = [
  ['light', 'light'],
  ['dark', 'dark'],
  ['hc', 'highContrast'],
];

const head = '<control>\ndefault_path=Samples/\n\n';
const soft = `<group> group_label=Soft lovel=1 hivel=80
<region> sample=felt-soft-C4-1.wav lokey=c3 hikey=d4 pitch_keycenter=c4
<region> sample=felt-soft-F4-1.wav lokey=d#4 hikey=g#4 pitch_keycenter=f4
<region> sample=felt-soft-B4-1.wav lokey=a4 hikey=d5 pitch_keycenter=b4
<region> sample=felt-soft-F5-1.wav lokey=d#5 hikey=g#5 pitch_keycenter=f5
<region> sample=felt-soft-C6-1.wav lokey=a5 hikey=c7 pitch_keycenter=c6
`;
const loud = soft.replaceAll('soft', 'loud').replace('Soft lovel=1 hivel=80', 'Loud lovel=81 hivel=127');

async function open(name: string, text: string): Promise<vscode.TextEditor> {
  await vscode.commands.executeCommand('notifications.clearAll');
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  await vscode.commands.executeCommand('workbench.action.closeSidebar');
  await vscode.commands.executeCommand('workbench.action.closePanel');
  await writeWorkspaceFile(`millrace-chimes/${name}`, text);
  return openFile(`millrace-chimes/${name}`);
}

function putCursor(editor: vscode.TextEditor, text: string): void {
  const at = editor.document.positionAt(editor.document.getText().indexOf(text));
  editor.selection = new vscode.Selection(at, at);
}

/** A picture of a part of a small window in each kind of theme; `prepare` shows again what a change of theme hides. */
async function take(
  workbench: Workbench,
  name: string,
  part: string,
  prepare: (theme: ColourTheme) => Promise<void> = async () => {},
): Promise<void> {
  for (const [suffix, theme] of themes) {
    await workbench.useColourTheme(theme);
    await prepare(theme);
    await workbench.screenshot(`picture-walkthrough-${name}-${suffix}`, { selector: part });
  }
}

/** Does something in a window as small as a picture, without the overview of the text. */
async function inSmallWindow(
  workbench: Workbench,
  height: number,
  action: () => Promise<void>,
): Promise<void> {
  const settings = vscode.workspace.getConfiguration('editor');
  await settings.update('minimap.enabled', false, vscode.ConfigurationTarget.Global);
  try {
    await workbench.inWindowOf(840, height, action);
  } finally {
    await settings.update('minimap.enabled', undefined, vscode.ConfigurationTarget.Global);
  }
}

workbenchTest('picture: the walkthrough, an instrument as text', (workbench) =>
  inSmallWindow(workbench, 480, async () => {
    await open('bars.sfz', `${head}${soft}\n${loud}`);
    await workbench.waitFor({ selector: `${editors} .codelens-decoration` });
    await take(workbench, 'open', editors);
  }),
);

workbenchTest('picture: the walkthrough, a pasted table', (workbench) =>
  inSmallWindow(workbench, 480, async () => {
    const rows = ['C4\tC3\tD4', 'F4\tD#4\tG#4', 'B4\tA4\tD5', 'F5\tD#5\tG#5', 'C6\tA5\tC7'].map(
      (keys) => `felt-loud-${keys.split('\t')[0]}-1.wav\t${keys}`,
    );
    const table = ['Sample\tRoot\tLow key\tHigh key', ...rows].join('\n');
    const editor = await open('pasted.sfz', head);
    const end = editor.document.lineAt(editor.document.lineCount - 1).range.end;
    editor.selection = new vscode.Selection(end, end);
    await workbench.waitFor({ selector: '.monaco-editor.focused' });
    await workbench.evaluate(`navigator.clipboard.writeText(${JSON.stringify(table)})`);
    await workbench.paste();
    const message = { selector: '.notifications-toasts >> text=/regions written/' };
    await workbench.waitFor(message);
    await vscode.commands.executeCommand('editor.hidePasteWidget');
    await take(workbench, 'paste', editors, () => workbench.waitFor(message));
  }),
);

workbenchTest('picture: the walkthrough, a finding and what it says', (workbench) =>
  inSmallWindow(workbench, 480, async () => {
    const editor = await open(
      'faults.sfz',
      `${head}${soft.replace('hivel=80', 'hivel=80 loop_mod=no_loop')}\n${loud}`,
    );
    const { uri } = editor.document;
    await until('the finding', () => vscode.languages.getDiagnostics(uri).length > 0);
    putCursor(editor, '<group> group_label=Soft');
    await vscode.commands.executeCommand('editor.action.marker.next');
    await workbench.waitFor({ selector: '.marker-widget' });
    await take(workbench, 'findings', editors);
    await vscode.commands.executeCommand('closeMarkersNavigation');
  }),
);

workbenchTest('picture: the walkthrough, the keyboard map', (workbench) =>
  inSmallWindow(workbench, 756, async () => {
    const editor = await open('mapped.sfz', `${head}${soft}\n${loud}`);
    await vscode.commands.executeCommand('zonewright.showKeyboardMap');
    await workbench.waitFor({ view: map, selector: '[id^=shape-]' });
    await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
    putCursor(editor, '<region> sample=felt-soft-B4');
    await workbench.waitFor({ view: map, selector: '[id^=shape-][aria-selected=true]' });
    await vscode.commands.executeCommand('workbench.action.toggleMaximizedPanel');
    await take(workbench, 'map', '.part.panel');
    await vscode.commands.executeCommand('workbench.action.toggleMaximizedPanel');
  }),
);
