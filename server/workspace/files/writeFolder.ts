import { mkdir, readdir, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { OutputContent } from '../../model/output';
import { folderOf } from '../../model/paths';
import { writeWhole } from './writeWhole';

/** A folder that nothing was written to for so long, in milliseconds, is left over from a run that was killed. */
const leftOverAfter = 60_000;

/**
 * Writes a folder whole or not at all: its files go to a new folder beside it, which then takes its place. A folder that was
 * there goes. Paths of files start from the folder. Fails with the system's error; what was there is then as it was.
 */
export async function writeFolder(path: string, files: ReadonlyMap<string, OutputContent>): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  await clearLeftOvers(path);
  const beside = `${path}.${process.pid}.part`;
  const before = `${path}.${process.pid}.before.part`;
  try {
    await rm(beside, { recursive: true, force: true });
    for (const inner of new Set([...files.keys()].map(folderOf)))
      await mkdir(join(beside, inner), { recursive: true });
    for (const [file, content] of files) await writeWhole(join(beside, file), content);
    const isThere = await stat(path).then(
      () => true,
      () => false,
    );
    if (isThere) await rename(path, before);
    try {
      await rename(beside, path);
    } catch (error) {
      if (isThere) await rename(before, path);
      throw error;
    }
    await rm(before, { recursive: true, force: true });
  } catch (error) {
    await rm(beside, { recursive: true, force: true });
    throw error;
  }
}

/** Removes what runs that were killed have left beside a folder; one that was moved away and nothing took its place comes back. */
async function clearLeftOvers(path: string): Promise<void> {
  const folder = dirname(path);
  const start = basename(path);
  for (const name of await readdir(folder)) {
    const left = name.startsWith(start) ? /^\.\d+(\.before)?\.part$/.exec(name.slice(start.length)) : null;
    if (!left) continue;
    const found = await stat(join(folder, name));
    if (Date.now() - found.mtimeMs < leftOverAfter) continue;
    const isMissing = await stat(path).then(
      () => false,
      () => true,
    );
    if (left[1] !== undefined && isMissing) await rename(join(folder, name), path);
    else await rm(join(folder, name), { recursive: true, force: true });
  }
}
