import type { ExtensionContext } from 'vscode';
import { startExtension } from '../extension';
import { workerServer } from './workerServer';

/** Starts the extension in an editor that is hosted by a browser, where nothing of Node is there. */
export function activate(context: ExtensionContext): void {
  startExtension(context, workerServer(context));
}
