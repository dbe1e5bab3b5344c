import type { FileReader, FileStat, Files, FolderEntry } from '../../../server/model/files';
import { folderOf, nameOf } from '../../../server/model/paths';

/** Files in memory, by absolute path, that keep count of what was asked of them. */
export class MemoryFiles implements Files {
  readonly #contents = new Map<string, Uint8Array>();
  /** The times of the last changes: a count of changes takes the place of a clock. */
  readonly #modified = new Map<string, number>();
  #changes = 0;
  readonly listed: string[] = [];
  readonly opened: string[] = [];
  closed = 0;
  /** Waited for before each answer, for tests of what happens meanwhile. */
  beforeAnswer: () => Promise<void> = async () => {};

  constructor(contents: Record<string, string | Uint8Array> = {}) {
    for (const [path, content] of Object.entries(contents)) this.put(path, content);
  }

  put(path: string, content: string | Uint8Array): void {
    this.#contents.set(path, typeof content === 'string' ? Buffer.from(content, 'utf8') : content);
    this.#modified.set(path, ++this.#changes);
  }

  remove(path: string): void {
    for (const one of [...this.#contents.keys()]) {
      if (one === path || one.startsWith(`${path}/`)) this.#contents.delete(one);
    }
  }

  async stat(path: string): Promise<FileStat | undefined> {
    const content = this.#contents.get(path);
    if (content) return { kind: 'file', size: content.length, modified: this.#modified.get(path) ?? 0 };
    return this.#entries(path).length > 0 ? { kind: 'folder', size: 0, modified: 0 } : undefined;
  }

  async list(folder: string): Promise<FolderEntry[] | undefined> {
    this.listed.push(folder);
    const entries = this.#entries(folder);
    await this.beforeAnswer();
    return entries.length > 0 ? entries : undefined;
  }

  async open(path: string): Promise<FileReader | undefined> {
    const content = this.#contents.get(path);
    if (!content) return undefined;
    this.opened.push(path);
    return {
      size: content.length,
      read: async (start, length) => {
        await this.beforeAnswer();
        return content.slice(start, start + length);
      },
      close: async () => {
        this.closed++;
      },
    };
  }

  #entries(folder: string): FolderEntry[] {
    const kinds = new Map<string, FolderEntry['kind']>();
    for (const path of this.#contents.keys()) {
      for (
        let at = path, kind: FolderEntry['kind'] = 'file';
        at !== '/';
        at = folderOf(at), kind = 'folder'
      ) {
        if (folderOf(at) === folder) kinds.set(nameOf(at), kind);
      }
    }
    return [...kinds].map(([name, kind]) => ({ name, kind }));
  }
}
