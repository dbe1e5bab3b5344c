import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { pageDocument } from '../../../client/webview/pageDocument';
import themeData from './themes.json';

const host = 'https://page.test';
/** Tests and benches run in the root of the project. */
const pages = join(process.cwd(), 'dist/pages');
const executable = process.env.ZONEWRIGHT_CHROMIUM ?? '/usr/bin/chromium';

/** Whether there is a browser to test in. */
export const hasBrowser = existsSync(executable);

export type ThemeName = keyof typeof themeData;

/** A kind of theme: the classes of the body, and the variables that are set, without `--vscode-`. */
export interface Theme {
  kinds: string;
  variables: Readonly<Record<string, string>>;
}

/**
 * The default themes of VS Code 1.100 (MIT licence), as its web view sets them, those variables that pages and controls
 * ask for. Read in the real editor; variables that a theme leaves out are left out.
 */
export const themes: Readonly<Record<ThemeName, Theme>> = themeData;

export const themeNames = Object.keys(themeData) as ThemeName[];

/** How a page is opened: as the web view of the editor does. */
export interface OpenedPage {
  theme?: ThemeName;
  width?: number;
  height?: number;
  /** What the page has remembered before. */
  state?: object;
  /** Translations, and whether its policy allows sound. */
  strings?: Readonly<Record<string, string>>;
  playsSound?: boolean;
  makesPictures?: boolean;
}

/** A browser with a bundled page of a web view; the bundles in `dist` are used. */
export class PageBrowser {
  /** What the page said in the console as an error: refusals by the content security policy are among these. */
  readonly troubles: string[] = [];
  readonly #name: string;
  readonly #id: string;
  readonly #browser: Browser;

  private constructor(name: string, id: string, browser: Browser) {
    this.#name = name;
    this.#id = id;
    this.#browser = browser;
  }

  /** Starts the browser for the page of the folder `client/NAME`, which fills the element of an id. */
  static async start(name: string, id: string): Promise<PageBrowser> {
    if (!existsSync(join(pages, `${name}.js`)))
      throw new Error('No bundle of the page: run `node test/prepare.mjs`.');
    const browser = await chromium.launch({
      executablePath: executable,
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
    return new PageBrowser(name, id, browser);
  }

  /** Opens the page; what it sends to the editor is kept in `window.sent`, what it remembers in `window.kept`. */
  async open(how: OpenedPage = {}): Promise<Page> {
    const { theme = 'light', width = 900, height = 700, state, strings, playsSound, makesPictures } = how;
    const context = await this.#browser.newContext({ viewport: { width, height }, reducedMotion: 'reduce' });
    const page = await context.newPage();
    page.on('console', (message) => {
      if (message.type() === 'error') this.troubles.push(message.text());
    });
    page.on('pageerror', (error) => this.troubles.push(String(error)));
    const { kinds, variables } = themes[theme];
    const html = pageDocument({
      title: 'A page',
      id: this.#id,
      scriptUri: `/${this.#name}.js`,
      styleUri: `/${this.#name}.css`,
      cspSource: host,
      nonce: 'n0nce',
      language: 'en',
      strings,
      playsSound,
      makesPictures,
    })
      .replace('<body>', `<body class="${kinds}">`)
      .replace('<title>', '<link rel="stylesheet" href="/theme.css"><title>');
    const values = Object.entries(variables).map(([name, value]) => `--vscode-${name}:${value}`);
    await page.route(`${host}/**`, async (route) => {
      const path = new URL(route.request().url()).pathname;
      if (path === '/') await route.fulfill({ contentType: 'text/html', body: html });
      else if (path === '/theme.css')
        await route.fulfill({ contentType: 'text/css', body: `:root{${values.join(';')}}` });
      else if (/^\/[\w-]+\.(js|css)$/.test(path))
        await route.fulfill({
          contentType: path.endsWith('js') ? 'text/javascript' : 'text/css',
          body: readFileSync(join(pages, path)),
        });
      else await route.fulfill({ status: 204 });
    });
    await page.addInitScript(
      `window.sent = []; window.kept = ${JSON.stringify(state) ?? 'undefined'}; window.acquireVsCodeApi = () => ({ postMessage: (m) => window.sent.push(m), getState: () => window.kept, setState: (s) => { window.kept = s; } });`,
    );
    await page.goto(`${host}/`);
    await untilReady(page);
    return page;
  }

  async close(): Promise<void> {
    await this.#browser.close();
  }
}

/** The page's policy refuses what the browser's driver would wait with. */
async function untilReady(page: Page): Promise<void> {
  for (let tries = 0; tries < 200; tries++) {
    if (await page.evaluate('window.sent.length')) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error('The page does not say that it is ready.');
}

/** Sends a message of the host to a page and waits until it is drawn. */
export async function send(page: Page, message: unknown): Promise<void> {
  await page.evaluate(
    `window.dispatchEvent(new MessageEvent('message', { data: ${JSON.stringify(message)} })); new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)))`,
  );
}

/** What a page has told its host so far. */
export function sent<Message>(page: Page): Promise<Message[]> {
  return page.evaluate('window.sent');
}

/**
 * What axe-core objects to in a page (rules of WCAG 2.2 A and AA, and its best practices): one line each, none hoped for.
 * The open list of a choice is left out of one rule: it is scrolled with the arrow keys from where the focus is, as
 * WAI-ARIA 1.2 describes a combobox, so that a second stop within it would only be in the way.
 */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.flatMap(({ id, nodes }) =>
    nodes
      .map(({ target, failureSummary }) => `${id}: ${target.join(' ')}: ${failureSummary}`)
      .filter((fault) => !/^scrollable-region-focusable: \S+,vscode-scrollable,/.test(fault)),
  );
}

/** Chooses in a list of a page as a person does. */
export async function choose(page: Page, list: string, option: string): Promise<void> {
  await page.getByRole('combobox', { name: list, exact: true }).click();
  await page.getByRole('option', { name: option, exact: true }).click();
}

/** A colour of a theme as a browser computes it. */
export function rgb(hex: string): string {
  return `rgb(${[1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)).join(', ')})`;
}

/** A computed style of the first element that a selector finds. */
export function styleOf(page: Page, selector: string, property: string): Promise<string> {
  return page.evaluate(`getComputedStyle(document.querySelector(${JSON.stringify(selector)})).${property}`);
}
