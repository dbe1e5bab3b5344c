import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import type { Browser, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { pageDocument } from '../../client/pageDocument';

const host = 'http://page.test';

/** How a page is opened: as the web view of the editor does, in a theme. */
export interface OpenedPage {
  title: string;
  id: string;
  /** The kind of theme, as the editor names it on the body. */
  theme: string;
  /** Values of theme variables without `--vscode-`. */
  variables: Readonly<Record<string, string>>;
  width: number;
  height: number;
}

/** A browser with the bundled script and style sheet of a page of a web view. */
export class PageBrowser {
  /** What the page said in the console as an error: refusals by the content security policy are among these. */
  readonly troubles: string[] = [];
  readonly #name: string;
  readonly #folder: string;
  readonly #browser: Browser;

  private constructor(name: string, folder: string, browser: Browser) {
    this.#name = name;
    this.#folder = folder;
    this.#browser = browser;
  }

  /** Bundles the page of `client/NAME/page` as NAME.js and style.css and starts the browser. */
  static async start(executablePath: string, name: string): Promise<PageBrowser> {
    const folder = mkdtempSync(join(tmpdir(), 'page-'));
    const page = join(__dirname, '../../client', name, 'page');
    await build({
      entryPoints: { [name]: join(page, 'main.ts'), style: join(page, 'page.css') },
      bundle: true,
      format: 'iife',
      target: 'es2022',
      outdir: folder,
      logLevel: 'error',
    });
    const browser = await chromium.launch({
      executablePath,
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    });
    return new PageBrowser(name, folder, browser);
  }

  /** Opens the page; what it sends to the editor is kept in `window.sent`. */
  async open({ title, id, theme, variables, width, height }: OpenedPage): Promise<Page> {
    const page = await this.#browser.newPage({ viewport: { width, height } });
    page.on('console', (message) => {
      if (message.type() === 'error') this.troubles.push(message.text());
    });
    page.on('pageerror', (error) => this.troubles.push(String(error)));
    const script = `/${this.#name}.js`;
    const html = pageDocument({
      title,
      id,
      scriptUri: script,
      styleUri: '/style.css',
      cspSource: host,
      nonce: 'n0nce',
      language: 'en',
    })
      .replace('<body>', `<body class="${theme}">`)
      .replace('<title>', '<link rel="stylesheet" href="/theme.css"><title>');
    const values = Object.entries(variables).map(([name, value]) => `--vscode-${name}:${value}`);
    await page.route(`${host}/**`, async (route) => {
      const path = new URL(route.request().url()).pathname;
      if (path === '/') await route.fulfill({ contentType: 'text/html', body: html });
      else if (path === '/theme.css')
        await route.fulfill({ contentType: 'text/css', body: `:root{${values.join(';')}}` });
      else if (path === script || path === '/style.css')
        await route.fulfill({
          contentType: path.endsWith('js') ? 'text/javascript' : 'text/css',
          body: readFileSync(join(this.#folder, path)),
        });
      else await route.fulfill({ status: 204 });
    });
    await page.addInitScript(
      'window.sent = []; window.acquireVsCodeApi = () => ({ postMessage: (m) => window.sent.push(m), getState: () => window.kept, setState: (s) => { window.kept = s; } });',
    );
    await page.goto(`${host}/`);
    return page;
  }

  async close(): Promise<void> {
    await this.#browser.close();
    rmSync(this.#folder, { recursive: true, force: true });
  }
}
