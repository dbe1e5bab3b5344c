import * as vscode from 'vscode';
import { openFile, workspaceFolder, writeWorkspaceFile } from '../suite/documents';
import { until } from '../suite/host/until';
import type { Workbench } from '../suite/host/workbench';
import { task } from './taskList';

const view = '#table-preview';
const rows = 39;

/** A row of a table: two octaves in three layers, a step a semitone. */
function row(at: number): string[] {
  const layer = at % 3;
  const key = 48 + Math.floor(at / 3);
  return [
    `harp-${key}-${layer + 1}.wav`,
    String(key),
    String(key),
    String(1 + 42 * layer),
    String(layer === 2 ? 127 : 42 + 42 * layer),
  ];
}

const table = [
  ['Sample', 'Low key', 'High key', 'Low vel', 'High vel'],
  ...Array.from({ length: rows }, (_, at) => row(at)),
]
  .map((cells) => cells.join('\t'))
  .join('\n');

/** What would have to be typed: a region a row. */
const typed = Array.from({ length: rows }, (_, at) => {
  const [sample, low, high, soft, loud] = row(at);
  return `<region> sample=${sample} lokey=${low} hikey=${high} lovel=${soft} hivel=${loud}\n`;
}).join('').length;

async function copied(workbench: Workbench, text: string): Promise<void> {
  await vscode.env.clipboard.writeText(text);
  await workbench.evaluate(`navigator.clipboard.writeText(${JSON.stringify(text)})`);
}

function regions(document: vscode.TextDocument): number {
  return document.getText().match(/<region\b/g)?.length ?? 0;
}

async function emptyInstrument(workbench: Workbench, name: string): Promise<void> {
  await writeWorkspaceFile(`tasks/${name}`, '');
  await openFile(`tasks/${name}`);
  await workbench.waitFor({ selector: '.monaco-editor' });
}

async function savedSomewhere(path: string): Promise<void> {
  await until(`${path} on the disk`, async () => {
    const { size } = await vscode.workspace.fs.stat(vscode.Uri.joinPath(workspaceFolder(), path));
    return size > 0;
  });
}

task({
  title: '1 paste 39 rows',
  byHand: { keys: typed, clicks: 1, how: 'a region typed for each row' },
  async prepare(workbench) {
    await emptyInstrument(workbench, 'pasted.sfz');
    await copied(workbench, table);
  },
  async carryOut(person) {
    await person.click({ selector: '.editor-instance .monaco-editor .view-lines' });
    await person.paste();
    const document = vscode.window.activeTextEditor?.document;
    await until('the regions', () => document !== undefined && regions(document) === rows);
  },
});

task({
  title: '2 correct a column',
  byHand: {
    keys: rows * 19,
    clicks: rows,
    how: 'the range selected and the root key typed in each of 39 regions',
  },
  async prepare(workbench) {
    await emptyInstrument(workbench, 'corrected.sfz');
    const ranges = table
      .split('\n')
      .slice(1)
      .map((line) => line.split('\t').slice(0, 3).join('\t'));
    await copied(workbench, ['Stroke\tFirst\tLast', ...ranges].join('\n'));
  },
  async carryOut(person) {
    await person.command('preview copied', 'Preview Copied Zone Table');
    await person.choose(view, 'column-1', 'pitch_keycenter');
    await person.choose(view, 'column-2', 'unknown');
    await person.click({ view, selector: '#write' });
    await until('the regions', () =>
      vscode.workspace.textDocuments.some(
        (document) => document.getText().match(/pitch_keycenter=/g)?.length === rows,
      ),
    );
  },
});

task({
  title: '3 new instrument in the right folder',
  byHand: {
    keys: typed + 'harps/harps.sfz'.length + 4,
    clicks: 3,
    how: 'a new file in the folder, a region typed for each row, saved',
  },
  async prepare(workbench) {
    const recording = vscode.Uri.joinPath(workspaceFolder(), 'millrace-chimes/Samples/felt-soft-C4-1.wav');
    for (let at = 0; at < rows; at++)
      await vscode.workspace.fs.copy(
        recording,
        vscode.Uri.joinPath(workspaceFolder(), 'harps/Samples', row(at)[0] ?? ''),
        { overwrite: true },
      );
    await copied(workbench, table);
  },
  async carryOut(person, workbench) {
    await person.command('new instrument from cop', 'New Instrument from Copied Zone Table');
    await until('the proposed place', async () =>
      (await workbench.text({ view, selector: 'h1' })).includes('harps/harps.sfz'),
    );
    await person.click({ view, selector: '#write' });
    await until('the text', () =>
      vscode.window.activeTextEditor?.document.uri.path.endsWith('/harps/harps.sfz'),
    );
    await person.press('Control+S');
    await savedSomewhere('harps/harps.sfz');
  },
});

task({
  title: '4 saved table to SFZ',
  byHand: {
    keys: typed + 12,
    clicks: 4,
    how: 'the table beside a new file, a region typed for each row, saved',
  },
  async prepare() {
    const uri = await writeWorkspaceFile('tables/zones.tsv', table);
    await vscode.commands.executeCommand('revealInExplorer', uri);
  },
  async carryOut(person) {
    await person.click(
      { selector: '.explorer-folders-view .monaco-list-row.focused >> text=zones.tsv' },
      'right',
    );
    await person.click({ selector: '.monaco-menu >> text=Convert Saved Zone Table to an Instrument' });
    await person.click({ view, selector: '#write' });
    await until('the text', () =>
      vscode.window.activeTextEditor?.document.uri.path.endsWith('/tables/zones.sfz'),
    );
    await person.press('Control+S');
    await savedSomewhere('tables/zones.sfz');
  },
});
