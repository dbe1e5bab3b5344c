import type { CancellationToken, Disposable, TextEdit, WorkspaceEdit } from 'vscode';
import { EventEmitter } from 'vscode';
import type {
  BaseLanguageClient,
  NotificationType,
  NotificationType0,
  TextEdit as ProtocolTextEdit,
  WorkspaceEdit as ProtocolWorkspaceEdit,
  RequestParam,
  RequestType,
  WorkDoneProgressReport,
} from 'vscode-languageclient';

/**
 * The editor's side of the language server. The library for it takes longer to load than all else of the extension together, so it
 * is loaded with the first that is asked of the server, and never while the extension is being activated.
 */
export class ServerClient implements Disposable {
  readonly #load: () => Promise<BaseLanguageClient>;
  readonly #started = new EventEmitter<void>();
  /** What listens to the server, for a client that is still to be made. */
  readonly #listeners = new Set<(client: BaseLanguageClient) => void>();
  #loading: Promise<BaseLanguageClient> | undefined;
  #client: BaseLanguageClient | undefined;
  #isTold = false;
  #isDisposed = false;

  /** `load` gives the client of a server that is not started yet. */
  constructor(load: () => Promise<BaseLanguageClient>) {
    this.#load = load;
  }

  /** Whether the server answers now; what asks it otherwise starts it. */
  get isRunning(): boolean {
    return this.#client?.isRunning() === true;
  }

  /** Starts the server, unless it runs; settles when it answers. */
  async start(): Promise<void> {
    await (await this.#loaded()).start();
  }

  /** Settles once the server runs and has been told of the documents that are open: before that it would say that it knows none. */
  async #whenDocumentsAreTold(): Promise<void> {
    if (this.#isTold) return;
    await this.start();
    // The client tells of open documents right behind its start, each in a turn of its own.
    await new Promise((done) => setTimeout(done, 0));
    this.#isTold = true;
  }

  /** Runs something each time that the server has started, and now where it has. */
  whenStarted(run: () => void): Disposable {
    if (this.isRunning) run();
    return this.#started.event(run);
  }

  /** The answer of the server, which is started where it does not run, and knows the open documents then. */
  async sendRequest<Params, Result, Fault>(
    type: RequestType<Params, Result, Fault>,
    params: RequestParam<Params>,
    token?: CancellationToken,
  ): Promise<Result> {
    await this.#whenDocumentsAreTold();
    return (await this.#loaded()).sendRequest(type, params, token);
  }

  /** Tells a server that runs; one that does not will find out by itself. */
  tell(type: NotificationType0): void {
    if (this.isRunning) void this.#client?.sendNotification(type);
  }

  /** Takes what the server tells by itself. */
  onNotification<Params>(type: NotificationType<Params>, take: (params: Params) => void): Disposable {
    let registration: Disposable | undefined;
    const listen = (client: BaseLanguageClient) => {
      registration = client.onNotification(type, take);
    };
    if (this.#client) listen(this.#client);
    else this.#listeners.add(listen);
    return {
      dispose: () => {
        this.#listeners.delete(listen);
        registration?.dispose();
      },
    };
  }

  /** Takes how far the work is that was asked for with a token. */
  async onWorkDone(token: string, take: (step: WorkDoneProgressReport) => void): Promise<Disposable> {
    const client = await this.#loaded();
    const { WorkDoneProgress } = await import('vscode-languageclient');
    return client.onProgress(WorkDoneProgress.type, token, (step) => {
      if (step.kind === 'report') take(step);
    });
  }

  /** Edits of the protocol as those of the editor. */
  async asTextEdits(edits: ProtocolTextEdit[]): Promise<TextEdit[]> {
    return (await this.#loaded()).protocol2CodeConverter.asTextEdits(edits);
  }

  /** A change of the protocol as one of the editor. */
  async asWorkspaceEdit(edit: ProtocolWorkspaceEdit): Promise<WorkspaceEdit> {
    return (await this.#loaded()).protocol2CodeConverter.asWorkspaceEdit(edit);
  }

  dispose(): Promise<void> | undefined {
    this.#isDisposed = true;
    this.#started.dispose();
    return this.#client?.dispose();
  }

  #loaded(): Promise<BaseLanguageClient> {
    this.#loading ??= this.#make();
    return this.#loading;
  }

  async #make(): Promise<BaseLanguageClient> {
    // What activates the extension is answered first.
    await new Promise((done) => setTimeout(done, 0));
    const [{ State }, client] = [await import('vscode-languageclient'), await this.#load()];
    this.#client = client;
    if (this.#isDisposed) void client.dispose();
    client.onDidChangeState(({ newState }) => {
      if (newState === State.Running) this.#started.fire();
    });
    for (const listen of this.#listeners) listen(client);
    this.#listeners.clear();
    return client;
  }
}
