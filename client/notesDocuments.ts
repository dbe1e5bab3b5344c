import {
  type Disposable,
  EventEmitter,
  l10n,
  type TextDocumentContentProvider,
  Uri,
  ViewColumn,
  window,
  workspace,
} from 'vscode';

/** A note of a conversion, as a person reads it. */
export interface ShownNote {
  kind: string;
  message: string;
  line: number;
}

const scheme = 'zonewright-notes';

/** Read-only pages that list what a conversion assumed, changed or left out. */
export class NotesDocuments implements TextDocumentContentProvider, Disposable {
  readonly #changed = new EventEmitter<Uri>();
  readonly onDidChange = this.#changed.event;
  readonly #pages = new Map<string, string>();
  readonly #registration = workspace.registerTextDocumentContentProvider(scheme, this);

  provideTextDocumentContent(uri: Uri): string {
    return this.#pages.get(uri.path) ?? '';
  }

  /** Says in a message what was done and how many notes there are; the page opens from there. */
  async tell(done: string, title: string, notes: readonly ShownNote[]): Promise<void> {
    if (notes.length === 0) {
      await window.showInformationMessage(l10n.t('{0} Nothing was assumed or left out.', done));
      return;
    }
    const show = l10n.t('Show notes');
    const told =
      notes.length === 1
        ? l10n.t('{0} 1 note tells what was assumed, changed or left out.', done)
        : l10n.t('{0} {1} notes tell what was assumed, changed or left out.', done, notes.length);
    const answer = await window.showInformationMessage(told, show);
    if (answer === show) await this.#open(title, notes);
  }

  async #open(title: string, notes: readonly ShownNote[]): Promise<void> {
    const uri = Uri.from({ scheme, path: `/${title}.txt` });
    this.#pages.set(
      uri.path,
      notes
        .map(({ line, kind, message }) => `${l10n.t('Line {0}, {1}: {2}', line, kind, message)}\n`)
        .join(''),
    );
    this.#changed.fire(uri);
    const document = await workspace.openTextDocument(uri);
    await window.showTextDocument(document, {
      viewColumn: ViewColumn.Beside,
      preserveFocus: true,
      preview: true,
    });
  }

  dispose(): void {
    this.#registration.dispose();
    this.#changed.dispose();
  }
}
