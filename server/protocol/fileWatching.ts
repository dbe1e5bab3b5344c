import type { ClientCapabilities, Connection, Disposable, FileSystemWatcher } from 'vscode-languageserver';
import { DidChangeWatchedFilesNotification } from 'vscode-languageserver';
import { instrumentEndings, sampleEndings } from '../model/fileNames';
import { vocabularyEnding } from '../vocabulary/vocabulary';
import { projectFileName } from '../workspace/projectSettings';
import { uriOfPath } from './conversion/uris';

const watchedEndings = [...sampleEndings, ...instrumentEndings, 'sf2'];
const watchedName = new RegExp(
  `(?:\\.(?:${watchedEndings.join('|')})|/${projectFileName}|${vocabularyEnding})$`,
  'i',
);

/** Folders outside the workspace that are watched at the most. */
const mostFolders = 100;

/**
 * When folders are looked at again after watching was asked for, in milliseconds: what changed before it began is told by
 * nobody, and a client answers before the system watches. Our choice.
 */
const looksAfterBegin = [0, 1000, 4000];

/**
 * When folders are looked at again after a change, in milliseconds. A client that gathers changes for a moment tells nothing of
 * a file that came and went in it, though a folder that was listed between may name it. Our choice.
 */
const lookAfterChange = 2000;

/** Has the client tell of files that come, go or change. */
export class FileWatching {
  readonly #connection: Connection;
  readonly #lookAgain: () => void;
  readonly #looks = new Set<NodeJS.Timeout>();
  #settling: NodeJS.Timeout | undefined;
  readonly #outside = new Map<string, Promise<Disposable>>();
  /** Whether the client can watch files when asked to. */
  isAvailable = false;
  #canWatchOutside = false;

  /** `lookAgain` is called when changes may have gone untold. */
  constructor(connection: Connection, lookAgain: () => void) {
    this.#connection = connection;
    this.#lookAgain = lookAgain;
  }

  /** Begins to watch the workspace. */
  start({ workspace }: ClientCapabilities): void {
    const { dynamicRegistration = false, relativePatternSupport = false } =
      workspace?.didChangeWatchedFiles ?? {};
    this.isAvailable = dynamicRegistration;
    this.#canWatchOutside = dynamicRegistration && relativePatternSupport;
    if (!dynamicRegistration) return;
    void this.#watch([
      { globPattern: `**/*.{${bothCases(watchedEndings).join(',')}}` },
      { globPattern: `**/${projectFileName}` },
      { globPattern: `**/*${vocabularyEnding}` },
      // Folders have no ending to tell them by. One that is put in another's place is told of as changed.
      { globPattern: '**/*' },
    ]);
  }

  /** Watches sample folders that lie outside the workspace. */
  watchFolders(folders: Iterable<string>, workspaceFolders: readonly string[]): void {
    if (!this.#canWatchOutside) return;
    for (const folder of folders) {
      if (this.#outside.has(folder) || this.#outside.size >= mostFolders) continue;
      if (workspaceFolders.some((one) => folder === one || folder.startsWith(`${one}/`))) continue;
      const globPattern = { baseUri: uriOfPath(folder), pattern: '*' };
      this.#outside.set(folder, this.#watch([{ globPattern }]));
    }
  }

  /** Whether a change of a path can matter: it is named like a file of interest, or folders that are known lie in it. */
  matters(path: string, known: Iterable<string>): boolean {
    if (watchedName.test(path)) return true;
    for (const folder of known) if (folder === path || folder.startsWith(`${path}/`)) return true;
    return false;
  }

  /** Says that folders are listed anew about now: once no change is told for a while, they are looked at again. */
  settle(): void {
    if (!this.isAvailable) return;
    if (this.#settling) this.#settling.refresh();
    else this.#settling = setTimeout(() => this.#settled(), lookAfterChange);
  }

  #settled(): void {
    this.#settling = undefined;
    this.#lookAgain();
  }

  /** Has nothing looked at any more. */
  stop(): void {
    clearTimeout(this.#settling);
    for (const look of this.#looks) clearTimeout(look);
    this.#looks.clear();
  }

  async #watch(watchers: FileSystemWatcher[]): Promise<Disposable> {
    const watching = await this.#connection.client.register(DidChangeWatchedFilesNotification.type, {
      watchers,
    });
    for (const later of looksAfterBegin) {
      const look = setTimeout(() => {
        this.#looks.delete(look);
        this.#lookAgain();
      }, later);
      this.#looks.add(look);
    }
    return watching;
  }
}

/** Patterns may mind letter case, names of old sample files are often in capitals. */
function bothCases(endings: readonly string[]): string[] {
  return endings.flatMap((ending) => [ending, ending.toUpperCase()]);
}
