import type { Disposable, TextDocument, TextDocumentContentProvider } from 'vscode';
import { commands, EventEmitter, l10n, TabInputTextDiff, Uri, window, workspace } from 'vscode';
import type { ConvertTableResult } from '../../server/protocol/requests/tableRequests';
import type { NotesDocuments } from '../notesDocuments';
import { showWhereOpen } from '../sideGroup';
import type { TableConversion } from './conversion';
import { tellWritten } from './tellWritten';

const scheme = 'zonewright-table';

interface Proposal {
  document: TextDocument;
  version: number;
  result: ConvertTableResult;
  uri: Uri;
  withoutGone: () => Promise<ConvertTableResult | undefined>;
  isWithoutGone: boolean;
}

/** Shows what a table would change in a document beside it, and makes the change when a person says so. */
export class TableDifference implements TextDocumentContentProvider, Disposable {
  readonly #conversion: TableConversion;
  readonly #notes: NotesDocuments;
  readonly #changed = new EventEmitter<Uri>();
  readonly onDidChange = this.#changed.event;
  readonly #registrations: Disposable[];
  #proposal: Proposal | undefined;
  #text = '';
  #serial = 0;

  constructor(conversion: TableConversion, notes: NotesDocuments) {
    this.#conversion = conversion;
    this.#notes = notes;
    this.#registrations = [
      workspace.registerTextDocumentContentProvider(scheme, this),
      commands.registerCommand('zonewright.applyTableUpdate', () => this.apply()),
      commands.registerCommand('zonewright.discardTableUpdate', () => this.discard()),
    ];
  }

  provideTextDocumentContent(): string {
    return this.#text;
  }

  /**
   * Opens the difference and asks whether to make the change. `withoutGone` gives the same with the regions taken out that the
   * table has no row for, which is offered where there are any.
   */
  async show(
    document: TextDocument,
    result: ConvertTableResult,
    withoutGone: () => Promise<ConvertTableResult | undefined>,
    isWithoutGone = false,
  ): Promise<void> {
    await this.discard();
    const change = await this.#conversion.workspaceEdit(document, result);
    let text = document.getText();
    const edits = change.get(document.uri).map(({ range, newText }) => {
      return { start: document.offsetAt(range.start), end: document.offsetAt(range.end), newText };
    });
    for (const { start, end, newText } of edits.sort((a, b) => b.start - a.start || b.end - a.end))
      text = text.slice(0, start) + newText + text.slice(end);
    this.#text = text;
    const path = `/${document.uri.path.slice(document.uri.path.lastIndexOf('/') + 1)}`;
    const uri = Uri.from({ scheme, path, query: String(++this.#serial) });
    const proposal = { document, version: document.version, result, uri, withoutGone, isWithoutGone };
    this.#proposal = proposal;
    this.#changed.fire(uri);
    const title = l10n.t('{0}, now and with the table', path.slice(1));
    await commands.executeCommand('vscode.diff', document.uri, uri, title);
    void this.#ask(proposal);
  }

  async #ask(proposal: Proposal): Promise<void> {
    const { changedCount, addedCount, unchangedCount, goneCount } = proposal.result;
    const apply = l10n.t('Apply');
    const takeOut = l10n.t('Remove those too');
    const told =
      changedCount === 1
        ? l10n.t(
            'With the table 1 region changes. Added: {0}. The same already: {1}.',
            addedCount,
            unchangedCount,
          )
        : l10n.t(
            'With the table {0} regions change. Added: {1}. The same already: {2}.',
            changedCount,
            addedCount,
            unchangedCount,
          );
    const offers = goneCount > 0 && !proposal.isWithoutGone;
    const answer = await window.showInformationMessage(
      offers || proposal.isWithoutGone ? `${told} ${goneText(proposal)}` : told,
      apply,
      ...(offers ? [takeOut] : []),
      l10n.t('Discard'),
    );
    if (this.#proposal !== proposal || answer === undefined) return;
    if (answer === apply) await this.apply();
    else if (answer === takeOut) await this.#takeOut(proposal);
    else await this.discard();
  }

  /** Shows the difference with those regions taken out that the table has no row for. */
  async #takeOut({ document, withoutGone }: Proposal): Promise<void> {
    const result = await withoutGone();
    if (result?.edits) await this.show(document, result, withoutGone, true);
  }

  /** Makes the change that is shown, as one edit. */
  async apply(): Promise<void> {
    const proposal = this.#proposal;
    if (!proposal) return;
    await this.discard();
    const { document, version, result } = proposal;
    if (document.isClosed || document.version !== version) {
      await window.showWarningMessage(
        l10n.t(
          'The document has changed since the difference was shown, so nothing was written. Show it again.',
        ),
      );
      return;
    }
    if (await workspace.applyEdit(await this.#conversion.workspaceEdit(document, result))) {
      await showWhereOpen(document);
      await tellWritten(this.#notes, document, result.changedCount + result.addedCount, result.notes);
    }
  }

  /** Closes the difference; the document stays as it is. */
  async discard(): Promise<void> {
    const proposal = this.#proposal;
    this.#proposal = undefined;
    if (!proposal) return;
    const tabs = window.tabGroups.all
      .flatMap((group) => group.tabs)
      .filter(
        ({ input }) =>
          input instanceof TabInputTextDiff && input.modified.toString() === proposal.uri.toString(),
      );
    if (tabs.length > 0) await window.tabGroups.close(tabs);
  }

  dispose(): void {
    for (const one of this.#registrations) one.dispose();
    this.#changed.dispose();
  }
}

/** What is said of the regions that the table has no row for. */
function goneText({ result: { goneCount }, isWithoutGone }: Proposal): string {
  if (isWithoutGone) return l10n.t('Regions without a row in the table are removed: {0}.', goneCount);
  return goneCount === 1
    ? l10n.t('1 more region of the document is not in the table and stays.')
    : l10n.t('{0} more regions of the document are not in the table and stay.', goneCount);
}
