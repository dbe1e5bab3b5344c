import type { Disposable, ExtensionContext, WebviewPanel } from 'vscode';
import { commands, l10n, Uri, ViewColumn, window } from 'vscode';
import { PageHost } from '../webview/pageHost';
import type { Libraries } from './libraries';
import type { LibraryFromPage, LibraryToPage } from './messages';
import { openPlace } from './openPlace';

const libraryPage = { name: 'library', id: 'library', title: l10n.t('Library') };

/** The page of the libraries. There is one at a time. */
export class LibraryPanel implements Disposable {
  readonly #context: ExtensionContext;
  readonly #libraries: Libraries;
  readonly #watches: Disposable[];
  #panel: WebviewPanel | undefined;
  #page: PageHost<LibraryToPage, LibraryFromPage> | undefined;

  constructor(context: ExtensionContext, libraries: Libraries) {
    this.#context = context;
    this.#libraries = libraries;
    this.#watches = [
      libraries.onDidChange(() => void this.#show()),
      libraries.onDidProgress((progress) => {
        const { uri = '', done = 0, all = 0 } = progress ?? {};
        this.#page?.send({ type: 'progress', uri, done, all: done < all ? all : 0 });
      }),
    ];
  }

  /** Opens the page, or brings it to the front. */
  open(): void {
    if (this.#panel) {
      this.#panel.reveal();
      void this.#libraries.refresh();
      return;
    }
    const panel = window.createWebviewPanel('zonewright.library', l10n.t('Library'), ViewColumn.Active);
    const page = new PageHost<LibraryToPage, LibraryFromPage>(this.#context, panel.webview, libraryPage, {
      ready: () => void this.#libraries.refresh().then(() => this.#show()),
      receive: (message) => void this.#receive(message),
    });
    this.#panel = panel;
    this.#page = page;
    panel.onDidDispose(() => {
      page.dispose();
      this.#panel = undefined;
      this.#page = undefined;
    });
  }

  async #show(): Promise<void> {
    if (!this.#page) return;
    const views = await this.#libraries.views();
    const libraries = views.map(({ uri, title, rows, problems }) => ({ uri, title, rows, problems }));
    this.#page?.send({ type: 'libraries', libraries });
  }

  async #receive(message: LibraryFromPage): Promise<void> {
    const library = (await this.#libraries.views()).find(({ uri }) => uri === message.uri);
    if (!library) return;
    if (message.type === 'build') await commands.executeCommand('zonewright.buildLibrary', library.uri);
    else if (message.type === 'file') await commands.executeCommand('vscode.open', Uri.parse(library.uri));
    else {
      const row = library.rows.find(({ fileName }) => fileName === message.fileName);
      if (row) await openPlace(library, row, message.place);
    }
  }

  dispose(): void {
    for (const one of this.#watches) one.dispose();
    this.#panel?.dispose();
  }
}
