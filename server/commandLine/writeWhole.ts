import { rename, rm, stat, writeFile } from 'node:fs/promises';
import type { OutputContent } from '../model/output';

/**
 * Writes a file whole or not at all: the content goes to a new file beside it, which then takes its place. Fails with
 * the system's error where the folder cannot be written to; a file that was there is then as it was.
 */
export async function writeWhole(path: string, content: OutputContent): Promise<void> {
  const data = typeof content === 'object' && 'chunks' in content ? content.chunks() : content;
  const existing = await stat(path).catch(() => undefined);
  if (existing && !existing.isFile()) {
    // A device such as /dev/stdout cannot be replaced, only written to.
    await writeFile(path, data);
    return;
  }
  const beside = `${path}.${process.pid}.part`;
  try {
    await writeFile(beside, data, existing ? { mode: existing.mode } : {});
    await rename(beside, path);
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}
