// Runs the same tests in a desktop editor: one that it downloads, or the one that ZONEWRIGHT_EDITOR_EXECUTABLE names.
// Tests that need the screen are skipped; test/editor/run.mjs runs them.
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runTests } from '@vscode/test-electron';
import { writeUserSettings } from './host/editorServer.mjs';
import { conclude, followResults } from './host/results.mjs';
import { sourcePlaces } from './host/stackTrace.mjs';
import { buildExtension, bundleSuite } from './host/suiteBundle.mjs';
import { copyWorkspace } from './host/testWorkspace.mjs';

const repository = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const print = (line) => console.log(line);
const temporary = await mkdtemp(join(tmpdir(), 'zonewright-editor-'));
let status = 1;
try {
  await buildExtension(repository);
  const suite = await bundleSuite(repository, join(repository, 'test/editor/suite/index.ts'));
  const workspace = await copyWorkspace(repository, temporary);
  const userDataFolder = join(temporary, 'user');
  await writeUserSettings(userDataFolder);
  const resultsFile = join(temporary, 'results.jsonl');
  await writeFile(resultsFile, '');

  let stopReason;
  const editor = runTests({
    vscodeExecutablePath: process.env.ZONEWRIGHT_EDITOR_EXECUTABLE || undefined,
    extensionDevelopmentPath: repository,
    extensionTestsPath: suite,
    extensionTestsEnv: { ZONEWRIGHT_EDITOR_RESULTS: resultsFile, ZONEWRIGHT_EDITOR_ONLY: process.argv[2] },
    launchArgs: [
      workspace,
      '--user-data-dir',
      userDataFolder,
      '--disable-extensions',
      '--disable-workspace-trust',
    ],
  }).then(
    () => {
      stopReason = 'the editor ended';
    },
    (error) => {
      stopReason = `the editor ended: ${error.message}`;
    },
  );
  const totals = await followResults(resultsFile, {
    print,
    stopped: () => stopReason,
    explain: sourcePlaces(suite),
    secondsToStart: 600,
  });
  await editor;
  status = conclude(totals, print);
} finally {
  await rm(temporary, { recursive: true, force: true, maxRetries: 5 });
}
process.exit(status);
