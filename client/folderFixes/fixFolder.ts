import type { Disposable, QuickInputButton, QuickPick, QuickPickItem } from 'vscode';
import { commands, l10n, ProgressLocation, ThemeIcon, Uri, window, workspace } from 'vscode';
import type { FixKind } from '../../server/features/quickFixes';
import type { FileFixes, FolderFixesParams } from '../../server/protocol/requests/fixRequests';
import { FolderFixesRequest } from '../../server/protocol/requests/fixRequests';
import { showPage } from '../markdownPage';
import type { ServerClient } from '../serverClient';
import { FixedTexts } from './fixedTexts';
import { fixesPage } from './fixesPage';

interface FileItem extends QuickPickItem {
  file: FileFixes;
}

/** So many fixes of a file are named before it is opened. */
const mostNamed = 3;

/** Shows what fixes would change in a folder, has a person choose files, changes them and lists what was changed and what remains. */
export function registerFolderFixes(client: ServerClient): Disposable {
  const texts = new FixedTexts();
  const command = commands.registerCommand(
    'zonewright.fixAllInFolder',
    async (folder?: Uri | null, kind?: FixKind) => {
      const asked: FolderFixesParams = {
        ...(folder && { folder: folder.toString() }),
        ...(kind?.kind !== undefined && { kind: { code: kind.code, kind: kind.kind } }),
      };
      await fixFolder(client, texts, asked);
    },
  );
  return {
    dispose() {
      command.dispose();
      texts.dispose();
    },
  };
}

async function fixFolder(client: ServerClient, texts: FixedTexts, asked: FolderFixesParams): Promise<void> {
  const files = await filesOf(client, asked);
  if (files === undefined) return;
  const offered = files.filter(({ fixes }) => fixes.length > 0);
  if (offered.length === 0) {
    await window.showInformationMessage(
      asked.kind
        ? l10n.t('No instrument of the folder needs such a fix.')
        : l10n.t('There is no finding with a safe fix in the instruments of the folder.'),
    );
    return;
  }
  const chosen = await chooseFiles(client, texts, offered);
  if (!chosen || chosen.length === 0) return;
  // What has changed since it was shown is not what was agreed to.
  const now = new Map((await filesOf(client, asked))?.map((file) => [file.uri, file]));
  const same = chosen.filter(
    (file) => JSON.stringify(now.get(file.uri)?.edits) === JSON.stringify(file.edits),
  );
  const changes = Object.fromEntries(same.map(({ uri, edits }) => [uri, edits]));
  const edit = await client.asWorkspaceEdit({ changes });
  const isDone = same.length > 0 && (await workspace.applyEdit(edit, { isRefactoring: true }));
  if (!isDone) {
    await window.showWarningMessage(
      l10n.t('The files changed in the meantime, so nothing was changed. Try again.'),
    );
    return;
  }
  const after = await filesOf(client, { ...(asked.folder !== undefined && { folder: asked.folder }) });
  await showPage('markdown', fixesPage(same, chosen.length - same.length, after ?? []));
}

/** What fixes would change; `undefined` where a person stops the look. */
async function filesOf(client: ServerClient, asked: FolderFixesParams): Promise<FileFixes[] | undefined> {
  const title = l10n.t('Looking through the instruments of the folder');
  return window.withProgress(
    { location: ProgressLocation.Notification, title, cancellable: true },
    async (_, token) => {
      const files = await client
        .sendRequest(FolderFixesRequest.type, asked, token)
        .catch((error: unknown) => {
          if (!token.isCancellationRequested) throw error;
          return undefined;
        });
      return token.isCancellationRequested ? undefined : files;
    },
  );
}

/** Lists the files with all of them ticked; each can be looked at as it is and as it would be. */
function chooseFiles(
  client: ServerClient,
  texts: FixedTexts,
  files: readonly FileFixes[],
): Promise<FileFixes[] | undefined> {
  const look: QuickInputButton = {
    iconPath: new ThemeIcon('diff'),
    tooltip: l10n.t('Show what changes'),
  };
  const pick: QuickPick<FileItem> = window.createQuickPick<FileItem>();
  const count = files.reduce((sum, { fixes }) => sum + fixes.length, 0);
  pick.title =
    count === 1
      ? l10n.t('1 fix')
      : files.length === 1
        ? l10n.t('{0} fixes in 1 file', count)
        : l10n.t('{0} fixes in {1} files', count, files.length);
  pick.placeholder = l10n.t('Untick what should stay as it is');
  pick.canSelectMany = true;
  pick.ignoreFocusOut = true;
  pick.matchOnDetail = true;
  pick.items = files.map((file) => ({ ...itemOf(file), buttons: [look] }));
  pick.selectedItems = pick.items;
  return new Promise((resolve) => {
    pick.onDidTriggerItemButton(({ item }) => {
      void texts.show(Uri.parse(item.file.uri), item.file, client);
    });
    pick.onDidAccept(() => {
      resolve(pick.selectedItems.map(({ file }) => file));
      pick.hide();
    });
    pick.onDidHide(() => {
      resolve(undefined);
      pick.dispose();
    });
    pick.show();
  });
}

function itemOf(file: FileFixes): FileItem {
  const { name, fixes } = file;
  const named = fixes.slice(0, mostNamed).map(({ line, title }) => l10n.t('line {0}: {1}', line, title));
  const more = fixes.length > mostNamed ? ' …' : '';
  return {
    label: name,
    description: fixes.length === 1 ? l10n.t('1 fix') : l10n.t('{0} fixes', fixes.length),
    detail: named.join(' · ') + more,
    file,
  };
}
