import * as vscode from 'vscode';
import { until } from './until';
import type { Workbench } from './workbench';

const button = '.quick-input-action .monaco-button';
const inside = 'a folder inside';

/**
 * Answers the editor's dialog for a folder, as a person does who looks before the answer: pastes the path, waits until
 * what is in the folder is listed, for which a folder is made in it, and takes it. A busy editor may fill in a path of its
 * own meanwhile or take no answer, so it is pasted again until the dialog is gone. Throws after 30 s.
 */
export async function answerFolderDialog(workbench: Workbench, folder: vscode.Uri): Promise<void> {
  await vscode.workspace.fs.createDirectory(vscode.Uri.joinPath(folder, inside));
  const path = `${folder.path}/`;
  await workbench.waitFor({ selector: button });
  // The editor hides its dialogs and keeps them in the page.
  const isGone = () => workbench.evaluate<boolean>(`!document.querySelector('${button}')?.offsetParent`);
  const isListed = () =>
    workbench.evaluate<boolean>(
      `document.querySelector('.quick-input-box input').value === ${JSON.stringify(path)} &&
        [...document.querySelectorAll('.quick-input-list .monaco-list-row')].some((row) => row.textContent.includes('${inside}'))`,
    );
  await until(
    'the dialog to take the folder',
    async () => {
      if (await isGone()) return true;
      await workbench.evaluate(`navigator.clipboard.writeText(${JSON.stringify(path)})`);
      await workbench.press('Control+A');
      await workbench.paste();
      await until('the list of the folder', isListed, 3);
      await workbench.evaluate(`document.querySelector('${button}')?.click(), true`);
      return until('the dialog to close', isGone, 3);
    },
    30,
  );
}
