import type { Disposable, ExtensionContext, TextDocumentChangeEvent, WebviewPanel } from 'vscode';
import { commands, l10n, Position, Uri, WorkspaceEdit, window, workspace } from 'vscode';
import type { TableDecisions } from '../../server/protocol/requests/tableRequests';
import type { NotesDocuments } from '../notesDocuments';
import { showWhereOpen, sideColumn } from '../sideGroup';
import { PageHost } from '../webview/pageHost';
import type { DecidedPreview, TableConversion, TablePlace } from './conversion';
import { replacedRange } from './conversion';
import type { PreviewFromPage, PreviewToPage, ShownPlace } from './messages';
import { movedStretch } from './movedStretch';
import { exists, newDocumentEndings, openNewInstrument } from './newInstrument';
import type { TableDifference } from './tableDifference';
import { tellWritten } from './tellWritten';
import type { LastWrittenTable } from './writtenTable';
import { writtenStretch } from './writtenTable';

const previewPage = { name: 'tablePreview', id: 'table-preview', title: l10n.t('Copied table') };

/** What a preview is about. */
interface Subject {
  table: string;
  place: TablePlace;
  /** Whether the regions go where the cursor is, wherever that moves. */
  followsCursor: boolean;
  decisions: TableDecisions;
}

/** The preview of a copied table: how it is understood, with everything that can be corrected. There is one at a time. */
export class TablePreviewPanel implements Disposable {
  readonly #context: ExtensionContext;
  readonly #conversion: TableConversion;
  readonly #difference: TableDifference;
  readonly #notes: NotesDocuments;
  readonly #written: LastWrittenTable;
  #panel: WebviewPanel | undefined;
  #page: PageHost<PreviewToPage, PreviewFromPage> | undefined;
  #subject: Subject | undefined;
  #shown: DecidedPreview | undefined;
  #isRefreshing = false;
  #isOutOfDate = false;
  readonly #watches: Disposable[];

  constructor(
    context: ExtensionContext,
    conversion: TableConversion,
    difference: TableDifference,
    notes: NotesDocuments,
    written: LastWrittenTable,
  ) {
    this.#context = context;
    this.#conversion = conversion;
    this.#difference = difference;
    this.#notes = notes;
    this.#written = written;
    this.#watches = [
      workspace.onDidChangeTextDocument((event) => this.#textChanged(event)),
      window.onDidChangeTextEditorSelection(({ textEditor: { document }, selections }) => {
        const place = this.#subject?.place;
        if (!this.#subject?.followsCursor || place?.kind !== 'document' || place.document !== document)
          return;
        const [selection] = selections;
        if (!selection) return;
        place.start = document.offsetAt(selection.start);
        place.end = document.offsetAt(selection.end);
        void this.#refresh();
      }),
    ];
  }

  /** Opens the preview of a table; with `followsCursor` the regions go where the cursor is. */
  open(table: string, place: TablePlace, followsCursor: boolean, decisions: TableDecisions = {}): void {
    this.#subject = { table, place, followsCursor, decisions };
    this.#shown = undefined;
    if (this.#panel) this.#panel.reveal(undefined, false);
    else this.#create();
    void this.#refresh();
  }

  #create(): void {
    const panel = window.createWebviewPanel('zonewright.tablePreview', l10n.t('Copied Table'), {
      viewColumn: sideColumn(),
      preserveFocus: false,
    });
    const page = new PageHost<PreviewToPage, PreviewFromPage>(this.#context, panel.webview, previewPage, {
      ready: () => this.#show(),
      receive: (message) => void this.#receive(message),
    });
    this.#panel = panel;
    this.#page = page;
    panel.onDidDispose(() => {
      page.dispose();
      this.#panel = undefined;
      this.#page = undefined;
      this.#subject = undefined;
      this.#shown = undefined;
    });
  }

