import { type ExtensionContext, Uri } from 'vscode';
import { startExtension } from './extension';
import { packageInputs } from './midi/packageInputs';
import { processServer } from './processServer';

/** Starts the extension on a desktop or in a remote editor, where Node runs it. */
export function activate(context: ExtensionContext): void {
  const midiFolder = Uri.joinPath(context.globalStorageUri, 'midi').fsPath;
  startExtension(context, processServer(context), () => packageInputs(midiFolder));
}
