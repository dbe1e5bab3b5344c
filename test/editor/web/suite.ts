// Runs the tests and writes what comes of them to the console, where the runner reads it.
import * as vscode from 'vscode';
import { registeredTests } from '../suite/host/testList';
import { Workbench } from '../suite/host/workbench';
import './tests';

/** Called by the editor once its extension host is up. */
export async function run(): Promise<void> {
  report({ kind: 'note', message: `Editor ${vscode.version}, in a browser` });
  for (const { name, body, timeoutSeconds } of registeredTests()) {
    report({ kind: 'begin', name, timeoutSeconds });
    const started = performance.now();
    try {
      await body(new Workbench('http://127.0.0.1:0'));
      report({ kind: 'passed', name, milliseconds: performance.now() - started });
    } catch (error) {
      report({ kind: 'failed', name, message: error instanceof Error ? error.message : String(error) });
    }
  }
  // The runner looks at the map; the editor would close the page when this is over.
  const [folder] = vscode.workspace.workspaceFolders ?? [];
  if (folder) await vscode.window.showTextDocument(vscode.Uri.joinPath(folder.uri, 'a.sfz'));
  await vscode.commands.executeCommand('zonewright.showKeyboardMap');
  report({ kind: 'end' });
  await new Promise(() => {});
}

function report(line: object): void {
  console.log(`zonewright-result ${JSON.stringify(line)}`);
}
