import type {
  ClientCapabilities,
  Connection,
  FileEvent,
  InitializeParams,
  InitializeResult,
  WorkspaceFolder,
} from 'vscode-languageserver';
import {
  DidChangeConfigurationNotification,
  FileChangeType,
  MessageType,
  ShowMessageNotification,
  TextDocuments,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Files } from '../model/files';
import { nameOf } from '../model/paths';
import { withFontSamples } from '../soundfont/fontFiles';
import { vocabularyEnding } from '../vocabulary/vocabulary';
import { InstrumentDocuments } from '../workspace/documents';
import type { OpenDocument } from '../workspace/openDocument';
import { ProjectSettingsStore, projectFileName } from '../workspace/projectSettings';
import { SampleOutlines } from '../workspace/samples/sampleOutlines';
import { stopIfCancelled } from './cancellation';
import type { DiagnosticOptions } from './conversion/diagnostics';
import { diagnosticsOf } from './conversion/diagnostics';
import { pathOfUri, serveFilesOf, uriOfPath } from './conversion/uris';
import { FileWatching } from './fileWatching';
import { FolderFindings } from './folderFindings';
import { handleFeatures } from './handlers/handleFeatures';
import { handleInstrumentList } from './handlers/handleInstrumentList';
import type { OpenBuildHost } from './handlers/handleLater';
import { handleLater } from './handlers/handleLater';
import { handleReadingAids, refreshReadingAids } from './handlers/handleReadingAids';
import type { MeasuringHost } from './measuring';
import { Measuring } from './measuring';
import { Publishing } from './publishing';
import { LookAgainNotification } from './requests/lookAgainNotification';
import { InstrumentChangedNotification } from './requests/requests';
import { serverCapabilities } from './serverCapabilities';
import type { ServerContext } from './serverContext';
import { refuseUntimely } from './sessionOrder';
import { Settings } from './settings';
import { absoluteFolders, Trust } from './trust';

/** Milliseconds after the last change of a text in which nobody is told that it was read anew. */
const quiet = 15;

/** Milliseconds in which reasons to look at folders again are gathered. */
const gathered = 100;

/** A connection to an editor with all that is known of its documents. */
export class LanguageServer implements ServerContext {
  readonly connection: Connection;
  readonly documents: InstrumentDocuments;
  readonly settings: Settings;
  readonly outlines: SampleOutlines;
  capabilities: ClientCapabilities = {};
  suggestCommand: string | undefined;
  mapCommand: string | undefined;
  playCommand: string | undefined;
  playSampleCommand: string | undefined;
  saveVocabularyCommand: string | undefined;
  locateFolderCommand: string | undefined;
  fixFolderCommand: string | undefined;
  openCommand: string | undefined;
  showsMaps = false;
  readonly #texts = new TextDocuments(TextDocument);
  readonly #open = new Map<string, OpenDocument>();
  readonly #measuring: Measuring | undefined;
  readonly #watching: FileWatching;
  readonly #publishing: Publishing;
  readonly #folderFindings = new FolderFindings(this);
  readonly #trust: Trust;
  readonly #builds: OpenBuildHost | undefined;
  readonly #session = Date.now().toString(36);
  readonly #changed = new Map<string, NodeJS.Timeout>();
  #folders: string[] = [];
  #looking: NodeJS.Timeout | undefined;

  /** Samples are measured, and libraries built, where the host can. */
  constructor(connection: Connection, allFiles: Files, measuring?: MeasuringHost, builds?: OpenBuildHost) {
    this.connection = connection;
    this.#builds = builds;
    this.#trust = new Trust(withFontSamples(allFiles), () => this.#trusted());
    const { files } = this.#trust;
    const warn = (message: string) => {
      void connection.sendNotification(ShowMessageNotification.type, { type: MessageType.Warning, message });
    };
    const project = new ProjectSettingsStore(files, warn);
    this.settings = new Settings(connection, project, () => files.isTrusted);
    this.#measuring =
      measuring && new Measuring(connection, files, measuring, (owners) => this.documents.measured(owners));
    this.documents = new InstrumentDocuments(
      files,
      async ({ uri, path }) => {
        this.documents.samples.givesMeasures = await this.settings.measuresSamples();
        return this.settings.severities(uri, path);
      },
      (uris) => this.#publishing.findingsChanged(uris),
      warn,
      this.#measuring?.measurements,
    );
    this.outlines = new SampleOutlines(files);
    this.#watching = new FileWatching(connection, () => this.#lookAgain());
    this.#publishing = new Publishing(connection, (uri) => this.#send(uri));
  }

