import type {
  CancellationToken,
  DataTransfer,
  Disposable,
  DocumentPasteEditProvider,
  ExtensionContext,
  Range,
  TextDocument,
} from 'vscode';
import {
  commands,
  DocumentDropOrPasteEditKind,
  DocumentPasteEdit,
  env,
  l10n,
  languages,
  window,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { ConvertTableResult } from '../server/protocol/requests/tableRequests';
import { instrumentLanguages, mayHoldInstrument } from './languages';
import type { NotesDocuments } from './notesDocuments';
import { TableConversion } from './tablePreview/conversion';
import { RememberedCorrections } from './tablePreview/corrections';
import { TablePreviewPanel } from './tablePreview/panel';
import { newPlace, registerPreviewCommands } from './tablePreview/previewCommands';
import { TableDifference } from './tablePreview/tableDifference';
import { tellWritten } from './tablePreview/tellWritten';
import { LastWrittenTable, stretchOf } from './tablePreview/writtenTable';

const plainText = 'text/plain';
const htmlText = 'text/html';
const pasteKind = DocumentDropOrPasteEditKind.Empty.append('zonewright', 'regions');

/** Copied zone tables: pasting them as an offer among the ways to paste, commands, and their preview. */
export function registerTablePaste(
  context: ExtensionContext,
  client: BaseLanguageClient,
  notes: NotesDocuments,
): Disposable[] {
  const conversion = new TableConversion(client, new RememberedCorrections(context.globalState));
  const written = new LastWrittenTable();
  const difference = new TableDifference(conversion, notes);
  const preview = new TablePreviewPanel(context, conversion, difference, notes, written);
  const provider = new TablePaste(conversion, notes, written, preview);
  return [
    written,
    difference,
    preview,
    provider,
    languages.registerDocumentPasteEditProvider(
      instrumentLanguages.map((language) => ({ language })),
      provider,
      { providedPasteEditKinds: [pasteKind], pasteMimeTypes: [plainText, htmlText] },
    ),
    commands.registerCommand('zonewright.pasteTable', async () =>
      provider.insert(await env.clipboard.readText(), 'clipboard'),
    ),
    commands.registerCommand('zonewright.convertSelection', async () => {
      const editor = window.activeTextEditor;
      await provider.insert(editor ? editor.document.getText(editor.selection) : '', 'selection');
    }),
    ...registerPreviewCommands(conversion, preview, difference, written),
  ];
}

class TablePaste implements DocumentPasteEditProvider, Disposable {
  readonly #conversion: TableConversion;
  readonly #notes: NotesDocuments;
  readonly #written: LastWrittenTable;
  readonly #preview: TablePreviewPanel;
  /** What was offered last; its notes are told when its text arrives in the document. */
  #offered:
    | { table: string; document: TextDocument; texts: readonly string[]; result: ConvertTableResult }
    | undefined;
  readonly #watch: Disposable;

  constructor(
    conversion: TableConversion,
    notes: NotesDocuments,
    written: LastWrittenTable,
    preview: TablePreviewPanel,
  ) {
    this.#conversion = conversion;
    this.#preview = preview;
    this.#notes = notes;
    this.#written = written;
    this.#watch = workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      const offered = this.#offered;
      const arrived =
        offered?.document === document &&
        contentChanges.find(({ text }) => text !== '' && offered.texts.includes(text));
      if (!offered || !arrived) return;
      this.#offered = undefined;
      const { rangeOffset: start, text } = arrived;
      const stretch = contentChanges.length === 1 ? { start, end: start + text.length } : undefined;
      this.#written.remember(offered.table, document, stretch);
      void tellWritten(this.#notes, document, offered.result.regionCount, offered.result.notes);
    });
  }

  async provideDocumentPasteEdits(
    document: TextDocument,
    ranges: readonly Range[],
    data: DataTransfer,
    _context: unknown,
    token: CancellationToken,
  ): Promise<DocumentPasteEdit[] | undefined> {
    const range = ranges[0];
    if (!range || ranges.length > 1) return undefined;
    const found = await this.#firstTable(document, range, data, token);
    if (!found) return undefined;
    const { text, result } = found;
    const { insertText, edits } = result;
    const title =
      result.regionCount === 1
        ? l10n.t('Paste as 1 region')
        : l10n.t('Paste as {0} regions', result.regionCount);
    const edit = new DocumentPasteEdit(insertText ?? '', title, pasteKind);
    // Where regions cannot stand at the cursor, such as within a tag, they go to the nearest place where they can.
    if (insertText === undefined)
      edit.additionalEdit = await this.#conversion.workspaceEdit(document, result);
    const texts = insertText === undefined ? edits.map(({ newText }) => newText) : [insertText];
    const written = texts.map((one) => normalised(one, document));
    this.#offered = { table: text, document, texts: written, result };
    return [edit];
  }

  /** The table in what is pasted: as plain text, and where that holds none as a web page. */
  async #firstTable(document: TextDocument, range: Range, data: DataTransfer, token: CancellationToken) {
    for (const type of [plainText, htmlText]) {
      const text = await data.get(type)?.asString();
      if (!text || token.isCancellationRequested) continue;
      const result = await this.#conversion.convert(document, range, text, {}, token);
      if (result?.edits && result.regionCount > 0)
        return { text, result: { ...result, edits: result.edits } };
    }
    return undefined;
  }

  /** Replaces the selection by the regions of a table. */
  async insert(text: string, origin: 'clipboard' | 'selection'): Promise<void> {
    const editor = window.activeTextEditor;
    if (origin === 'clipboard' && text.trim() !== '' && !mayHoldInstrument(editor?.document)) {
      // With no instrument open, the table becomes a new one.
      this.#preview.open(text, newPlace(undefined), false);
      return;
    }
    if (!editor || !mayHoldInstrument(editor.document)) {
      await window.showWarningMessage(
        l10n.t('Open an SFZ or instrument XML document first; the regions are written where its cursor is.'),
      );
      return;
    }
    const { document } = editor;
    const result =
      text.trim() === '' ? undefined : await this.#conversion.convert(document, editor.selection, text);
    if (!result?.edits) {
      const isSelection = origin === 'selection';
      const empty = isSelection
        ? l10n.t('The selection holds no text.')
        : l10n.t('The clipboard holds no text.');
      const reason = result?.problem ?? empty;
      await window.showWarningMessage(
        isSelection
          ? l10n.t('No zone table was found in the selection: {0} The document is as it was.', reason)
          : l10n.t('No zone table was found in the clipboard: {0} The document is as it was.', reason),
      );
      return;
    }
    const change = await this.#conversion.workspaceEdit(document, result);
    const stretch = stretchOf(document, change.get(document.uri));
    if (await workspace.applyEdit(change)) {
      this.#written.remember(text, document, stretch);
      await tellWritten(this.#notes, document, result.regionCount, result.notes);
    }
  }

  dispose(): void {
    this.#watch.dispose();
  }
}

/** Text with the line ends that the document will give it. */
function normalised(text: string, document: TextDocument): string {
  return text.replace(/\r\n|\r|\n/g, document.eol === 2 ? '\r\n' : '\n');
}
