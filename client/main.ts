import { type ExtensionContext, Uri } from 'vscode';
import { startExtension } from './extension';
import { packageInputs } from './midi/packageInputs';
import { ServerClient } from './serverClient';

/** Starts the extension on a desktop or in a remote editor, where Node runs it. */
export function activate(context: ExtensionContext): void {
  const midiFolder = Uri.joinPath(context.globalStorageUri, 'midi').fsPath;
  const client = new ServerClient(async () => {
    const { processServer } = await import('./processServer');
    return processServer(context);
  });
  startExtension(context, client, () => packageInputs(midiFolder));
}
