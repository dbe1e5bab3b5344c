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
  WorkspaceEdit,
  window,
  workspace,
} from 'vscode';
import type { TableNote } from '../server/protocol/requests/tableRequests';
import { instrumentLanguages, mayHoldInstrument } from './languages';
import type { NotesDocuments } from './notesDocuments';
import type { ServerClient } from './serverClient';
import { TableConversion } from './tablePreview/conversion';
import { RememberedCorrections } from './tablePreview/corrections';
import { TablePreviewPanel } from './tablePreview/panel';
import { newPlace, registerPreviewCommands } from './tablePreview/previewCommands';
import { TableDifference } from './tablePreview/tableDifference';
import { tellWritten } from './tablePreview/tellWritten';
import { isTemplate, pasteIntoTemplate } from './tablePreview/templatePaste';
import { LastWrittenTable, writtenStretch } from './tablePreview/writtenTable';

const plainText = 'text/plain';
const htmlText = 'text/html';
const pasteKind = DocumentDropOrPasteEditKind.Empty.append('zonewright', 'regions');
const templateKind = DocumentDropOrPasteEditKind.Empty.append('zonewright', 'template');

/** A way in which a table was offered to be pasted: the texts by which its arrival is seen, and what is told then. */
interface Offer {
  texts: readonly string[];
  /** The text of the whole document then, for a change that the editor may take apart into smaller ones. */
  whole?: string;
  regionCount: number;
  notes: readonly TableNote[];
}

/** The offer whose whole text a document has after a change. */
function wholeOffer(offers: readonly Offer[], document: TextDocument, changes: number): Offer | undefined {
  const whole = offers.filter((offer) => offer.whole !== undefined);
  if (changes === 0 || whole.length === 0) return undefined;
  const text = document.getText();
  return whole.find((offer) => offer.whole === text);
}

/** Copied zone tables: pasting them as an offer among the ways to paste, commands, and their preview. */
export function registerTablePaste(
  context: ExtensionContext,
  client: ServerClient,
  notes: NotesDocuments,
): Disposable[] {
  const conversion = new TableConversion(client, new RememberedCorrections(context.globalState));
  const written = new LastWrittenTable();
  const difference = new TableDifference(conversion, notes);
  const preview = new TablePreviewPanel(context, conversion, difference, notes, written);
  const provider = new TablePaste(client, conversion, notes, written, preview);
  return [
    written,
    difference,
    preview,
    provider,
    languages.registerDocumentPasteEditProvider(
      instrumentLanguages.map((language) => ({ language })),
      provider,
      { providedPasteEditKinds: [pasteKind, templateKind], pasteMimeTypes: [plainText, htmlText] },
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
  readonly #client: ServerClient;
  readonly #conversion: TableConversion;
  readonly #notes: NotesDocuments;
  readonly #written: LastWrittenTable;
  readonly #preview: TablePreviewPanel;
  /** What was offered last; its notes are told when its text arrives in the document. */
  #offered: { table: string; document: TextDocument; offers: readonly Offer[] } | undefined;
  readonly #watch: Disposable;

  constructor(
    client: ServerClient,
    conversion: TableConversion,
    notes: NotesDocuments,
    written: LastWrittenTable,
    preview: TablePreviewPanel,
  ) {
    this.#client = client;
    this.#conversion = conversion;
    this.#preview = preview;
    this.#notes = notes;
    this.#written = written;
    this.#watch = workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      const offered = this.#offered;
      if (offered?.document !== document) return;
      const [arrived] = contentChanges.flatMap((change) => {
        const offer = offered.offers.find(({ texts }) => change.text !== '' && texts.includes(change.text));
        return offer ? [{ change, offer }] : [];
      });
      const offer = arrived?.offer ?? wholeOffer(offered.offers, document, contentChanges.length);
      if (!offer) return;
      // Another way of those that were offered may still be chosen.
      const offers = offered.offers.filter((one) => one !== offer);
      this.#offered = offers.length > 0 ? { ...offered, offers } : undefined;
      const start = arrived?.change.rangeOffset ?? 0;
      const isOne = arrived !== undefined && contentChanges.length === 1;
      const stretch = isOne ? { start, end: start + arrived.change.text.length } : undefined;
      this.#written.remember(offered.table, document, stretch);
      void tellWritten(this.#notes, document, offer.regionCount, offer.notes);
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
    const { regionCount, notes } = result;
    const offers: Offer[] = [{ texts: texts.map((one) => normalised(one, document)), regionCount, notes }];
    const inTemplate = await this.#templatePaste(document, text, regionCount, token);
    if (inTemplate) offers.push(inTemplate.offer);
    this.#offered = { table: text, document, offers };
    return inTemplate ? [edit, inTemplate.edit] : [edit];
  }

  /** In a document that is a template: a paste that puts the regions in the place of its examples. */
  async #templatePaste(
    document: TextDocument,
    table: string,
    regionCount: number,
    token: CancellationToken,
  ): Promise<{ edit: DocumentPasteEdit; offer: Offer } | undefined> {
    if (!isTemplate(document)) return undefined;
    const found = await pasteIntoTemplate(this.#client, document, table, token);
    if (!found) return undefined;
    const title =
      regionCount === 1
        ? l10n.t('Put 1 region in the place of the examples of this template')
        : l10n.t('Put {0} regions in the place of the examples of this template', regionCount);
    const edit = new DocumentPasteEdit('', title, templateKind);
    edit.additionalEdit = new WorkspaceEdit();
    edit.additionalEdit.set(document.uri, [found.edit]);
    // The regions at the cursor stay what a plain paste does.
    edit.yieldTo = [pasteKind];
    const texts = [normalised(found.edit.newText, document)];
    const whole = normalised(found.text, document);
    return { edit, offer: { texts, whole, regionCount, notes: found.notes } };
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
          ? l10n.t('No zone table was found in the selection: {0} The document was not changed.', reason)
          : l10n.t('No zone table was found in the clipboard: {0} The document was not changed.', reason),
      );
      return;
    }
    const change = await this.#conversion.workspaceEdit(document, result);
    const stretch = writtenStretch(document, change.get(document.uri));
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
