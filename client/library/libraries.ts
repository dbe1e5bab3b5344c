import type { Disposable, Event } from 'vscode';
import { commands, EventEmitter, workspace } from 'vscode';
import type { LibraryProgress, LibraryView } from '../../server/protocol/requests/libraryRequests';
import {
  LibrariesRequest,
  LibraryProgressNotification,
} from '../../server/protocol/requests/libraryRequests';
import type { ServerClient } from '../serverClient';

/** What the tree and the page show while there is something to show. */
const hasLibrary = 'zonewright.hasLibrary';
/** Milliseconds in which changes of files are gathered. */
const gathered = 500;

/** The libraries of the open folders as they were asked for last, and how far a build is. */
export class Libraries implements Disposable {
  readonly #client: ServerClient;
  readonly #changed = new EventEmitter<void>();
  readonly #progressed = new EventEmitter<LibraryProgress | undefined>();
  readonly #watches: Disposable[];
  #views: LibraryView[] | undefined;
  #asking: Promise<LibraryView[]> | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(client: ServerClient) {
    this.#client = client;
    const watcher = workspace.createFileSystemWatcher('**/zonewright.library.json');
    const changed = () => this.#changeSoon();
    this.#watches = [
      watcher,
      watcher.onDidChange(changed),
      watcher.onDidCreate(changed),
      watcher.onDidDelete(changed),
      // What is built is looked at again only where there is a library.
      workspace.onDidSaveTextDocument(() => {
        if (this.#views && this.#views.length > 0) changed();
      }),
      workspace.onDidChangeWorkspaceFolders(changed),
      client.whenStarted(() => void this.refresh()),
      client.onNotification(LibraryProgressNotification.type, (progress) => this.#progressed.fire(progress)),
    ];
  }

  /** Told when {@link views} has other libraries. */
  get onDidChange(): Event<void> {
    return this.#changed.event;
  }

  /** Told how far a build is, and of nothing when it has ended. */
  get onDidProgress(): Event<LibraryProgress | undefined> {
    return this.#progressed.event;
  }

  /** The libraries, asked for where they are not known. */
  views(): Promise<LibraryView[]> {
    return this.#views ? Promise.resolve(this.#views) : this.refresh();
  }

  /** Asks for the libraries anew. */
  async refresh(): Promise<LibraryView[]> {
    this.#asking ??= this.#ask();
    return this.#asking;
  }

  /** Says that a build has ended. */
  async ended(): Promise<void> {
    this.#progressed.fire(undefined);
    await this.refresh();
  }

  async #ask(): Promise<LibraryView[]> {
    try {
      this.#views = await this.#client.sendRequest(LibrariesRequest.type, null);
    } catch {
      this.#views ??= [];
    } finally {
      this.#asking = undefined;
    }
    void commands.executeCommand('setContext', hasLibrary, this.#views.length > 0);
    this.#changed.fire();
    return this.#views;
  }

  #changeSoon(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.refresh(), gathered);
  }

  dispose(): void {
    clearTimeout(this.#timer);
    for (const one of this.#watches) one.dispose();
    this.#changed.dispose();
    this.#progressed.dispose();
  }
}
