import type { Diagnostic, WorkDoneProgressReporter } from 'vscode-languageserver';
import { isInstrumentFileName } from '../model/fileNames';
import { folderOf, isWithin, joinPath } from '../model/paths';
import type { JudgedFile } from '../workspace/judgedFiles';
import { judgedFile, judgedFiles } from '../workspace/judgedFiles';
import { diagnosticsOf } from './conversion/diagnostics';
import { pathOfUri, uriOfPath } from './conversion/uris';
import type { ServerContext } from './serverContext';

/** Milliseconds in which changes of files are gathered. */
const gathered = 300;

/** How many files of a folder were checked, and what was found in them. */
export interface FolderCheck {
  files: number;
  filesWithFindings: number;
  findings: number;
}

/** What the findings of a file depend on beside its own text. */
interface Dependencies {
  sources: ReadonlySet<string>;
  sampleFolders: ReadonlySet<string>;
}

/**
 * The findings of instruments that are not open, in folders that a person had checked: sent without being asked for, and
 * kept up to date when files change. Those of open documents are told as ever.
 */
export class FolderFindings {
  readonly #server: ServerContext;
  readonly #folders = new Set<string>();
  readonly #files = new Map<string, Dependencies>();
  readonly #due = new Set<string>();
  #timer: NodeJS.Timeout | undefined;

  constructor(server: ServerContext) {
    this.#server = server;
  }

  /** Checks all instruments of folders, and keeps their findings from then on. Ends early when `progress` is cancelled. */
  async check(
    folders: readonly string[],
    progress: WorkDoneProgressReporter & { token: { isCancellationRequested: boolean } },
  ): Promise<FolderCheck> {
    const { documents } = this.#server;
    const total = { files: 0, filesWithFindings: 0, findings: 0 };
    for (const folder of folders) this.#folders.add(folder);
    const files = judgedFiles(documents, folders, (share) => progress.report(Math.floor(100 * share)));
    for await (const file of files) {
      if (progress.token.isCancellationRequested) break;
      const own = file.findings.filter(({ source }) => source === file.position).length;
      total.files++;
      total.findings += own;
      if (own > 0) total.filesWithFindings++;
      this.#keep(file);
    }
    return total;
  }

  /** Says that files or folders came, went or changed. */
  filesChanged(paths: readonly string[]): void {
    if (this.#folders.size === 0) return;
    for (const path of paths) {
      for (const [file, { sources, sampleFolders }] of this.#files) {
        const isAbout =
          file === path || isWithin(path, file) || sources.has(path) || sampleFolders.has(folderOf(path));
        if (isAbout || [...sampleFolders].some((folder) => isWithin(path, folder))) this.#due.add(file);
      }
      if (isInstrumentFileName(path) && this.#isKept(path)) this.#due.add(path);
    }
    this.#schedule();
  }

  /** Says that a document is open: what is found in it is told by other ways. */
  opened(uri: string): void {
    const path = pathOfUri(uri);
    if (path !== undefined && this.#files.has(path)) this.#send(path, []);
  }

  /** Says that a document was closed; its findings stay. */
  closed(uri: string): void {
    const path = pathOfUri(uri);
    if (path === undefined || !isInstrumentFileName(path) || !this.#isKept(path)) return;
    this.#due.add(path);
    this.#schedule();
  }

  /** Has all be checked anew. */
  checkAgain(): void {
    for (const path of this.#files.keys()) this.#due.add(path);
    this.#schedule();
  }

  stop(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#folders.clear();
  }

  #isKept(path: string): boolean {
    return [...this.#folders].some((folder) => isWithin(folder, path));
  }

  #schedule(): void {
    if (this.#due.size === 0) return;
    this.#timer ??= setTimeout(() => {
      this.#judgeDue().catch((error: unknown) =>
        this.#server.connection.console.error(`Findings of a folder could not be told: ${error}`),
      );
    }, gathered);
  }

  async #judgeDue(): Promise<void> {
    const paths = [...this.#due].sort();
    this.#due.clear();
    for (const path of paths) {
      const file = await judgedFile(this.#server.documents, path);
      if (this.#folders.size === 0) return;
      if (file) this.#keep(file);
      else if (this.#files.delete(path)) this.#send(path, []);
    }
    this.#timer = undefined;
    this.#schedule();
  }

  #keep(file: JudgedFile): void {
    const { instrument, findings, position, source } = file;
    const { path } = source;
    this.#files.set(path, dependenciesOf(file));
    if (this.#server.documents.openDocument(path)) return;
    const options = this.#server.diagnosticOptions(uriOfPath(path));
    this.#send(path, diagnosticsOf({ instrument, findings, source: position }, options));
  }

  #send(path: string, diagnostics: Diagnostic[]): void {
    void this.#server.connection.sendDiagnostics({ uri: uriOfPath(path), diagnostics });
  }
}

function dependenciesOf({ instrument, source }: JudgedFile): Dependencies {
  const folder = folderOf(instrument.sources[0]?.path ?? source.path);
  const sampleFolders = new Set<string>();
  for (const region of instrument.regions) {
    const path = instrument.samplePath(region);
    if (path !== undefined && !path.startsWith('*')) sampleFolders.add(folderOf(joinPath(folder, path)));
  }
  return { sources: new Set(instrument.sources.map((one) => one.path)), sampleFolders };
}
