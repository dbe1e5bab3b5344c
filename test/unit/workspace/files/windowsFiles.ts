import type { FileReader, FileStat, Files, FolderEntry } from '../../../../server/model/files';
import { MemoryFiles } from '../memoryFiles';

/** Names of devices, as on a real disk of Windows (Microsoft, Naming Files, Paths, and Namespaces). */
const devices = /(?:^|\/)(?:con|prn|aux|nul|com\d|lpt\d)(?:\.[^/]*)?$/i;

/**
 * A stand-in for the disks and shares of Windows, as Node shows them: letter case does not count, names of devices are no files,
 * and a drive without a slash is the folder that was open on it last, which nobody may rely on. Keeps what was asked.
 */
export class WindowsFiles implements Files {
  readonly asked: string[] = [];
  readonly #files: MemoryFiles;
  readonly #spelt = new Map<string, string>();

  constructor(contents: Record<string, string | Uint8Array>) {
    this.#files = new MemoryFiles(
      Object.fromEntries(Object.entries(contents).map(([path, content]) => [`/${path}`, content])),
    );
    for (const path of Object.keys(contents)) {
      const parts = path.split('/');
      for (let end = 1; end <= parts.length; end++) {
        const whole = parts.slice(0, end).join('/');
        this.#spelt.set(whole.toLowerCase(), whole);
      }
    }
  }

  #inner(path: string): string {
    this.asked.push(path);
    if (/^[a-z]:$/i.test(path)) throw new Error(`"${path}" stands for no folder`);
    const plain = path.replace(/\/$/, '');
    return `/${this.#spelt.get(plain.toLowerCase()) ?? plain}`;
  }

  async stat(path: string): Promise<FileStat | undefined> {
    if (devices.test(path)) return { kind: 'special', size: 0, modified: 0 };
    return this.#files.stat(this.#inner(path));
  }

  async list(folder: string): Promise<FolderEntry[] | undefined> {
    return this.#files.list(this.#inner(folder));
  }

  async realPath(path: string): Promise<string | undefined> {
    return this.#spelt.get(path.toLowerCase());
  }

  async open(path: string): Promise<FileReader | undefined> {
    // The kind is looked at before, as on a real disk.
    if ((await this.stat(path))?.kind !== 'file') return undefined;
    return this.#files.open(this.#inner(path));
  }
}
