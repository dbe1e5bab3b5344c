import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { pageDocument } from '../../../client/webview/pageDocument';
import { sharedBrowser } from './browser';
import type { Content } from './pageServer';
import { servePages } from './pageServer';
import themeData from './themes.json';

/** Tests and benches run in the root of the project. */
const pages = join(process.cwd(), 'dist/pages');

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

/** The page that is open in the tab, and what it is made of. */
interface Shown {
  of: PageBrowser;
  html: string;
  css: string;
}

interface Tab {
  page: Page;
  /** The address of what it shows. */
  host: string;
}

/** The tab that all tests of a worker open their pages in, one after the other: a tab of its own took each a third of a second. */
let tab: Promise<Tab> | undefined;
let shown: Shown | undefined;
const bundled = new Map<string, Buffer>();

async function openTab(): Promise<Tab> {
  const browser = await sharedBrowser();
  const context = await browser.newContext({ reducedMotion: 'reduce' });
  // On a busy machine a page may take longer than the driver's half a minute.
  context.setDefaultTimeout(100_000);
  const page = await context.newPage();
  page.on('console', (message) => {
    if (message.type() === 'error') shown?.of.troubles.push(message.text());
  });
  page.on('pageerror', (error) => shown?.of.troubles.push(String(error)));
  return { page, host: await servePages(contentAt) };
}

function contentAt(path: string): Content | undefined {
  if (path === '/') return { contentType: 'text/html', body: shown?.html ?? '', stays: false };
  if (path === '/theme.css') return { contentType: 'text/css', body: shown?.css ?? '', stays: false };
  if (!/^\/[\w-]+\.(js|css)$/.test(path)) return undefined;
  const body = bundled.get(path) ?? readFileSync(join(pages, path));
  bundled.set(path, body);
  return { contentType: path.endsWith('js') ? 'text/javascript' : 'text/css', body, stays: true };
}

/** A bundled page of a web view in a browser; the bundles in `dist` are used. */
export class PageBrowser {
  /** What the page said in the console as an error: refusals by the content security policy are among these. */
  readonly troubles: string[] = [];
  readonly #name: string;
  readonly #id: string;

  /** The page of the folder `client/NAME`, which fills the element of an id. */
  constructor(name: string, id: string) {
    this.#name = name;
    this.#id = id;
  }

  /**
   * Opens the page afresh in place of the one that was open before; what it sends to the editor is kept in `window.sent`, what
   * it remembers in `window.kept`.
   */
  async open(how: OpenedPage = {}): Promise<Page> {
    const { theme = 'light', width = 900, height = 700 } = how;
    if (!existsSync(join(pages, `${this.#name}.js`)))
      throw new Error('No bundle of the page: run `node test/prepare.mjs`.');
    tab ??= openTab();
    const { page, host } = await tab;
    await page.mouse.move(0, 0);
    await page.setViewportSize({ width, height });
    const values = Object.entries(themes[theme].variables).map(
      ([name, value]) => `--vscode-${name}:${value}`,
    );
    shown = { of: this, html: this.#html(how, host), css: `:root{${values.join(';')}}` };
    await page.goto(`${host}/`);
    await untilReady(page);
    return page;
  }

  /** Shows a page that stands on its own, as the editor does in a theme. */
  async show(html: string, theme: ThemeName, width = 900): Promise<Page> {
    tab ??= openTab();
    const { page, host } = await tab;
    await page.setViewportSize({ width, height: 700 });
    const themed = html.replace('<body>', `<body class="${themes[theme].kinds}">`);
    shown = { of: this, html: themed, css: '' };
    await page.goto(`${host}/`);
    return page;
  }

  #html({ theme = 'light', state, strings, playsSound, makesPictures }: OpenedPage, host: string): string {
    const nonce = 'n0nce';
    const script = `window.sent = []; window.kept = ${JSON.stringify(state) ?? 'undefined'}; window.acquireVsCodeApi = () => ({ postMessage: (m) => window.sent.push(m), getState: () => window.kept, setState: (s) => { window.kept = s; } });`;
    const given = {
      title: 'A page',
      id: this.#id,
      scriptUri: `/${this.#name}.js`,
      styleUri: `/${this.#name}.css`,
      cspSource: host,
      nonce,
      language: 'en',
      strings,
      playsSound,
      makesPictures,
    };
    return pageDocument(given)
      .replace('<body>', `<body class="${themes[theme].kinds}">`)
      .replace(
        '<title>',
        () => `<script nonce="${nonce}">${script.replaceAll('<', '\\u003c')}</script><title>`,
      )
      .replace('<title>', '<link rel="stylesheet" href="/theme.css"><title>');
  }
}

/** The page's policy refuses what the browser's driver would wait with. */
async function untilReady(page: Page): Promise<void> {
  for (let tries = 0; tries < 1000; tries++) {
    if (await page.evaluate('window.sent.length')) return;
    await new Promise((resolve) => setTimeout(resolve, 10));
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
