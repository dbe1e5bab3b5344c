import { chromium } from 'playwright-core';
import { chromiumFlags } from './chromium.mjs';

/** Width and height of the workbench, in CSS pixels; screenshots have the same size. */
const viewport = { width: 1440, height: 900 };

/**
 * Starts Chromium and gives `{ page, open, problems, close }`. `open` loads the workbench of an editor server with a
 * folder, an extension under development and a test bundle; `problems` is a growing list of the errors that pages
 * (the workbench's and those in web views) wrote to their consoles or threw.
 */
export async function startWorkbenchPage(executablePath) {
  const browser = await chromium.launch({
    executablePath,
    headless: true,
    args: chromiumFlags,
    handleSIGINT: false,
    handleSIGTERM: false,
    handleSIGHUP: false,
  });
  const context = await browser.newContext({ viewport, permissions: ['clipboard-read', 'clipboard-write'] });
  const page = await context.newPage();
  const problems = [];
  page.on('console', (message) => {
    if (message.type() !== 'error') return;
    problems.push(problem(message.text(), message.location().url));
  });
  page.on('pageerror', (error) => {
    const source = /https?:\/\/[^\s)]+/.exec(error.stack ?? '')?.[0] ?? '';
    problems.push(problem(error.message, source));
  });

  const open = async ({ port, workspace, extension, suite }) => {
    const remote = (path) => `vscode-remote://127.0.0.1:${port}${encodeURI(path)}`;
    const payload = JSON.stringify([
      ['extensionDevelopmentPath', remote(extension)],
      ['extensionTestsPath', remote(suite)],
    ]);
    const query = new URLSearchParams({ folder: workspace, payload });
    await page.goto(`http://127.0.0.1:${port}/?${query}`);
  };
  return { page, open, problems, close: () => browser.close() };
}

/** What is written under an address of a web view's page, or of a file that it loads, came from there. */
function problem(text, source) {
  const inView = /vscode-resource|\/webview\/browser\/pre\//.test(source);
  return { text, source, inView };
}
