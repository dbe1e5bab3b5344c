import * as vscode from 'vscode';
import { until } from './host/until';

/** The folder that the editor has open. */
export function workspaceFolder(): vscode.Uri {
  const folder = vscode.workspace.workspaceFolders?.[0];
  if (folder === undefined) throw new Error('The editor has no folder open.');
  return folder.uri;
}

/** Opens a file of the workspace, by its path with `/`, in the active editor. */
export async function openFile(path: string): Promise<vscode.TextEditor> {
  return vscode.window.showTextDocument(vscode.Uri.joinPath(workspaceFolder(), path), { preview: false });
}

/** Whether a document is open and has its text: a new one is shown before its text comes. */
export function isFilled(document: vscode.TextDocument): boolean {
  return !document.isClosed && document.getText() !== '';
}

/** The page that was made last and is shown as it reads, once it is: what is shown later would disturb the next test. */
export async function shownPage(): Promise<vscode.TextDocument> {
  return until('a page, shown as it reads', () => {
    const page = vscode.workspace.textDocuments.find((one) => isFilled(one) && one.languageId === 'markdown');
    const labels = vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs.map(({ label }) => label));
    return page && labels.includes(`Preview ${page.fileName}`) && page;
  });
}

/** Opens a text that is not saved anywhere, in the active editor. */
export async function openText(language: string, content: string): Promise<vscode.TextEditor> {
  const document = await vscode.workspace.openTextDocument({ language, content });
  return vscode.window.showTextDocument(document, { preview: false });
}

/** Writes a file into the workspace, by its path with `/`, and gives its address. */
export async function writeWorkspaceFile(path: string, content: string | Uint8Array): Promise<vscode.Uri> {
  const uri = vscode.Uri.joinPath(workspaceFolder(), path);
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  await vscode.workspace.fs.writeFile(uri, bytes);
  return uri;
}

/** Reverts what was changed and closes every editor, so that nothing asks whether to save, and waits until all are gone. */
export async function closeEverything(): Promise<void> {
  await until('all editors to close', async () => {
    for (const document of vscode.workspace.textDocuments) {
      if (!document.isDirty || document.isClosed) continue;
      await vscode.window.showTextDocument(document);
      await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    }
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    return vscode.window.tabGroups.all.every(({ tabs }) => tabs.length === 0);
  });
}
