import type { Dirent, Stats } from 'node:fs';
import { constants, stat, statSync } from 'node:fs';
import { access, open, readdir, realpath } from 'node:fs/promises';
import { isDeviceName } from '../../model/fileNames';
import type { FileKind, FileReader, FileStat, Files, FolderEntry, Refusal } from '../../model/files';
import { nameOf } from '../../model/paths';

/** Files whose state is asked for at one time. */
const statsAtOnce = 32;
/** Milliseconds for which a program that has nothing else to do waits for the states of files itself. */
const mostWaiting = 50;

/** Looking at a console or a port of Windows can wait for it, as opening it does. */
const isDevice = process.platform === 'win32' ? (path: string) => isDeviceName(nameOf(path)) : () => false;
const device: FileStat = { kind: 'special', size: 0, modified: 0 };

function askStat(path: string, answer: (found: FileStat | undefined) => void): void {
  if (isDevice(path)) {
    process.nextTick(() => answer(device));
    return;
  }
  try {
    stat(path, (_error, found) => answer(found && statOf(found)));
  } catch {
    // A path with a character that none can hold.
    process.nextTick(() => answer(undefined));
  }
}

function waitForStat(path: string): FileStat | undefined {
  if (isDevice(path)) return device;
  try {
    const found = statSync(path, { throwIfNoEntry: false });
    return found && statOf(found);
  } catch {
    return undefined;
  }
}

function statOf(found: Stats): FileStat {
  return { kind: kindOf(found), size: found.size, modified: found.mtimeMs };
}

function kindOf(found: Stats | Dirent): FileKind {
  return found.isDirectory() ? 'folder' : found.isFile() ? 'file' : 'special';
}

/** Opens at once whatever it is: without this flag, opening a pipe waits for who writes to it. Windows has none. */
const withoutWaiting = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);

/** Files of this machine's disk. A path that cannot be reached, for whatever reason, answers `undefined`. */
export const nodeFiles: Files = {
  stat(path): Promise<FileStat | undefined> {
    return new Promise((resolve) => askStat(path, resolve));
  },

  // One promise for all: of the time that a thousand of them take with promises, half goes there.
  stats(paths): Promise<(FileStat | undefined)[]> {
    return new Promise((resolve) => {
      const found = new Array<FileStat | undefined>(paths.length).fill(undefined);
      let next = 0;
      let done = 0;
      const start = () => {
        const at = next++;
        if (at >= paths.length) return;
        askStat(paths[at], (stats) => {
          found[at] = stats;
          if (++done === paths.length) resolve(found);
          else start();
        });
      };
      for (let at = 0; at < statsAtOnce; at++) start();
      if (paths.length === 0) resolve(found);
    });
  },

  async list(folder): Promise<FolderEntry[] | undefined> {
    try {
      const entries = await readdir(folder === '' ? '.' : folder, { withFileTypes: true });
      const links: Promise<void>[] = [];
      const listed = entries.map((entry): FolderEntry => {
        const { name } = entry;
        if (!entry.isSymbolicLink()) return { name, kind: kindOf(entry) };
        const link: FolderEntry = { name, kind: 'file', isLink: true };
        links.push(
          nodeFiles.stat(`${folder}/${name}`).then((end) => {
            if (end) link.kind = end.kind;
          }),
        );
        return link;
      });
      await Promise.all(links);
      return listed;
    } catch {
      return undefined;
    }
  },

  async realPath(path): Promise<string | undefined> {
    try {
      return (await realpath(path)).replaceAll('\\', '/');
    } catch {
      return undefined;
    }
  },

  async refusal(path): Promise<Refusal | undefined> {
    try {
      await access(path, constants.R_OK);
      return (await nodeFiles.stat(path))?.kind === 'special' ? 'special' : undefined;
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? error.code : undefined;
      return code === 'EACCES' || code === 'EPERM' ? 'permission' : undefined;
    }
  },

  async open(path): Promise<FileReader | undefined> {
    try {
      // Opening a device can change its state, so the kind is looked at first. Where it has changed since, reading fails.
      const found = await nodeFiles.stat(path);
      if (found?.kind !== 'file') return undefined;
      const handle = await open(path, withoutWaiting);
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

/**
 * The same for a program that has nothing else to do: it waits for the states of many files itself, which takes a third of the
 * processor's time of being told of each. A disk that is slow to answer is asked for several at one time.
 */
export const waitingNodeFiles: Files = {
  ...nodeFiles,
  async stats(paths) {
    const found: (FileStat | undefined)[] = [];
    const end = performance.now() + mostWaiting;
    while (found.length < paths.length && performance.now() < end)
      found.push(waitForStat(paths[found.length]));
    const others = paths.slice(found.length);
    return others.length > 0 ? found.concat((await nodeFiles.stats?.(others)) ?? []) : found;
  },
};
