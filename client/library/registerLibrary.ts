import type { Disposable, ExtensionContext } from 'vscode';
import { commands, l10n, ProgressLocation, window } from 'vscode';
import type { BuildLibraryResult, LibraryView } from '../../server/protocol/requests/libraryRequests';
import { BuildLibraryRequest } from '../../server/protocol/requests/libraryRequests';
import type { ServerClient } from '../serverClient';
import { Libraries } from './libraries';
import { LibraryPanel } from './libraryPanel';
import type { LibraryNode } from './libraryTreeProvider';
import { LibraryTreeProvider } from './libraryTreeProvider';
import { openPlace } from './openPlace';

/** The tree and the page of libraries, and the command that builds one. */
export function registerLibrary(context: ExtensionContext, client: ServerClient): Disposable[] {
  const libraries = new Libraries(client);
  const panel = new LibraryPanel(context, libraries);
  return [
    libraries,
    panel,
    window.registerTreeDataProvider('zonewright.libraryTree', new LibraryTreeProvider(libraries)),
    commands.registerCommand('zonewright.showLibrary', () => panel.open()),
    commands.registerCommand('zonewright.openLibraryInstrument', async (node?: LibraryNode) => {
      if (node?.row) await openPlace(node.library, node.row, 'text');
    }),
    commands.registerCommand('zonewright.buildLibrary', async (of?: string | LibraryNode) => {
      const library = await chosen(await libraries.refresh(), of);
      if (library) await build(client, libraries, library);
    }),
  ];
}

/** The library that is meant; a person is asked where there are several. */
async function chosen(
  views: readonly LibraryView[],
  of: string | LibraryNode | undefined,
): Promise<LibraryView | undefined> {
  const uri = typeof of === 'string' ? of : of?.library.uri;
  const named = views.find((one) => one.uri === uri);
  if (named) return named;
  if (views.length === 0) {
    await window.showWarningMessage(
      l10n.t(
        'No open folder has a file zonewright.library.json. "zonewright library new FOLDER" writes one.',
      ),
    );
    return undefined;
  }
  if (views.length === 1) return views[0];
  const items = views.map((view) => ({ label: view.title, description: view.uri, view }));
  const picked = await window.showQuickPick(items, {
    placeHolder: l10n.t('Which library do you want to build?'),
  });
  return picked?.view;
}

async function build(client: ServerClient, libraries: Libraries, library: LibraryView): Promise<void> {
  const title = l10n.t('Building {0}', library.title);
  const result = await window.withProgress(
    { location: ProgressLocation.Notification, title, cancellable: true },
    async (progress, token): Promise<BuildLibraryResult> => {
      let before = 0;
      const watch = libraries.onDidProgress((told) => {
        if (told?.uri !== library.uri) return;
        const share = (100 * told.done) / told.all;
        progress.report({ increment: share - before, message: `${told.done} / ${told.all}: ${told.name}` });
        before = share;
      });
      try {
        return await client.sendRequest(BuildLibraryRequest.type, { uri: library.uri }, token);
      } catch (error) {
        if (!token.isCancellationRequested) throw error;
        return { problem: l10n.t('Building was stopped. The next build goes on from there.') };
      } finally {
        watch.dispose();
        await libraries.ended();
      }
    },
  );
  await tell(result);
}

async function tell(result: BuildLibraryResult): Promise<void> {
  if ('problem' in result) {
    await window.showWarningMessage(result.problem);
    return;
  }
  const { built, unchanged, failed } = result;
  const text = l10n.t('{0} built, {1} unchanged, {2} failed.', built, unchanged, failed);
  const show = l10n.t('Show Library');
  const answer = await (failed > 0
    ? window.showWarningMessage(text, show)
    : window.showInformationMessage(text, show));
  if (answer === show) await commands.executeCommand('zonewright.showLibrary');
}
