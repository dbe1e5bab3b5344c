import { existsSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { chromium } from 'playwright-core';

const executable = process.env.ZONEWRIGHT_CHROMIUM ?? '/usr/bin/chromium';

/** Whether there is a browser to test in: Chromium where Debian puts it, or where ZONEWRIGHT_CHROMIUM says. */
export const hasBrowser = existsSync(executable);

let browser: Promise<Browser> | undefined;

/** The one browser of all tests of a worker, started when first asked for; it ends with the worker. Close contexts and pages, not the browser. */
export function sharedBrowser(): Promise<Browser> {
  browser ??= chromium.launch({
    executablePath: executable,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      // One process less for each frame to pass through.
      '--in-process-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
  return browser;
}
