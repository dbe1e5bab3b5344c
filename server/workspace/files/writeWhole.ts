import { rmSync } from 'node:fs';
import { lstat, open, readdir, readlink, realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import type { OutputContent } from '../../model/output';

/** Links that are followed at the most, as the system does. */
const mostLinks = 40;
/** A file that nothing was written to for so long, in milliseconds, and whose process is gone, is left over. */
const leftOverAfter = 60_000;

/**
 * Writes a file whole or not at all: the content goes to a new file beside it, which then takes its place. A link stays one:
 * the file that it leads to is written. Fails with the system's error where the folder cannot be written to; a file that was
 * there is then as it was. What an earlier write that was killed left beside it goes.
 */
export async function writeWhole(path: string, content: OutputContent): Promise<void> {
  const data = typeof content === 'object' && 'chunks' in content ? content.chunks() : inPieces(content);
  const target = await endOfLinks(path);
  const existing = await stat(target).catch(() => undefined);
  if (existing && !existing.isFile()) {
    // A device such as /dev/stdout cannot be replaced, only written to.
    await writeFile(target, data);
    return;
  }
  await clearLeftOvers(target);
  const beside = `${target}.${process.pid}.part`;
  const forget = removeWhenKilled(beside);
  try {
    // A file of that name that somebody else has put there is not written to.
    await rm(beside, { force: true });
    const file = await open(beside, 'wx', existing?.mode);
    try {
      await writeFile(file, data);
    } finally {
      await file.close();
    }
    await rename(beside, target);
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  } finally {
    forget();
  }
}

/** So many characters of a text are written at a time: all its bytes would take as much memory as the text. */
const pieceLength = 1 << 20;

/** A long text in pieces, none of which ends within a character. */
function inPieces(content: string | Uint8Array): string | Uint8Array | Iterable<string> {
  return typeof content === 'string' && content.length > pieceLength ? piecesOf(content) : content;
}

function* piecesOf(text: string): Iterable<string> {
  for (let start = 0; start < text.length; ) {
    let end = Math.min(text.length, start + pieceLength);
    const last = text.charCodeAt(end - 1);
    if (end < text.length && last >= 0xd800 && last < 0xdc00) end++;
    yield text.slice(start, end);
    start = end;
  }
}

/** Where a path leads, also where the last of its links leads to a file that is not there yet. */
async function endOfLinks(path: string): Promise<string> {
  let at = path;
  for (let followed = 0; followed < mostLinks; followed++) {
    const whole = await realpath(at).catch(() => undefined);
    if (whole !== undefined) return whole;
    const found = await lstat(at).catch(() => undefined);
    if (!found?.isSymbolicLink()) return at;
    at = resolve(dirname(at), await readlink(at));
  }
  return at;
}

/** Removes what processes that are gone have left beside a file. */
async function clearLeftOvers(path: string): Promise<void> {
  const folder = dirname(path);
  const start = `${basename(path)}.`;
  for (const name of await readdir(folder).catch(() => [])) {
    if (!name.startsWith(start)) continue;
    const [, id] = /^(\d+)\.part$/.exec(name.slice(start.length)) ?? [];
    if (id === undefined || isRunning(Number(id))) continue;
    const found = await lstat(join(folder, name)).catch(() => undefined);
    // Another machine may be writing in a shared folder.
    if (found?.isFile() && Date.now() - found.mtimeMs > leftOverAfter)
      await rm(join(folder, name), { force: true });
  }
}

function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/** Has a file removed when the process is told to end; answers how to undo that. */
function removeWhenKilled(path: string): () => void {
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
  const end = (signal: NodeJS.Signals) => {
    rmSync(path, { force: true });
    forget();
    process.kill(process.pid, signal);
  };
  const forget = () => {
    for (const signal of signals) process.off(signal, end);
  };
  for (const signal of signals) process.on(signal, end);
  return forget;
}
