import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import type {
  ClientCapabilities,
  Diagnostic,
  DocumentDiagnosticReport,
  MessageConnection,
  PublishDiagnosticsParams,
  TextDocumentContentChangeEvent,
} from 'vscode-languageserver-protocol/node';
import {
  createMessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';
import { URI } from 'vscode-uri';

/** What an editor of today can do. */
export const fullCapabilities: ClientCapabilities = {
  workspace: {
    configuration: true,
    didChangeWatchedFiles: { dynamicRegistration: true, relativePatternSupport: true },
    didChangeConfiguration: { dynamicRegistration: true },
    diagnostics: { refreshSupport: true },
    workspaceEdit: { documentChanges: true },
    workspaceFolders: true,
  },
  textDocument: {
    diagnostic: { relatedInformation: true },
    publishDiagnostics: { relatedInformation: true },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    hover: { contentFormat: ['markdown', 'plaintext'] },
    completion: {
      completionItem: {
        snippetSupport: true,
        labelDetailsSupport: true,
        documentationFormat: ['markdown', 'plaintext'],
      },
    },
  },
};

export interface EditorOptions {
  /** The workspace folder, absolute. */
  folder: string;
  capabilities?: ClientCapabilities;
  /** The settings under `zonewright`. */
  configuration?: unknown;
  /** What the server is started with. */
  options?: unknown;
  /** Options of Node for its process. */
  nodeOptions?: readonly string[];
}

/** What the server asked to be told of. */
export interface Registered {
  method: string;
  registerOptions?: unknown;
}

/** An editor's side of the protocol, with a server of its own as a process. */
export class EditorClient {
  static readonly #started: EditorClient[] = [];
  readonly connection: MessageConnection;
  readonly process: ChildProcessWithoutNullStreams;
  readonly folder: string;
  configuration: unknown;
  readonly registered: Registered[] = [];
  /** Registrations are answered when this is kept. */
  registers: Promise<void> = Promise.resolve();
  readonly shown: string[] = [];
  /** The findings that the server sent by itself, by URI. */
  readonly sent = new Map<string, PublishDiagnosticsParams>();
  refreshes = 0;
  #stderr = '';
  #waiting: (() => void)[] = [];

  private constructor(bundle: string, { folder, configuration, nodeOptions = [] }: EditorOptions) {
    this.folder = folder;
    this.configuration = configuration ?? {};
    this.process = spawn(process.execPath, [...nodeOptions, bundle, '--stdio']);
    EditorClient.#started.push(this);
    this.process.stderr.on('data', (data) => {
      this.#stderr += data;
    });
    this.connection = createMessageConnection(
      new StreamMessageReader(this.process.stdout),
      new StreamMessageWriter(this.process.stdin),
    );
    this.connection.onRequest(
      'client/registerCapability',
      async ({ registrations }: { registrations: Registered[] }) => {
        await this.registers;
        this.registered.push(...registrations);
        this.#wake();
        return null;
      },
    );
    this.connection.onRequest('workspace/configuration', ({ items }: { items: unknown[] }) =>
      items.map(() => this.configuration),
    );
    this.connection.onRequest('workspace/diagnostic/refresh', () => {
      this.refreshes++;
      this.#wake();
      return null;
    });
    this.connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
      this.sent.set(params.uri, params);
      this.#wake();
    });
    this.connection.onNotification('window/showMessage', ({ message }: { message: string }) => {
      this.shown.push(message);
      this.#wake();
    });
    this.connection.listen();
  }

  /** Ends the servers of all clients, those that failed to end themselves included. */
  static endAll(): void {
    for (const { process } of EditorClient.#started.splice(0)) process.kill();
  }

  /** Starts a server that is told nothing yet. */
  static connect(bundle: string, options: EditorOptions): EditorClient {
    return new EditorClient(bundle, options);
  }

  /** Starts a server and gets acquainted with it. */
  static async start(bundle: string, options: EditorOptions): Promise<EditorClient> {
    const client = EditorClient.connect(bundle, options);
    await client.initialize(options);
    return client;
  }

  /** Has the server get acquainted with the editor. */
  async initialize({ capabilities, options }: Partial<EditorOptions> = {}): Promise<void> {
    await this.connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: URI.file(this.folder).toString(),
      workspaceFolders: [{ uri: URI.file(this.folder).toString(), name: 'test' }],
      capabilities: capabilities ?? fullCapabilities,
      initializationOptions: options ?? { suggestCommand: 'test.suggest' },
    });
    await this.connection.sendNotification('initialized', {});
  }

  uri(name: string): string {
    return URI.file(`${this.folder}/${name}`).toString();
  }

  async open(name: string, text: string, languageId = 'sfz'): Promise<string> {
    const uri = this.uri(name);
    await this.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId, version: 1, text },
    });
    return uri;
  }

  async change(
    uri: string,
    version: number,
    ...contentChanges: TextDocumentContentChangeEvent[]
  ): Promise<void> {
    await this.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri, version },
      contentChanges,
    });
  }

  pull(uri: string, previousResultId?: string): Promise<DocumentDiagnosticReport> {
    return this.connection.sendRequest('textDocument/diagnostic', {
      textDocument: { uri },
      ...(previousResultId !== undefined && { previousResultId }),
    });
  }

  /** The findings of a document, as the codes and the lines (from 0) that they are in. */
  async findings(uri: string): Promise<string[]> {
    const report = await this.pull(uri);
    return report.kind === 'full' ? report.items.map(placed) : [];
  }

  ask<Answer>(method: string, uri: string, more: object = {}): Promise<Answer> {
    return this.connection.sendRequest(method, { textDocument: { uri }, ...more });
  }

  /** Waits until something that the server tells makes a condition hold. */
  async until(holds: () => boolean): Promise<void> {
    while (!holds()) await new Promise<void>((resolve) => this.#waiting.push(resolve));
  }

  /** Ends the server as an editor does; answers its exit code. */
  async stop(): Promise<number | null> {
    await this.connection.sendRequest('shutdown');
    const exit = once(this.process, 'exit');
    await this.connection.sendNotification('exit');
    const [code] = (await exit) as [number | null];
    this.connection.dispose();
    return code;
  }

  /** What the server wrote to standard error. */
  get stderr(): string {
    return this.#stderr;
  }

  #wake(): void {
    for (const resolve of this.#waiting.splice(0)) resolve();
  }
}

/** A finding as its code and the line and characters that it stands at, from 0. */
export function placed({ code, range: { start, end } }: Diagnostic): string {
  return `${code} ${start.line}:${start.character}-${end.line}:${end.character}`;
}
