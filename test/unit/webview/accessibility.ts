import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

/** The small form of axe-core. */
const axeFile = createRequire(__filename).resolve('axe-core/axe.min.js');
let axeCore: string | undefined;

/**
 * What axe-core objects to in a page without frames (rules of WCAG 2.2 A and AA, and its best practices): one line each, none
 * hoped for. It is asked in the page itself: its driver for browsers looks for frames and carries all results over, which takes four times as long.
 * The open list of a choice is left out of one rule: it is scrolled with the arrow keys from where the focus is, as
 * WAI-ARIA 1.2 describes a combobox, so that a second stop within it would only be in the way.
 */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  axeCore ??= readFileSync(axeFile, 'utf8');
  await page.evaluate(axeCore);
  const faults: string[] = await page.evaluate(
    `axe.run({ resultTypes: ['violations'] }).then(({ violations }) => violations.flatMap(({ id, nodes }) =>
      nodes.map(({ target, failureSummary }) => id + ': ' + target.join(' ') + ': ' + failureSummary)))`,
  );
  return faults.filter((fault) => !/^scrollable-region-focusable: \S+,vscode-scrollable,/.test(fault));
}
