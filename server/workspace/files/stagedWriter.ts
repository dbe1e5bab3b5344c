import { randomUUID } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { open } from 'node:fs/promises';
import { hostname } from 'node:os';
import { dirname, join } from 'node:path';
import type { OutputContent } from '../../model/output';
import { isWithin } from '../../model/paths';
import { writeFolder } from './writeFolder';

/** The folder of files that are not whole yet, in each folder that is written to. */
const unfinished = '.unfinished';
/** Files of other machines are left over after so many milliseconds. */
const leftOverAfter = 24 * 60 * 60 * 1000;

/** Puts files in place whole or not at all. */
export interface StagedWriter {
  write(path: string, content: OutputContent): Promise<void>;
  writeFolder(path: string, files: ReadonlyMap<string, OutputContent>): Promise<void>;
  remove(path: string): Promise<void>;
}

/**
 * Writes files below some folders, each to a hidden folder of these first, from which it takes its place; so a program that is
 * ended at any moment leaves nothing half written, and what it leaves in the hidden folder {@link clearUnfinished} takes away.
 */
export function stagedWriter(roots: readonly string[]): StagedWriter {
  const made = new Set<string>();
  const makeFolder = (folder: string) => {
    if (made.has(folder)) return;
    mkdirSync(folder, { recursive: true });
    made.add(folder);
  };
  const put = async (path: string, content: OutputContent) => {
    const root = roots.find((one) => isWithin(one, path)) ?? dirname(path);
    makeFolder(join(root, unfinished));
    makeFolder(dirname(path));
    const beside = join(root, unfinished, `${hostname()} ${process.pid} ${randomUUID()}`);
    try {
      if (typeof content === 'object' && 'chunks' in content) {
        const file = await open(beside, 'wx');
        try {
          for await (const chunk of content.chunks()) await file.writeFile(chunk);
        } finally {
          await file.close();
        }
      } else writeFileSync(beside, content, { flag: 'wx' });
      renameSync(beside, path);
    } catch (error) {
      rmSync(beside, { force: true });
      throw error;
    }
  };
  return {
    async write(path, content) {
      try {
        await put(path, content);
      } catch (error) {
        if (!(error instanceof Error && 'code' in error && error.code === 'ENOENT')) throw error;
        // Another build that ended has taken the folder away.
        made.clear();
        await put(path, content);
      }
    },
    writeFolder,
    async remove(path) {
      rmSync(path, { force: true });
      removeEmpty(dirname(path), roots);
    },
  };
}

/** Takes away folders that nothing is left in, below the roots. */
function removeEmpty(folder: string, roots: readonly string[]): void {
  try {
    for (let at = folder; roots.some((root) => at !== root && isWithin(root, at)); at = dirname(at))
      rmdirSync(at);
  } catch {
    // Something is in it.
  }
}

/** Takes away what programs that were ended have left unfinished below some folders. */
export function clearUnfinished(roots: readonly string[]): void {
  for (const root of roots) {
    const folder = join(root, unfinished);
    if (!existsSync(folder)) continue;
    try {
      for (const name of readdirSync(folder))
        if (isLeftOver(join(folder, name), name)) rmSync(join(folder, name));
      rmdirSync(folder);
    } catch {
      // Another program writes there now.
    }
  }
}

function isLeftOver(path: string, name: string): boolean {
  const [, host, id] = /^(.*) (\d+) [\da-f-]+$/.exec(name) ?? [];
  if (host !== hostname()) return Date.now() - timeOf(path) > leftOverAfter;
  const pid = Number(id);
  return pid !== process.pid && !isRunning(pid);
}

function timeOf(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Number.POSITIVE_INFINITY;
}

function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
