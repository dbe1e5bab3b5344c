// Gives a run of the tests a temporary folder of its own, and fails the run where anything is left there at its end.
import { chmodSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';

const start = 'zonewright-tests-';
/**
 * What a browser, and the sound library that it and other programs load, keep; they end with their worker, which is not waited for on a
 * busy machine.
 */
const ofPrograms = /^(?:playwright|org\.chromium|pulse-)/;

/** Has this process, and all that it starts from now on, put what is temporary into a folder that goes when this process ends. */
export function useOwnTemporaryFolder(): void {
  // Vitest reads its configuration once for each of its projects.
  if (basename(tmpdir()).startsWith(start)) return;
  const folder = mkdtempSync(join(tmpdir(), start));
  // As the temporary folder itself: some tests start programs as another user.
  chmodSync(folder, 0o1777);
  // Windows reads the last two, others the first (os.tmpdir of Node).
  for (const name of ['TMPDIR', 'TEMP', 'TMP']) process.env[name] = folder;
  // The last that this process does: all workers have ended, and so has what Vitest keeps there itself.
  process.once('exit', (code) => {
    const left = readdirSync(folder).filter((name) => !ofPrograms.test(name));
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
    // A run that fails already, or is ended from outside, does not come to clear up.
    if (left.length === 0 || code !== 0) return;
    console.error(
      `Tests left ${left.length} files or folders behind in the temporary folder: ${left.sort().join(', ')}. Ask temporaryFolder (test/temporaryFolder.ts) for one that goes when its test file ends.`,
    );
    process.exitCode = 1;
  });
}
