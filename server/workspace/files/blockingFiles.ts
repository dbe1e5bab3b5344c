import type { Dirent, Stats } from 'node:fs';
import {
  accessSync,
  closeSync,
  constants,
  fstatSync,
  openSync,
  readdirSync,
  readSync,
  realpathSync,
  statSync,
} from 'node:fs';
import type { FileKind, FileReader, FileStat, Files, FolderEntry } from '../../model/files';

/** Bytes after which other work of the thread, such as an order to stop, is let run. */
const mostAtOnce = 1024 * 1024;

function statOf(found: Stats): FileStat {
  return { kind: kindOf(found), size: found.size, modified: found.mtimeMs };
}

function kindOf(found: Stats | Dirent): FileKind {
  return found.isDirectory() ? 'folder' : found.isFile() ? 'file' : 'special';
}

/** A link is of the kind of what it leads to. */
function entryOf(folder: string, entry: Dirent): FolderEntry {
  const { name } = entry;
  if (!entry.isSymbolicLink()) return { name, kind: kindOf(entry) };
  const end = statSync(`${folder}/${name}`, { throwIfNoEntry: false });
  return { name, kind: end ? kindOf(end) : 'file', isLink: true };
}

/**
 * Files of this machine's disk for a thread that has nothing else to do: it waits for the disk itself, which takes a
 * fraction of the time that it takes to be told when the disk is ready.
 */
export const blockingFiles: Files = {
  async stat(path): Promise<FileStat | undefined> {
    try {
      const found = statSync(path, { throwIfNoEntry: false });
      return found && statOf(found);
    } catch {
      return undefined;
    }
  },

  async list(folder) {
    try {
      return readdirSync(folder, { withFileTypes: true }).map((entry) => entryOf(folder, entry));
    } catch {
      return undefined;
    }
  },

  async realPath(path) {
    try {
      return realpathSync(path).replaceAll('\\', '/');
    } catch {
      return undefined;
    }
  },

  async refusal(path) {
    try {
      accessSync(path, constants.R_OK);
      const found = statSync(path);
      return kindOf(found) === 'special' ? 'special' : undefined;
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? error.code : undefined;
      return code === 'EACCES' || code === 'EPERM' ? 'permission' : undefined;
    }
  },

  async open(path): Promise<FileReader | undefined> {
    let file: number | undefined;
    try {
      // Opening a pipe without a writer would wait for ever.
      file = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
      const found = fstatSync(file);
      if (found.isFile()) return readerOf(file, found);
    } catch {
      // As a path that leads nowhere.
    }
    if (file !== undefined) closeSync(file);
    return undefined;
  },
};

function readerOf(file: number, { size, mtimeMs }: Stats): FileReader {
  let since = 0;
  return {
    size,
    modified: mtimeMs,
    async read(start, wanted) {
      const length = Math.max(0, Math.min(wanted, size - start));
      if (length === 0) return new Uint8Array(0);
      since += length;
      if (since >= mostAtOnce) {
        since = 0;
        await new Promise((resolve) => setImmediate(resolve));
      }
      const buffer = new Uint8Array(length);
      return buffer.subarray(0, readSync(file, buffer, 0, length, start));
    },
    close: async () => closeSync(file),
  };
}
