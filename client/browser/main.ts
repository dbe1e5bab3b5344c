import type { ExtensionContext } from 'vscode';
import { startExtension } from '../extension';
import { ServerClient } from '../serverClient';

/** Starts the extension in an editor that is hosted by a browser, where nothing of Node is there. */
export function activate(context: ExtensionContext): void {
  const client = new ServerClient(async () => {
    const { workerServer } = await import('./workerServer');
    return workerServer(context);
  });
  startExtension(context, client);
}
