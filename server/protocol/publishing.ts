import type { ClientCapabilities, Connection } from 'vscode-languageserver';

/** Milliseconds in which changes are gathered. */
const gathered = 30;

/** Tells the client of new findings: has it ask again where it asks itself, else sends them. */
export class Publishing {
  readonly #connection: Connection;
  readonly #send: (uri: string) => Promise<void>;
  readonly #due = new Set<string>();
  #timer: NodeJS.Timeout | undefined;
  /** Whether the client asks for findings itself. */
  pulls = false;
  #canRefresh = false;

  /** `send` works out the findings of a document and sends them. */
  constructor(connection: Connection, send: (uri: string) => Promise<void>) {
    this.#connection = connection;
    this.#send = send;
  }

  start({ textDocument, workspace }: ClientCapabilities): void {
    this.pulls = textDocument?.diagnostic !== undefined;
    this.#canRefresh = workspace?.diagnostics?.refreshSupport ?? false;
  }

  /** Says that a document's text changed. A client that asks does so by itself then. */
  textChanged(uri: string): void {
    if (!this.pulls) this.#schedule([uri]);
  }

  /** Says that findings of documents may be others although nobody typed in them. */
  findingsChanged(uris: readonly string[]): void {
    if (uris.length > 0) this.#schedule(uris);
  }

  /** Takes the findings of a closed document back. */
  closed(uri: string): void {
    this.#due.delete(uri);
    if (!this.pulls) void this.#connection.sendDiagnostics({ uri, diagnostics: [] });
  }

  stop(): void {
    clearTimeout(this.#timer);
  }

  #schedule(uris: readonly string[]): void {
    for (const uri of uris) this.#due.add(uri);
    this.#timer ??= setTimeout(() => this.#publish(), gathered);
  }

  #publish(): void {
    this.#timer = undefined;
    const uris = [...this.#due];
    this.#due.clear();
    const work = this.pulls
      ? this.#canRefresh
        ? [this.#connection.languages.diagnostics.refresh()]
        : []
      : uris.map((uri) => this.#send(uri));
    for (const one of work) {
      one.catch((error: unknown) => this.#connection.console.error(`Findings could not be sent: ${error}`));
    }
  }
}