  /** Takes requests from now on. */
  listen(): void {
    const { connection } = this;
    refuseUntimely(connection);
    connection.onInitialize((params) => this.#initialize(params));
    connection.onInitialized(() => this.#initialized());
    connection.onShutdown(() => this.#stop());
    connection.onDidChangeConfiguration(({ settings }) => {
      this.settings.changed(settings);
      this.documents.settingsChanged();
      void this.#setIncludeFolders();
      refreshReadingAids(this);
    });
    connection.onDidChangeWatchedFiles(({ changes }) => this.#filesChanged(changes));
    connection.onNotification(LookAgainNotification.type, () => this.#lookAgain());
    this.#handleDocuments();
    this.#handleDiagnostics();
    handleFeatures(this, this.#folderFindings);
    handleInstrumentList(this);
    handleLater(this, this.#builds, () => this.#trust.files.isTrusted);
    handleReadingAids(this);
    this.#texts.listen(connection);
    connection.listen();
  }

  openDocument(uri: string): OpenDocument | undefined {
    return this.#open.get(uri);
  }

  get openDocuments(): OpenDocument[] {
    return [...this.#open.values()];
  }

  get folders(): readonly string[] {
    return this.#folders;
  }

  diagnosticOptions(uri: string): DiagnosticOptions {
    const { publishDiagnostics, diagnostic } = this.capabilities.textDocument ?? {};
    return {
      uri,
      uriOf: (path) => this.documents.openDocument(path)?.uri ?? uriOfPath(path),
      withRelated: (diagnostic?.relatedInformation ?? publishDiagnostics?.relatedInformation) === true,
    };
  }

  #initialize({
    capabilities,
    workspaceFolders,
    rootUri,
    initializationOptions,
  }: InitializeParams): InitializeResult {
    this.capabilities = capabilities;
    this.#publishing.start(capabilities);
    this.#trust.start(this.connection, initializationOptions);
    const filesOf = optionIn(initializationOptions, 'filesOf');
    if (filesOf !== undefined) serveFilesOf(filesOf);
    this.#startMeasuring(capabilities, optionIn(initializationOptions, 'cacheFolder'));
    this.suggestCommand = optionIn(initializationOptions, 'suggestCommand');
    this.mapCommand = optionIn(initializationOptions, 'mapCommand');
    this.playCommand = optionIn(initializationOptions, 'playCommand');
    this.playSampleCommand = optionIn(initializationOptions, 'playSampleCommand');
    this.openCommand = optionIn(initializationOptions, 'openCommand');
    this.fixFolderCommand = optionIn(initializationOptions, 'fixFolderCommand');
    this.locateFolderCommand = optionIn(initializationOptions, 'locateFolderCommand');
    this.saveVocabularyCommand = optionIn(initializationOptions, 'saveVocabularyCommand');
    this.settings.start(capabilities.workspace?.configuration === true, initializationOptions);
    this.#setFolders(workspaceFolders ?? (rootUri ? [{ uri: rootUri, name: '' }] : []));
    return {
      serverInfo: { name: 'zonewright' },
      capabilities: serverCapabilities(capabilities, [
        this.fixFolderCommand,
        ...wordsIn(initializationOptions, 'ownCommands'),
      ]),
    };
  }

  #startMeasuring(capabilities: ClientCapabilities, cacheFolder: string | undefined): void {
    this.#measuring?.start(capabilities);
    const cache =
      cacheFolder === undefined ? undefined : this.#measuring?.cacheIn(cacheFolder.replaceAll('\\', '/'));
    if (cache) this.documents.samples.useCache(cache);
  }

  #initialized(): void {
    const { workspace } = this.capabilities;
    this.#watching.start(this.capabilities);
    void this.#setIncludeFolders();
    if (workspace?.didChangeConfiguration?.dynamicRegistration) {
      void this.connection.client.register(DidChangeConfigurationNotification.type, {
        section: 'zonewright',
      });
    }
    if (workspace?.workspaceFolders) {
      this.connection.workspace.onDidChangeWorkspaceFolders(async () => {
        this.#setFolders((await this.connection.workspace.getWorkspaceFolders()) ?? []);
        this.documents.settingsChanged();
      });
    }
  }

  #setFolders(folders: readonly WorkspaceFolder[]): void {
    this.#folders = folders.flatMap(({ uri }) => pathOfUri(uri) ?? []);
    this.#trust.setFolders(this.#folders);
    this.documents.setFolders(this.#folders);
  }

  async #setIncludeFolders(): Promise<void> {
    const written = await this.settings.includeFolders();
    this.documents.setIncludeFolders(absoluteFolders(written, this.#folders));
  }

  /** All that was not looked at before counts from now on. */
  #trusted(): void {
    this.settings.forgetProjects();
    this.documents.samples.forgetAll();
    this.documents.readAgain();
    void this.#setIncludeFolders();
    refreshReadingAids(this);
  }

  #handleDocuments(): void {
    this.#texts.onDidChangeContent(({ document }) => this.#changedText(document));
    this.#texts.onDidOpen(({ document: { uri } }) => {
      this.#folderFindings.opened(uri);
      this.#lookAgain();
      this.#watching.settle();
    });
    this.#texts.onDidClose(({ document: { uri } }) => {
      this.#open.delete(uri);
      clearTimeout(this.#changed.get(uri));
      this.#changed.delete(uri);
      this.settings.forget(uri);
      this.documents.closed(uri);
      this.#publishing.closed(uri);
      this.#folderFindings.closed(uri);
    });
    this.#texts.onDidSave(() => {
      // A client that watches no files gives no better moment to look at them again.
      if (!this.#watching.isAvailable) {
        this.documents.samples.forgetAll();
        this.documents.settingsChanged();
      } else this.#lookAgain();
    });
  }

  /** Looks whether folders hold what they did; many reasons at one time make it once. */
  #lookAgain(): void {
    this.#looking ??= setTimeout(async () => {
      this.#looking = undefined;
      try {
        this.#folderFindings.filesChanged(await this.documents.lookAgain());
      } catch (error) {
        this.connection.console.error(`Folders could not be looked at again: ${error}`);
      }
    }, gathered);
  }

  #changedText(text: TextDocument): void {
    const { uri } = text;
    let document = this.#open.get(uri);
    if (!document) {
      document = {
        uri,
        path: pathOfUri(uri),
        languageId: text.languageId,
        get version() {
          return text.version;
        },
        getText: () => text.getText(),
      };
      this.#open.set(uri, document);
      this.#trust.opened(document.path);
    }
    this.documents.changed(document);
    this.#publishing.textChanged(uri);
    if (this.showsMaps) this.#tellChanged(uri);
  }

  #tellChanged(uri: string): void {
    clearTimeout(this.#changed.get(uri));
    const tell = async () => {
      const reading = await this.documents.reading(uri);
      const version = reading?.version ?? this.#open.get(uri)?.version;
      if (version !== undefined)
        await this.connection.sendNotification(InstrumentChangedNotification.type, { uri, version });
    };
    this.#changed.set(
      uri,
      setTimeout(() => {
        tell().catch((error: unknown) =>
          this.connection.console.error(`A change could not be told: ${error}`),
        );
      }, quiet),
    );
  }

  #handleDiagnostics(): void {
    this.connection.languages.diagnostics.on(async ({ textDocument: { uri }, previousResultId }, token) => {
      const judgement = await this.documents.judgement(uri);
      stopIfCancelled(token);
      if (!judgement) return { kind: 'full', items: [] };
      this.#watchSamples();
      const resultId = `${this.#session}-${judgement.serial}-${judgement.source}`;
      if (previousResultId === resultId) return { kind: 'unchanged', resultId };
      return { kind: 'full', resultId, items: diagnosticsOf(judgement, this.diagnosticOptions(uri)) };
    });
  }

  /** Sends the findings of a document to a client that does not ask for them. */
  async #send(uri: string): Promise<void> {
    const judgement = await this.documents.judgement(uri);
    const document = this.#open.get(uri);
    if (!document) return;
    const diagnostics = judgement ? diagnosticsOf(judgement, this.diagnosticOptions(uri)) : [];
    await this.connection.sendDiagnostics({ uri, version: document.version, diagnostics });
    this.#watchSamples();
  }

  #watchSamples(): void {
    this.#watching.watchFolders(this.documents.samples.folders.listed, this.#folders);
  }

  #filesChanged(changes: readonly FileEvent[]): void {
    const { listed } = this.documents.samples.folders;
    const paths = new Set<string>();
    for (const { uri, type } of changes) {
      const path = pathOfUri(uri);
      if (path === undefined || !this.#watching.matters(path, listed)) continue;
      // Of an open document the text in the editor counts, not what was saved of it.
      if (type === FileChangeType.Changed && this.documents.openDocument(path)) continue;
      paths.add(path);
      if (nameOf(path) === projectFileName) this.settings.forgetProject(path);
    }
    if (paths.size > 0) {
      this.documents.filesChanged([...paths]);
      this.#watching.settle();
    }
    this.#folderFindings.filesChanged([...paths]);
    if ([...paths].some((path) => path.endsWith(vocabularyEnding))) refreshReadingAids(this);
  }

  async #stop(): Promise<void> {
    this.#publishing.stop();
    this.#folderFindings.stop();
    this.#watching.stop();
    clearTimeout(this.#looking);
    for (const timer of this.#changed.values()) clearTimeout(timer);
    await this.#measuring?.stop();
  }
}

function optionIn(options: unknown, name: string): string | undefined {
  const value =
    typeof options === 'object' && options !== null ? (options as Record<string, unknown>)[name] : undefined;
  return typeof value === 'string' ? value : undefined;
}

function wordsIn(options: unknown, name: string): string[] {
  const value =
    typeof options === 'object' && options !== null ? (options as Record<string, unknown>)[name] : undefined;
  return Array.isArray(value) ? value.filter((one) => typeof one === 'string') : [];
}
