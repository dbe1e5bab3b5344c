import type { Disposable, Event } from 'vscode';
import { commands, Disposable as Disposables, EventEmitter, languages, Uri, workspace } from 'vscode';
import type { InstrumentState } from '../../server/protocol/requests/instrumentListRequests';
import {
  CheckInstrumentRequest,
  InstrumentListRequest,
} from '../../server/protocol/requests/instrumentListRequests';
import type { ServerClient } from '../serverClient';

/** An instrument of the open folders, with what the last check found in it and when that was. */
export interface KnownInstrument {
  uri: Uri;
  state?: InstrumentState;
  checked?: Date;
  /** Whether it was checked and holds no instrument. */
  isNone?: boolean;
}

/** The instruments of the open folders and their states; one that is open is checked as it changes. */
export class InstrumentStates implements Disposable {
  readonly #client: ServerClient;
  readonly #changed = new EventEmitter<void>();
  readonly onDidChange: Event<void> = this.#changed.event;
  readonly #known = new Map<string, KnownInstrument>();
  readonly #listeners: Disposable;
  #listing: Promise<void> | undefined;

  constructor(client: ServerClient) {
    this.#client = client;
    const watcher = workspace.createFileSystemWatcher('**/*.{sfz,xml}', false, true, false);
    const changed = () => {
      if (client.isRunning) void this.refresh();
    };
    this.#listeners = Disposables.from(
      watcher,
      watcher.onDidCreate(changed),
      watcher.onDidDelete(changed),
      workspace.onDidChangeWorkspaceFolders(changed),
      client.whenStarted(() => void this.refresh()),
      languages.onDidChangeDiagnostics(({ uris }) => this.#diagnosticsChanged(uris)),
      this.#changed,
    );
  }

  dispose(): void {
    this.#listeners.dispose();
  }

  /** The instruments by path, those that turned out to be none left out. */
  all(): KnownInstrument[] {
    return [...this.#known.values()].filter(({ isNone }) => !isNone);
  }

  /** Looks anew which instruments there are; what is known of them stays. */
  refresh(): Promise<void> {
    this.#listing ??= this.#list().finally(() => {
      this.#listing = undefined;
    });
    return this.#listing;
  }

  /** Checks one. */
  async check(instrument: KnownInstrument): Promise<void> {
    const uri = instrument.uri.toString();
    const state = await this.#client.sendRequest(CheckInstrumentRequest.type, { uri });
    if (state) Object.assign(instrument, { state, checked: new Date() });
    else instrument.isNone = true;
    this.#changed.fire();
  }

  async #list(): Promise<void> {
    const uris = await this.#client.sendRequest(InstrumentListRequest.type, {});
    const listed = uris.map((uri) => Uri.parse(uri));
    const before = new Map(this.#known);
    this.#known.clear();
    for (const uri of listed) this.#known.set(uri.toString(), before.get(uri.toString()) ?? { uri });
    await commands.executeCommand('setContext', 'zonewright.hasInstruments', listed.length > 0);
    this.#changed.fire();
  }

  /** An open instrument has been checked by the server: what it found is asked for. */
  #diagnosticsChanged(uris: readonly Uri[]): void {
    for (const uri of uris) {
      const known = this.#known.get(uri.toString());
      const isOpen = workspace.textDocuments.some((one) => one.uri.toString() === uri.toString());
      if (known && isOpen) void this.check(known);
    }
  }
}
