// Runs the extension's tests in a real editor host: an editor server with its web workbench, shown in Chromium without
// a screen. `node test/editor/run.mjs --help` lists what it takes.
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { findChromium } from './host/chromium.mjs';
import { startControlServer } from './host/controlServer.mjs';
import { installedEditor } from './host/editorInstall.mjs';
import { startEditorServer } from './host/editorServer.mjs';
import { lastLines } from './host/processes.mjs';
import { conclude, followResults } from './host/results.mjs';
import { sourcePlaces } from './host/stackTrace.mjs';
import { buildExtension, bundleSuite } from './host/suiteBundle.mjs';
import { copyWorkspace } from './host/testWorkspace.mjs';
import { startWorkbenchPage } from './host/workbenchPage.mjs';

const help = `node test/editor/run.mjs [options]

  --only TEXT         run only the tests whose name holds TEXT
  --no-build          take the extension in dist as it is
  --keep              leave the temporary workspace in place and print where it is
  --minutes N         give up after N minutes (default 8), the first set-up apart
  --extension FOLDER  test another extension than this one
  --suite FILE        run another test file than test/editor/suite/index.ts

Screenshots go to out/screenshots, the editor's log to out/editor/server.log.
ZONEWRIGHT_CHROMIUM names the browser, ZONEWRIGHT_EDITOR_CACHE the folder that keeps the editor.`;

const repository = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const print = (line) => console.log(line);
const endings = [];
let stopReason;
let following = false;
let stop;

process.exit(await main());

async function main() {
  const options = readOptions();
  if (options === undefined) return 2;
  if (!(Number(options.minutes) > 0)) {
    print(`--minutes takes a number above 0, not “${options.minutes}”.`);
    return 2;
  }
  if (options.help) {
    print(help);
    return 0;
  }
  if (process.platform === 'win32') {
    print('This runner needs Linux or macOS; on Windows use node test/editor/run-desktop.mjs.');
    return 1;
  }
  const browserPath = findChromium();
  if (browserPath === undefined) {
    print(
      'No Chromium found: install it (Debian: apt-get install chromium) or set ZONEWRIGHT_CHROMIUM to its path.',
    );
    return 1;
  }
  const interrupted = new Promise((settle) => {
    stop = (reason) => {
      stopReason ??= reason;
      if (!following) settle();
    };
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'])
      process.on(signal, () => stop(`stopped by ${signal}`));
  });
  try {
    const status = await Promise.race([runTests(options, browserPath), interrupted]);
    if (status !== undefined) return status;
    return conclude({ passed: 0, failed: 0, skipped: 0, finished: false, reason: stopReason }, print);
  } catch (error) {
    print(error instanceof Error ? error.message : String(error));
    return 1;
  } finally {
    for (const end of endings.reverse()) await end();
  }
}

function readOptions() {
  try {
    return parseArgs({
      options: {
        only: { type: 'string', default: '' },
        'no-build': { type: 'boolean', default: false },
        keep: { type: 'boolean', default: false },
        minutes: { type: 'string', default: '8' },
        extension: { type: 'string', default: repository },
        suite: { type: 'string', default: join(repository, 'test/editor/suite/index.ts') },
        help: { type: 'boolean', default: false },
      },
    }).values;
  } catch (error) {
    print(`${error.message}\n\n${help}`);
    return undefined;
  }
}

async function runTests(options, browserPath) {
  const serverFolder = await installedEditor(print);
  const minutes = Number(options.minutes);
  setTimeout(() => stop(`${minutes} minutes are over`), minutes * 60_000).unref();
  const extension = resolve(options.extension);
  if (!options['no-build'] && extension === repository) await buildExtension(repository);
  const suite = await bundleSuite(repository, resolve(options.suite));

  const temporary = await mkdtemp(join(tmpdir(), 'zonewright-editor-'));
  if (options.keep) print(`Workspace: ${temporary}/workspace`);
  else endings.push(() => rm(temporary, { recursive: true, force: true, maxRetries: 5 }));
  const workspace = await copyWorkspace(repository, temporary);
  const resultsFile = join(temporary, 'results.jsonl');
  await writeFile(resultsFile, '');
  const screenshotFolder = join(repository, 'out/screenshots');
  const logFile = join(repository, 'out/editor/server.log');
  await mkdir(dirname(logFile), { recursive: true });

  const browser = await startWorkbenchPage(browserPath);
  endings.push(browser.close);
  const control = await startControlServer({ ...browser, screenshotFolder });
  endings.push(control.close);
  const server = await startEditorServer({
    serverFolder,
    dataFolder: join(temporary, 'data'),
    logFile,
    environment: {
      ZONEWRIGHT_EDITOR_RESULTS: resultsFile,
      ZONEWRIGHT_EDITOR_CONTROL: control.url,
      ZONEWRIGHT_EDITOR_ONLY: options.only,
    },
  });
  endings.push(server.stop);
  server.exited.then(() => {
    stopReason ??= 'the editor server ended';
  });
  await browser.open({ port: server.port, workspace, extension, suite });

  following = true;
  const totals = await followResults(resultsFile, {
    print,
    stopped: () => stopReason,
    explain: sourcePlaces(suite),
  });
  if (!totals.finished) {
    await browser.page.screenshot({ path: join(screenshotFolder, 'not-finished.png') }).catch(() => {});
    if (stopReason === undefined) print(lastLines(await readFile(logFile, 'utf8'), 15));
  }
  return conclude(totals, print);
}
