import type { FileReader, FileStat, Files, FolderEntry, Refusal } from '../../model/files';
import { isWithin } from '../../model/paths';

/**
 * Files of which, while the folder that is open is not trusted, none outside is reached: not by their path and not by a
 * link. Once it is trusted, all are given as they are.
 */
export class GuardedFiles implements Files {
  readonly #files: Files;
  readonly stats?: Files['stats'];
  #isTrusted = true;
  #folders: readonly string[] = [];
  #real: Promise<readonly string[]> = Promise.resolve([]);

  constructor(files: Files) {
    this.#files = files;
    if (files.stats)
      this.stats = (paths) =>
        this.#isTrusted && files.stats
          ? files.stats(paths)
          : Promise.all(paths.map((path) => this.stat(path)));
  }

  /** Gives only what lies in some folders, until {@link trust}. */
  restrict(folders: readonly string[]): void {
    this.#isTrusted = false;
    this.#folders = folders;
    this.#real = Promise.all(folders.map(async (folder) => (await this.#files.realPath?.(folder)) ?? folder));
  }

  trust(): void {
    this.#isTrusted = true;
  }

  get isTrusted(): boolean {
    return this.#isTrusted;
  }

  /** Whether a path may be looked at, as far as the path alone tells. */
  admits(path: string): boolean {
    return this.#isTrusted || this.#folders.some((folder) => isWithin(folder, path));
  }

  async stat(path: string): Promise<FileStat | undefined> {
    return (await this.#reaches(path)) ? this.#files.stat(path) : undefined;
  }

  async list(folder: string): Promise<FolderEntry[] | undefined> {
    return (await this.#reaches(folder)) ? this.#files.list(folder) : undefined;
  }

  async open(path: string): Promise<FileReader | undefined> {
    return (await this.#reaches(path)) ? this.#files.open(path) : undefined;
  }

  async realPath(path: string): Promise<string | undefined> {
    return this.#files.realPath?.(path);
  }

  async refusal(path: string): Promise<Refusal | undefined> {
    return (await this.#reaches(path)) ? this.#files.refusal?.(path) : 'trust';
  }

  async #reaches(path: string): Promise<boolean> {
    if (this.#isTrusted) return true;
    if (!this.admits(path)) return false;
    const end = await this.#files.realPath?.(path);
    if (end === undefined) return true;
    return (await this.#real).some((folder) => isWithin(folder, end));
  }
}
