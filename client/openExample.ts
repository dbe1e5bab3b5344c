import type { Disposable, ExtensionContext } from 'vscode';
import { commands, Uri, window, workspace } from 'vscode';

/**
 * The command that opens the instrument of the first steps: a copy of a person's own, kept from then on, since what the
 * extension carries is not to be written to.
 */
export function registerOpenExample(context: ExtensionContext): Disposable {
  return commands.registerCommand('zonewright.openExample', async () => {
    const own = Uri.joinPath(context.globalStorageUri, 'first-bars');
    const text = Uri.joinPath(own, 'first-bars.sfz');
    const isThere = await workspace.fs.stat(text).then(
      () => true,
      () => false,
    );
    if (!isThere) {
      await workspace.fs.createDirectory(context.globalStorageUri);
      await workspace.fs.copy(Uri.joinPath(context.extensionUri, 'dist', 'example'), own, {
        overwrite: true,
      });
    }
    await window.showTextDocument(text, { preview: false });
  });
}
