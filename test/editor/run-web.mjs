// Runs the extension in an editor that a browser hosts, with no machine behind it: the extension host and the language
// server are web workers, the files are in memory. ZONEWRIGHT_CHROMIUM names the browser.
import { appendFile, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { chromium } from 'playwright-core';
import { chromiumFlags, findChromium } from './host/chromium.mjs';
import { installedEditor } from './host/editorInstall.mjs';
import { conclude, followResults } from './host/results.mjs';
import { buildExtension } from './host/suiteBundle.mjs';
import { frameFor } from './host/webViews.mjs';
import { serveWebWorkbench } from './host/webWorkbench.mjs';
import { files } from './web/files.mjs';

const repository = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const print = (line) => console.log(line);
const result = /zonewright-result (\{.*\})/;

process.exit(await main());

async function main() {
  const executablePath = findChromium();
  if (executablePath === undefined) {
    print(
      'No Chromium found: install it (Debian: apt-get install chromium) or set ZONEWRIGHT_CHROMIUM to its path.',
    );
    return 1;
  }
  const editorFolder = await installedEditor(print);
  await buildExtension(repository);
  const temporary = await mkdtemp(join(tmpdir(), 'zonewright-web-'));
  const browser = await chromium.launch({ executablePath, headless: true, args: chromiumFlags });
  let server;
  try {
    const memoryFolder = join(temporary, 'memory');
    await makeMemoryExtension(memoryFolder);
    server = await serveWebWorkbench({
      editorFolder,
      extensionFolder: repository,
      memoryFolder,
      folder: { scheme: 'memory-files', authority: 'band', path: '/instruments' },
    });
    return await runIn(
      await browser.newPage({ viewport: { width: 1440, height: 900 } }),
      server.url,
      temporary,
    );
  } finally {
    await browser.close();
    server?.close();
    await rm(temporary, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function runIn(page, url, temporary) {
  const resultsFile = join(temporary, 'results.jsonl');
  await writeFile(resultsFile, '');
  let written = Promise.resolve();
  page.on('console', (message) => {
    const line = result.exec(message.text())?.[1];
    if (line !== undefined) written = written.then(() => appendFile(resultsFile, `${line}\n`));
  });
  await page.goto(url);
  const explain = (message) => message;
  const totals = await followResults(resultsFile, { print, stopped: () => undefined, explain });
  await showMap(page, totals);
  if (totals.failed > 0 || !totals.finished) {
    const folder = join(repository, 'out/screenshots');
    await mkdir(folder, { recursive: true });
    await page.screenshot({ path: join(folder, 'web-failed.png') });
  }
  return conclude(totals, print);
}

/** The tests cannot see the screen; this looks whether the map drew the three regions of the instrument. */
async function showMap(page, totals) {
  try {
    const frame = await frameFor(page, '#keyboard-map', 15);
    await frame.locator('[id^=shape-]').nth(2).waitFor({ timeout: 15_000 });
    totals.passed++;
    print('  ok    the keyboard map shows the regions');
  } catch (error) {
    totals.failed++;
    print(`  FAIL  the keyboard map shows the regions\n        ${error.message}`);
  }
}

async function makeMemoryExtension(folder) {
  await build({
    absWorkingDir: repository,
    entryPoints: { main: 'test/editor/web/memoryFiles.ts', suite: 'test/editor/web/suite.ts' },
    outdir: folder,
    bundle: true,
    platform: 'browser',
    target: 'es2022',
    format: 'cjs',
    external: ['vscode'],
    logLevel: 'warning',
  });
  const description = {
    name: 'memory-files',
    publisher: 'test',
    version: '0.0.1',
    engines: { vscode: '^1.97.0' },
    browser: './main.js',
    activationEvents: ['onFileSystem:memory-files'],
  };
  await writeFile(join(folder, 'package.json'), JSON.stringify(description));
  const given = Object.entries(files).map(([path, content]) => [
    path,
    Buffer.from(content).toString('base64'),
  ]);
  await writeFile(join(folder, 'files.json'), JSON.stringify(Object.fromEntries(given)));
}
