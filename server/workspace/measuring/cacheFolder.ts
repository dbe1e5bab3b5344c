import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { version } from '../../../package.json';
import type { CacheStorage } from './measureCache';

/** Bytes that all files of a cache folder may take; past it those that were unused longest go. */
const mostBytes = 64 * 1024 * 1024;
const ending = '.measures';
/** Uses within this many milliseconds count as one. */
const sameUse = 60 * 60 * 1000;

/**
 * Keeps remembered texts in a folder of the disk, a file each, the folder made when something is written. The first
 * line of a file holds the version of the program, the name that the text belongs to and a sum over the text: a file
 * that was damaged, or that another version wrote, is passed over and written anew.
 */
export function cacheFolder(folder: string, limit = mostBytes): CacheStorage {
  const fileOf = (name: string) => `${folder}/${sumOf(name).slice(0, 32)}${ending}`;
  return {
    async read(name) {
      const path = fileOf(name);
      try {
        const found = await stat(path);
        if (found.size > limit) return undefined;
        const whole = await readFile(path, 'utf8');
        const end = whole.indexOf('\n') + 1;
        const text = whole.slice(end);
        if (whole.slice(0, end) !== headOf(name, text)) return undefined;
        // Reading is use; the time tells which files were unused longest.
        const now = new Date();
        if (now.getTime() - found.mtimeMs > sameUse) await utimes(path, now, now).catch(() => {});
        return text;
      } catch {
        return undefined;
      }
    },

    async write(name, text) {
      const path = fileOf(name);
      const beside = `${path}.${process.pid}.part`;
      try {
        await mkdir(folder, { recursive: true });
        await writeFile(beside, headOf(name, text) + text);
        await rename(beside, path);
        await keepWithin(folder, limit);
      } catch {
        await rm(beside, { force: true }).catch(() => {});
      }
    },
  };
}

function headOf(name: string, text: string): string {
  return `zonewright ${version} ${JSON.stringify(name)} ${sumOf(text)}\n`;
}

function sumOf(text: string): string {
  return createHash('sha256').update(text).digest('hex');
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
  for (const { path, size } of files) {
    bytes += size;
    if (bytes > limit) await rm(path, { force: true }).catch(() => {});
  }
}
