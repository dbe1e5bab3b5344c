import type { Disposable } from 'vscode';
import { commands, l10n, Uri, window, workspace } from 'vscode';

/** Commands by which a vocabulary that was worked out is kept in a file; they are offered beside the text. */
export function registerVocabularies(): Disposable[] {
  return [
    commands.registerCommand('zonewright.saveVocabulary', save),
    commands.registerCommand('zonewright.openFile', async (uri: string) => {
      await window.showTextDocument(Uri.parse(uri), { preview: true });
    }),
  ];
}

/** Writes a vocabulary file; one that is there already and is not the same vocabulary is kept, and another name taken. */
async function save(uri: string, text: string, replaces: boolean): Promise<void> {
  const wanted = Uri.parse(uri);
  const target = replaces ? wanted : await freeName(wanted);
  const open = workspace.textDocuments.find((document) => document.uri.toString() === target.toString());
  if (open?.isDirty) {
    await window.showWarningMessage(
      l10n.t('{0} holds changes that are not saved. Save or undo them first.', nameOf(target)),
    );
    return;
  }
  await workspace.fs.writeFile(target, new TextEncoder().encode(text));
  void tellSaved(target);
}

async function tellSaved(target: Uri): Promise<void> {
  const open = l10n.t('Open');
  const answer = await window.showInformationMessage(
    l10n.t('The vocabulary is kept in {0}.', nameOf(target)),
    open,
  );
  if (answer === open) await window.showTextDocument(target);
}

async function freeName(wanted: Uri): Promise<Uri> {
  for (let number = 2, target = wanted; ; number++) {
    const isTaken = await workspace.fs.stat(target).then(
      () => true,
      () => false,
    );
    if (!isTaken) return target;
    target = wanted.with({ path: wanted.path.replace(/(\.vocabulary\.json)$/, `-${number}$1`) });
  }
}

function nameOf({ path }: Uri): string {
  return path.slice(path.lastIndexOf('/') + 1);
}
