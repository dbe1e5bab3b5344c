import type {
  CancellationToken,
  DataTransfer,
  Disposable,
  DocumentPasteEditProvider,
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
import type { LanguageClient } from 'vscode-languageclient/node';
import type { ConvertTableResult } from '../server/protocol/tableRequests';
import { ConvertTableRequest } from '../server/protocol/tableRequests';
import { instrumentLanguages, mayHoldInstrument } from './languages';
import type { NotesDocuments } from './notesDocuments';

const plainText = 'text/plain';
const pasteKind = DocumentDropOrPasteEditKind.Empty.append('zonewright', 'regions');

/** Pasting copied zone tables: as an offer among the ways to paste, and as commands. */
export function registerTablePaste(client: LanguageClient, notes: NotesDocuments): Disposable[] {
  const provider = new TablePaste(client, notes);
  return [
    provider,
    languages.registerDocumentPasteEditProvider(
      instrumentLanguages.map((language) => ({ language })),
      provider,
      { providedPasteEditKinds: [pasteKind], pasteMimeTypes: [plainText] },
    ),
    commands.registerCommand('zonewright.pasteTable', async () =>
      provider.insert(await env.clipboard.readText(), 'clipboard'),
    ),
    commands.registerCommand('zonewright.convertSelection', async () => {
      const editor = window.activeTextEditor;
      await provider.insert(editor ? editor.document.getText(editor.selection) : '', 'selection');
    }),
  ];
}

class TablePaste implements DocumentPasteEditProvider, Disposable {
  readonly #client: LanguageClient;
  readonly #notes: NotesDocuments;
  /** What was offered last; its notes are told when its text arrives in the document. */
  #offered: { document: TextDocument; texts: readonly string[]; result: ConvertTableResult } | undefined;
  readonly #watch: Disposable;

  constructor(client: LanguageClient, notes: NotesDocuments) {
    this.#client = client;
    this.#notes = notes;
    this.#watch = workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      const offered = this.#offered;
      if (offered?.document !== document || !contentChanges.some(({ text }) => offered.texts.includes(text)))
        return;
      this.#offered = undefined;
      void this.#tell(document, offered.result);
    });
  }

  async provideDocumentPasteEdits(
    document: TextDocument,
    ranges: readonly Range[],
    data: DataTransfer,
    _context: unknown,
    token: CancellationToken,
  ): Promise<DocumentPasteEdit[] | undefined> {
    const text = await data.get(plainText)?.asString();
    const range = ranges[0];
    if (!text || !range || ranges.length > 1) return undefined;
    const result = await this.#convert(document, range, text, token);
    if (!result?.edits || result.regionCount === 0) return undefined;
    const { insertText } = result;
    const title =
      result.regionCount === 1
        ? l10n.t('Paste as 1 region')
        : l10n.t('Paste as {0} regions', result.regionCount);
    const edit = new DocumentPasteEdit(insertText ?? '', title, pasteKind);
    // Where regions cannot stand at the cursor, such as within a tag, they go to the nearest place where they can.
    if (insertText === undefined) edit.additionalEdit = await this.#workspaceEdit(document, result);
    const written = insertText === undefined ? result.edits.map(({ newText }) => newText) : [insertText];
    this.#offered = { document, texts: written.map((one) => normalised(one, document)), result };
    return [edit];
  }

  /** Replaces the selection by the regions of a table. */
  async insert(text: string, origin: 'clipboard' | 'selection'): Promise<void> {
    const editor = window.activeTextEditor;
    if (!editor || !mayHoldInstrument(editor.document)) {
      await window.showWarningMessage(
        l10n.t('Open an SFZ or instrument XML document first; the regions are written where its cursor is.'),
      );
      return;
    }
    const result =
      text.trim() === '' ? undefined : await this.#convert(editor.document, editor.selection, text);
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
    if (await workspace.applyEdit(await this.#workspaceEdit(editor.document, result))) {
      await this.#tell(editor.document, result);
    }
  }

  async #workspaceEdit(document: TextDocument, { edits }: ConvertTableResult): Promise<WorkspaceEdit> {
    const change = new WorkspaceEdit();
    change.set(document.uri, await this.#client.protocol2CodeConverter.asTextEdits(edits ?? []));
    return change;
  }

  async #convert(
    document: TextDocument,
    range: Range,
    text: string,
    token?: CancellationToken,
  ): Promise<ConvertTableResult | undefined> {
    const parameters = {
      uri: this.#client.code2ProtocolConverter.asUri(document.uri),
      range: this.#client.code2ProtocolConverter.asRange(range),
      text,
    };
    return (await this.#client.sendRequest(ConvertTableRequest.type, parameters, token)) ?? undefined;
  }

  async #tell(document: TextDocument, result: ConvertTableResult): Promise<void> {
    const name = document.uri.path.slice(document.uri.path.lastIndexOf('/') + 1);
    const title = l10n.t('Notes on the table pasted into {0}', name);
    const done =
      result.regionCount === 1
        ? l10n.t('1 region written.')
        : l10n.t('{0} regions written.', result.regionCount);
    await this.#notes.tell(done, title, result.notes);
  }

  dispose(): void {
    this.#watch.dispose();
  }
}

/** Text with the line ends that the document will give it. */
function normalised(text: string, document: TextDocument): string {
  return text.replace(/\r\n|\r|\n/g, document.eol === 2 ? '\r\n' : '\n');
}
