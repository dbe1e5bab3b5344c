import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const made: string[] = [];

/** A fresh folder with a word in its name that tells what it is for. It goes when the test file ends. */
export function temporaryFolder(word: string): string {
  const folder = mkdtempSync(join(tmpdir(), `${word}-`));
  made.push(folder);
  return folder;
}

/** Removes all folders that were asked for. What a process that was just ended still writes there is removed at another try. */
export function removeTemporaryFolders(): void {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}
