import { open, readdir, stat } from 'node:fs/promises';
import type { FileReader, FileStat, Files, FolderEntry } from '../model/files';

/** Files of this machine's disk. A path that cannot be reached, for whatever reason, answers `undefined`. */
export const nodeFiles: Files = {
  async stat(path): Promise<FileStat | undefined> {
    try {
      const found = await stat(path);
      return { kind: found.isDirectory() ? 'folder' : 'file', size: found.size, modified: found.mtimeMs };
    } catch {
      return undefined;
    }
  },

  async list(folder): Promise<FolderEntry[] | undefined> {
    try {
      const entries = await readdir(folder === '' ? '.' : folder, { withFileTypes: true });
      return await Promise.all(
        entries.map(async (entry): Promise<FolderEntry> => {
          const linked = entry.isSymbolicLink()
            ? await stat(`${folder}/${entry.name}`).catch(() => undefined)
            : undefined;
          return { name: entry.name, kind: (linked ?? entry).isDirectory() ? 'folder' : 'file' };
        }),
      );
    } catch {
      return undefined;
    }
  },

  async open(path): Promise<FileReader | undefined> {
    try {
      const handle = await open(path, 'r');
      const found = await handle.stat();
      // A pipe or device would be read for ever.
      if (!found.isFile()) {
        await handle.close();
        return undefined;
      }
      return {
        size: found.size,
        async read(start, length) {
          const buffer = new Uint8Array(Math.max(0, Math.min(length, found.size - start)));
          const { bytesRead } = await handle.read(buffer, 0, buffer.length, start);
          return buffer.subarray(0, bytesRead);
        },
        close: () => handle.close(),
      };
    } catch {
      return undefined;
    }
  },
};
