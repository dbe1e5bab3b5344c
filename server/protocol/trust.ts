import type { Connection } from 'vscode-languageserver';
import type { Files } from '../model/files';
import { folderOf, isAbsolutePath, joinPath } from '../model/paths';
import { GuardedFiles } from '../workspace/files/guardedFiles';
import { TrustGrantedNotification } from './requests/trustNotification';

/**
 * Whether the open folder is trusted. While it is not, no file outside of it is read, an open document's own folder aside
 * where there is no other, and no settings that lie in it count.
 */
export class Trust {
  /** The files that may be read now. */
  readonly files: GuardedFiles;
  readonly #granted: () => void;
  #folders: readonly string[] = [];
  readonly #documentFolders = new Set<string>();

  /** `granted` is told once the folder is trusted. */
  constructor(files: Files, granted: () => void) {
    this.files = new GuardedFiles(files);
    this.#granted = granted;
  }

  /** Begins, with what the client started the server with: only one that says so does not trust the folder. */
  start(connection: Connection, options: unknown): void {
    const isRestricted =
      typeof options === 'object' &&
      options !== null &&
      (options as Record<string, unknown>).trusted === false;
    if (!isRestricted) return;
    this.files.restrict([]);
    connection.onNotification(TrustGrantedNotification.type, () => {
      if (this.files.isTrusted) return;
      this.files.trust();
      this.#granted();
    });
  }

  setFolders(folders: readonly string[]): void {
    this.#folders = folders;
    this.#restrict();
  }

  /** Says that a document is open, whose folder counts where no folder is open. */
  opened(path: string | undefined): void {
    if (path === undefined || this.files.isTrusted || this.#folders.length > 0) return;
    this.#documentFolders.add(folderOf(path));
    this.#restrict();
  }

  #restrict(): void {
    if (this.files.isTrusted) return;
    this.files.restrict(this.#folders.length > 0 ? this.#folders : [...this.#documentFolders]);
  }
}

/** Folders as they are written in a setting, absolute: a relative one starts at the first open folder. */
export function absoluteFolders(written: readonly string[], open: readonly string[]): string[] {
  return written.map((folder) => joinPath(isAbsolutePath(folder) ? '' : (open[0] ?? ''), folder));
}
