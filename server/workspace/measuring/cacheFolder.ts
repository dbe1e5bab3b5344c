import { createHash } from 'node:crypto';
import { appendFile, mkdir, readdir, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { version } from '../../../package.json';
import type { CacheStorage } from './measureCache';

/** Bytes that all files of a cache folder may take; past it those that were unused longest go. The newest stays. */
const mostBytes = 1024 * 1024 * 1024;
const ending = '.measures';
/** Uses within this many milliseconds count as one. */
const sameUse = 60 * 60 * 1000;

/**
 * Keeps remembered bytes in a folder of the disk, a file each, the folder made when something is written. The first
 * line of a file holds the version of the program, the name that the bytes belong to and a sum over them: a file
 * that was damaged, or that another version wrote, is passed over and written anew.
 */
export function cacheFolder(folder: string, limit = mostBytes): CacheStorage {
  // Looking through the folder at each write would take longer the more folders of samples there are.
  let unlooked = limit;
  const fileOf = (name: string) => `${folder}/${sumOf(name).slice(0, 32)}${ending}`;
  return {
    async read(name) {
      const path = fileOf(name);
      try {
        const found = await stat(path);
        const whole = await readFile(path);
        const end = whole.indexOf(10) + 1;
        const bytes = whole.subarray(end);
        if (whole.toString('utf8', 0, end) !== headOf(name, bytes)) return undefined;
        // Reading is use; the time tells which files were unused longest.
        const now = new Date();
        if (now.getTime() - found.mtimeMs > sameUse) await utimes(path, now, now).catch(() => {});
        return bytes;
      } catch {
        return undefined;
      }
    },

    async write(name, bytes) {
      const path = fileOf(name);
      const beside = `${path}.${process.pid}.part`;
      try {
        await mkdir(folder, { recursive: true });
        await writeFile(beside, headOf(name, bytes));
        await appendFile(beside, bytes);
        await rename(beside, path);
        unlooked += bytes.length;
        if (unlooked < limit / 64) return;
        unlooked = 0;
        await keepWithin(folder, limit);
      } catch {
        await rm(beside, { force: true }).catch(() => {});
      }
    },
  };
}

function headOf(name: string, bytes: Uint8Array): string {
  return `zonewright ${version} ${JSON.stringify(name)} ${sumOf(bytes)}\n`;
}

/** SHA-256 as hexadecimal digits. */
export function sumOf(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/** Takes away the files that were unused longest until the rest is within a number of bytes. */
async function keepWithin(folder: string, limit: number): Promise<void> {
  const names = (await readdir(folder)).filter((name) => name.endsWith(ending) || name.endsWith('.part'));
  const files = await Promise.all(
    names.map(async (name) => {
      const path = `${folder}/${name}`;
      const found = await stat(path).catch(() => undefined);
      return { path, size: found?.size ?? 0, used: found?.mtimeMs ?? 0 };
    }),
  );
  files.sort((a, b) => b.used - a.used);
  let bytes = 0;
  for (const [at, { path, size }] of files.entries()) {
    bytes += size;
    if (bytes > limit && at > 0) await rm(path, { force: true }).catch(() => {});
  }
}