  async #receive(message: PreviewFromPage): Promise<void> {
    const subject = this.#subject;
    if (!subject) return;
    switch (message.type) {
      case 'write':
        return this.#write(subject);
      case 'writeText':
        return this.#writeText(subject);
      case 'template':
        await commands.executeCommand('zonewright.tableIntoTemplate', subject.table);
        return;
      case 'forget':
        await this.#conversion.corrections.remember(this.#shown?.preview.headings ?? '', {});
        subject.decisions = {
          ...subject.decisions,
          columns: undefined,
          scales: undefined,
          middleC: undefined,
        };
        break;
      default:
        this.#decide(subject, message);
        if (message.type === 'column' || message.type === 'scale' || message.type === 'middleC') {
          const { columns, scales, middleC } = subject.decisions;
          const corrections = {
            ...(columns && { columns }),
            ...(scales && { scales }),
            ...(middleC && { middleC }),
          };
          await this.#conversion.corrections.remember(this.#shown?.preview.headings ?? '', corrections);
        }
    }
    await this.#refresh();
  }

  #decide(subject: Subject, message: PreviewFromPage): void {
    const { decisions } = subject;
    switch (message.type) {
      case 'column': {
        const columns = (decisions.columns ?? []).filter(([column]) => column !== message.column);
        if (message.meaning) columns.push([message.column, message.meaning]);
        decisions.columns = columns;
        // A scale belongs to what the column was taken for.
        decisions.scales = (decisions.scales ?? []).filter(([column]) => column !== message.column);
        break;
      }
      case 'scale': {
        const scales = (decisions.scales ?? []).filter(([column]) => column !== message.column);
        if (message.scale !== null) scales.push([message.column, message.scale]);
        decisions.scales = scales;
        break;
      }
      case 'middleC':
        decisions.middleC = message.middleC === 'auto' ? undefined : message.middleC;
        break;
      case 'grouping': {
        const known = this.#shown?.preview.groupings.find(({ kind }) => kind === message.kind)?.kind;
        const taken = (decisions.groupings ?? []).filter((kind) => kind !== message.kind);
        decisions.groupings = known && message.isTaken ? [...taken, known] : taken;
        break;
      }
      case 'sample': {
        const samples = (decisions.samples ?? []).filter(([name]) => name !== message.name);
        if (message.path !== null) samples.push([message.name, message.path]);
        decisions.samples = samples;
        break;
      }
      case 'update':
        decisions.update = message.isUpdate;
        break;
      case 'format':
        if (subject.place.kind === 'new') subject.place.format = message.format;
    }
  }

  /** Makes the preview anew. One is made at a time, so that quick changes do not pile up. */
  async #refresh(): Promise<void> {
    if (this.#isRefreshing) {
      this.#isOutOfDate = true;
      return;
    }
    this.#isRefreshing = true;
    try {
      do {
        this.#isOutOfDate = false;
        const subject = this.#subject;
        if (!subject) return;
        const { place, table, decisions } = subject;
        const isGone = place.kind === 'document' && place.document.isClosed;
        const shown = isGone ? undefined : await this.#conversion.preview(place, table, decisions);
        if (subject !== this.#subject) continue;
        if (shown && (await takeHome(place, shown.preview.home))) {
          this.#isOutOfDate = true;
          continue;
        }
        this.#shown = shown;
        if (shown) subject.decisions = { ...shown.decisions };
        this.#show();
      } while (this.#isOutOfDate);
    } finally {
      this.#isRefreshing = false;
    }
  }

  #show(): void {
    const subject = this.#subject;
    if (!subject) return;
    if (!this.#shown) {
      this.#send({
        type: 'empty',
        reason: l10n.t('The document that the table was meant for holds no instrument.'),
      });
      return;
    }
    const { preview, decisions } = this.#shown;
    this.#send({ type: 'preview', preview, decisions, place: shownPlace(subject.place) });
  }

  #send(message: PreviewToPage): void {
    this.#page?.send(message);
  }

  #textChanged({ document, contentChanges }: TextDocumentChangeEvent): void {
    const subject = this.#subject;
    const place = subject?.place;
    if (place?.kind !== 'document' || place.document !== document || contentChanges.length === 0) return;
    const moved = movedStretch(place, contentChanges);
    if (moved) Object.assign(place, moved);
    else {
      // The stretch that was to be replaced is another now, so that the regions go where the cursor is.
      const editor = window.visibleTextEditors.find((one) => one.document === document);
      place.start = place.end = document.offsetAt(editor?.selection.active ?? new Position(0, 0));
      if (subject) subject.followsCursor = true;
    }
    void this.#refresh();
  }

  async #write(subject: Subject): Promise<void> {
    await this.#refresh();
    const shown = this.#shown;
    if (!shown || subject !== this.#subject || shown.preview.problem !== undefined) return;
    const { preview, decisions } = shown;
    const { place, table } = subject;
    if (place.kind === 'new') {
      const text = preview.edits?.[0]?.newText ?? '';
      this.#panel?.dispose();
      const document = await openNewInstrument(text, place.format, place.folder, place.name, (opened) =>
        window.showTextDocument(opened, { preview: false }),
      );
      this.#written.remember(table, document, { start: 0, end: document.getText().length });
      await tellWritten(this.#notes, document, preview.regionCount, preview.notes);
      return;
    }
    const { document } = place;
    if (decisions.update && preview.matchCount > 0) {
      this.#panel?.dispose();
      await this.#difference.show(
        document,
        preview,
        async () => (await this.#conversion.preview(place, table, { ...decisions, takeOut: true }))?.preview,
      );
      return;
    }
    const change = await this.#conversion.workspaceEdit(document, preview);
    const stretch = writtenStretch(document, change.get(document.uri));
    if (!(await workspace.applyEdit(change))) return;
    this.#written.remember(table, document, stretch);
    this.#panel?.dispose();
    await showWhereOpen(document);
    await tellWritten(this.#notes, document, preview.regionCount, preview.notes);
  }

  async #writeText({ place, table }: Subject): Promise<void> {
    if (place.kind !== 'document') return;
    const change = new WorkspaceEdit();
    change.replace(place.document.uri, replacedRange(place), table);
    if (!(await workspace.applyEdit(change))) return;
    this.#panel?.dispose();
    await showWhereOpen(place.document);
  }

  dispose(): void {
    this.#panel?.dispose();
    for (const watch of this.#watches) watch.dispose();
  }
}

/** Puts a new document for which no place was said where its samples lie; answers whether it is another place by that. */
async function takeHome(place: TablePlace, home: string | undefined): Promise<boolean> {
  if (place.kind !== 'new' || place.isProposed !== true || !place.folder || home === undefined) return false;
  const folder = Uri.joinPath(place.folder, home);
  place.isProposed = false;
  if (!(await exists(folder))) return false;
  place.folder = folder;
  place.name = home.slice(home.lastIndexOf('/') + 1);
  return true;
}

function shownPlace(place: TablePlace): ShownPlace {
  if (place.kind === 'new') {
    const { format, folder, name } = place;
    const path =
      folder && workspace.asRelativePath(Uri.joinPath(folder, `${name}${newDocumentEndings[format]}`), false);
    return { kind: 'new', format, ...(path !== undefined && { path }) };
  }
  return {
    kind: 'document',
    name: place.document.uri.path.slice(place.document.uri.path.lastIndexOf('/') + 1),
  };
}
