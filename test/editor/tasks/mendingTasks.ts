import * as vscode from 'vscode';
import { openFile, workspaceFolder, writeWorkspaceFile } from '../suite/documents';
import { until } from '../suite/host/until';
import { sineWave } from '../suite/host/waves';
import { task } from './taskList';

const loops = 26;
const instruments = 200;
/** Every so many of the instruments have a fault. */
const faultEvery = 8;

function recording(): vscode.Uri {
  return vscode.Uri.joinPath(workspaceFolder(), 'millrace-chimes/Samples/felt-soft-C4-1.wav');
}

async function copyRecording(...path: string[]): Promise<void> {
  await vscode.workspace.fs.copy(recording(), vscode.Uri.joinPath(workspaceFolder(), ...path), {
    overwrite: true,
  });
}

async function serverKnows(document: vscode.TextDocument): Promise<void> {
  await until('the server', async () => {
    const symbols = await vscode.commands.executeCommand<unknown[]>(
      'vscode.executeDocumentSymbolProvider',
      document.uri,
    );
    return symbols?.length > 0;
  });
}

task({
  title: '5 rename a sample',
  byHand: {
    keys:
      2 +
      'chime-low.wav'.length +
      2 * ('one.sfz'.length + 'chime-lo.wav'.length + 'chime-low.wav'.length + 6),
    clicks: 2,
    how: 'the file renamed in the explorer, then found and replaced in the two instruments that use it',
  },
  async prepare() {
    const text = '<control> default_path=Samples/\n<region> key=60 sample=chime-lo.wav\n';
    await writeWorkspaceFile('renamed/one.sfz', text);
    await writeWorkspaceFile('renamed/two.sfz', text);
    await copyRecording('renamed/Samples/chime-lo.wav');
    const { document } = await openFile('renamed/one.sfz');
    await serverKnows(document);
  },
  async carryOut(person, workbench) {
    const document = vscode.window.activeTextEditor?.document;
    await person.click({ selector: '.monaco-editor .view-line >> text=chime-lo.wav' });
    await person.press('F2');
    await until('the box with its name selected', () =>
      workbench.evaluate<boolean>(
        "(() => { const box = document.activeElement; return box.matches('.rename-box input') && box.selectionEnd > box.selectionStart; })()",
      ),
    );
    await person.type('chime-low.wav');
    await person.press('Enter');
    await until('the new name', () => document?.getText().includes('sample=chime-low.wav'));
  },
});

task({
  title: '6 mend 26 loops',
  byHand: {
    keys: loops * 48,
    clicks: loops * 5,
    how: 'each file opened in an editor of audio, three pairs of points tried, the best one typed',
  },
  async prepare() {
    // 80.31 periods of 100 frames: the loop jumps where it closes. Each file has a tone of its own level.
    for (let at = 0; at < loops; at++)
      await writeWorkspaceFile(`loops/Samples/${at}.wav`, sineWave(10_000 + 200 * at));
    const regions = Array.from(
      { length: loops },
      (_, at) =>
        `<region> sample=${at}.wav loop_start=1000 loop_end=9030 key=${48 + at} pitch_keycenter=69 pitch_keytrack=0`,
    );
    const uri = await writeWorkspaceFile(
      'loops/loops.sfz',
      `<control> default_path=Samples/\n<global> loop_mode=loop_continuous\n${regions.join('\n')}\n`,
    );
    await openFile('loops/loops.sfz');
    await until(
      'what is wrong',
      () => vscode.languages.getDiagnostics(uri).some(({ code }) => code === 'loop-seam'),
      60,
    );
  },
  async carryOut(person) {
    const document = vscode.window.activeTextEditor?.document;
    const before = document?.getText();
    await person.click({ selector: '.monaco-editor .view-line span:text-is("9030")' });
    await person.press('Control+.');
    await person.click({
      selector: '.action-widget >> text=Loop where it closes smoothly, everywhere in this file',
    });
    await until('the loops', () => {
      const text = document?.getText() ?? '';
      return text !== before && !/loop_start=1000 loop_end=9030/.test(text);
    });
  },
});

task({
  title: '7 find what is wrong in 200 instruments',
  byHand: {
    keys: instruments * 3,
    clicks: instruments,
    how: 'each file opened, looked through and closed; samples that are not there are not seen',
  },
  async prepare() {
    for (let at = 0; at < instruments; at++) {
      const isWrong = at % faultEvery === 0;
      await writeWorkspaceFile(
        `many/${at}.sfz`,
        `<region> sample=*sine lokey=60 hikey=${isWrong ? 50 : 70}\n`,
      );
    }
  },
  async carryOut(person) {
    await person.command('check all inst', 'Check All Instruments in the Folder');
    await person.press('Control+Shift+M');
    await until(
      'all that is wrong',
      () => {
        const found = vscode.languages.getDiagnostics().filter(([uri]) => uri.path.includes('/many/'));
        return found.filter(([, all]) => all.length > 0).length === instruments / faultEvery;
      },
      60,
    );
  },
});

task({
  title: '9 locate a folder that was moved',
  byHand: {
    keys:
      2 * ('harp.sfz'.length + 'default_path=Samples/'.length + 'default_path=../archive/harp/'.length + 5),
    clicks: 3,
    how: 'the folder looked for in the explorer, the path replaced in the two instruments that name it',
  },
  async prepare() {
    const text =
      '<control> default_path=Samples/\n<region> key=60 sample=a.wav\n<region> key=61 sample=b.wav\n';
    const uri = await writeWorkspaceFile('moved/harp.sfz', text);
    await writeWorkspaceFile('moved/soft.sfz', text);
    for (const name of ['a.wav', 'b.wav']) await copyRecording('archive/harp', name);
    await openFile('moved/harp.sfz');
    await until('what is wrong', () =>
      vscode.languages.getDiagnostics(uri).some(({ code }) => code === 'sample-missing'),
    );
  },
  async carryOut(person) {
    const document = vscode.window.activeTextEditor?.document;
    await person.click({ selector: '.monaco-editor .view-line >> text=a.wav' });
    await person.press('Control+.');
    await person.click({ selector: '.action-widget >> text=/^Use the folder/' });
    await until('the paths', () => document?.getText().includes('default_path=../archive/harp/'));
  },
});
