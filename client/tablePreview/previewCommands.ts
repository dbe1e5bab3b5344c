import type { Disposable } from 'vscode';
import { commands, env, l10n, Uri, window, workspace } from 'vscode';
import { mayHoldInstrument } from '../languages';
import type { TableConversion } from './conversion';
import type { TablePreviewPanel } from './panel';
import type { TableDifference } from './tableDifference';
import { reviewCommand } from './tellWritten';
import type { LastWrittenTable } from './writtenTable';

/** The commands that open the preview of a table, start new instruments from tables and bring documents up to date. */
export function registerPreviewCommands(
  conversion: TableConversion,
  preview: TablePreviewPanel,
  difference: TableDifference,
  written: LastWrittenTable,
): Disposable[] {
  return [
    commands.registerCommand('zonewright.previewTable', () => previewClipboard(preview)),
    commands.registerCommand(reviewCommand, () => review(preview, written)),
    commands.registerCommand('zonewright.updateFromTable', () => update(conversion, difference)),
    commands.registerCommand('zonewright.newInstrumentFromTable', () => startFromClipboard(preview)),
    commands.registerCommand('zonewright.convertTableFile', (uri?: unknown) => convertFile(preview, uri)),
    commands.registerCommand('zonewright.forgetTableCorrections', async () => {
      const count = await conversion.corrections.forgetAll();
      await window.showInformationMessage(
        count === 0
          ? l10n.t('No corrections of copied tables were remembered.')
          : l10n.t('Corrections for {0} rows of headings were forgotten.', count),
      );
    }),
  ];
}

/** The text that was copied; says so and answers `undefined` where there is none. */
async function copiedText(): Promise<string | undefined> {
  const text = await env.clipboard.readText();
  if (text.trim() !== '') return text;
  await window.showWarningMessage(l10n.t('The clipboard holds no text. Copy a zone table first.'));
  return undefined;
}

async function previewClipboard(preview: TablePreviewPanel): Promise<void> {
  const text = await copiedText();
  if (text === undefined) return;
  const editor = window.activeTextEditor;
  if (!editor || !mayHoldInstrument(editor.document)) {
    preview.open(text, newPlace(undefined), false);
    return;
  }
  const { document, selection } = editor;
  const [start, end] = [document.offsetAt(selection.start), document.offsetAt(selection.end)];
  preview.open(text, { kind: 'document', document, start, end }, true);
}

/** Opens the preview of what was written last, to write it otherwise in the same place. */
async function review(preview: TablePreviewPanel, written: LastWrittenTable): Promise<void> {
  const { last } = written;
  if (!last) {
    await previewClipboard(preview);
    return;
  }
  const { table, document, stretch } = last;
  if (stretch) preview.open(table, { kind: 'document', document, ...stretch }, false);
  else {
    const editor = window.visibleTextEditors.find((one) => one.document === document);
    const at = editor ? document.offsetAt(editor.selection.active) : document.getText().length;
    preview.open(table, { kind: 'document', document, start: at, end: at }, true);
  }
}

async function update(conversion: TableConversion, difference: TableDifference): Promise<void> {
  const editor = window.activeTextEditor;
  if (!editor || !mayHoldInstrument(editor.document)) {
    await window.showWarningMessage(l10n.t('Open the instrument to update first.'));
    return;
  }
  const text = await copiedText();
  if (text === undefined) return;
  const { document, selection } = editor;
  const cursor = selection.with(selection.active, selection.active);
  const result = await conversion.convert(document, cursor, text, { update: true });
  const withoutGone = () => conversion.convert(document, cursor, text, { update: true, takeOut: true });
  const warn = (message: string) => window.showWarningMessage(message);
  if (!result) await warn(l10n.t('This document holds no instrument that can be read.'));
  else if (result.problem !== undefined)
    await warn(
      l10n.t('No zone table was found in the clipboard: {0} The document was not changed.', result.problem),
    );
  else if (result.matchCount === 0)
    await warn(
      l10n.t('No region of the document has a sample of the table. Paste the table to add its regions.'),
    );
  else if ((result.edits ?? []).length === 0 && result.goneCount === 0)
    await window.showInformationMessage(l10n.t('The regions already match the table.'));
  else await difference.show(document, result, withoutGone);
}

async function startFromClipboard(preview: TablePreviewPanel): Promise<void> {
  const text = await copiedText();
  if (text !== undefined) preview.open(text, newPlace(undefined), false);
}

/** Opens the preview of a saved table, or of the one in the active editor. */
async function convertFile(preview: TablePreviewPanel, chosen: unknown): Promise<void> {
  const uri = chosen instanceof Uri ? chosen : window.activeTextEditor?.document.uri;
  if (!uri) {
    await window.showWarningMessage(
      l10n.t('Open the saved zone table, or choose it in the explorer, first.'),
    );
    return;
  }
  const name = uri.path.slice(uri.path.lastIndexOf('/') + 1);
  let text: string;
  try {
    text = (await workspace.openTextDocument(uri)).getText();
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    await window.showWarningMessage(l10n.t('{0} could not be read as text: {1}', name, reason));
    return;
  }
  preview.open(text, newPlace(uri), false);
}

/** A new document beside a saved table, else in the first folder that is open. */
export function newPlace(table: Uri | undefined): {
  kind: 'new';
  format: 'sfz';
  folder: Uri | undefined;
  name: string;
  isProposed: boolean;
} {
  const isSaved = table !== undefined && table.scheme !== 'untitled';
  const folder = isSaved ? Uri.joinPath(table, '..') : workspace.workspaceFolders?.[0]?.uri;
  const file = isSaved ? table.path.slice(table.path.lastIndexOf('/') + 1).replace(/\.[^.]*$/, '') : '';
  return {
    kind: 'new',
    format: 'sfz',
    folder,
    name: file === '' ? 'instrument' : file,
    isProposed: !isSaved,
  };
}
