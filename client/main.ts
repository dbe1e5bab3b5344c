import type { ExtensionContext } from 'vscode';
import { startExtension } from './extension';
import { processServer } from './processServer';

/** Starts the extension on a desktop or in a remote editor, where Node runs it. */
export async function activate(context: ExtensionContext): Promise<void> {
  await startExtension(context, processServer(context));
}
