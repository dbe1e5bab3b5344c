import {
  commands,
  type Disposable,
  DocumentLink,
  type DocumentLinkProvider,
  EventEmitter,
  l10n,
  languages,
  Range,
  type TextDocument,
  type TextDocumentContentProvider,
  Uri,
  window,
  workspace,
} from 'vscode';
import { showBeside } from './sideGroup';

/** A note of a conversion, as a person reads it. */
export interface ShownNote {
  kind: string;
  message: string;
  line: number;
}

/** Something that can be done about what the notes say. */
export interface NotesAction {
  label: string;
  command: string;
}

const scheme = 'zonewright-notes';

/** Read-only pages that list what a conversion assumed, changed or left out. */
export class NotesDocuments implements TextDocumentContentProvider, DocumentLinkProvider, Disposable {
  readonly #changed = new EventEmitter<Uri>();
  readonly onDidChange = this.#changed.event;
  readonly #pages = new Map<string, string>();
  /** By the path of a page, what its first line leads to. */
  readonly #actions = new Map<string, NotesAction>();
  readonly #registrations = [
    workspace.registerTextDocumentContentProvider(scheme, this),
    languages.registerDocumentLinkProvider({ scheme }, this),
  ];

  provideTextDocumentContent(uri: Uri): string {
    return this.#pages.get(uri.path) ?? '';
  }

  provideDocumentLinks(document: TextDocument): DocumentLink[] {
    const action = this.#actions.get(document.uri.path);
    if (!action) return [];
    const { range } = document.lineAt(0);
    return [new DocumentLink(new Range(range.start, range.end), Uri.parse(`command:${action.command}`))];
  }

  /** Says in a message what was done and how many notes there are; the page opens from there. */
  async tell(done: string, title: string, notes: readonly ShownNote[], action?: NotesAction): Promise<void> {
    const more = action ? [action.label] : [];
    const act = async (answer: string | undefined) => {
      if (action && answer === action.label) await commands.executeCommand(action.command);
    };
    if (notes.length === 0) {
      const told = l10n.t('{0} Nothing was assumed or left out.', done);
      await act(await window.showInformationMessage(told, ...more));
      return;
    }
    const show = l10n.t('Show notes');
    const told =
      notes.length === 1
        ? l10n.t('{0} 1 note tells what was assumed, changed or left out.', done)
        : l10n.t('{0} {1} notes tell what was assumed, changed or left out.', done, notes.length);
    const answer = await window.showInformationMessage(told, show, ...more);
    if (answer === show) await this.#open(title, notes, action);
    else await act(answer);
  }

  async #open(title: string, notes: readonly ShownNote[], action: NotesAction | undefined): Promise<void> {
    const uri = Uri.from({ scheme, path: `/${title}.txt` });
    const lines = notes.map(({ line, kind, message }) => l10n.t('Line {0}, {1}: {2}', line, kind, message));
    if (action) {
      this.#actions.set(uri.path, action);
      lines.unshift(action.label, '');
    }
    this.#pages.set(uri.path, lines.map((line) => `${line}\n`).join(''));
    this.#changed.fire(uri);
    const opened = await workspace.openTextDocument(uri);
    // A language of its own, whose lines wrap.
    const document = await languages.setTextDocumentLanguage(opened, 'zonewright-notes');
    await showBeside(document, { preserveFocus: true, preview: true });
  }

  dispose(): void {
    for (const one of this.#registrations) one.dispose();
    this.#changed.dispose();
  }
}
