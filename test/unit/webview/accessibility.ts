import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** The small form of axe-core, as its driver brings it along. */
const axeFile = createRequire(createRequire(__filename).resolve('@axe-core/playwright')).resolve(
  'axe-core/axe.min.js',
);
let axeCore: string | undefined;

/** axe-core on a page without frames. Its driver puts the large form of it there twice, and opens a second tab for the results. */
export async function axeOn(page: Page): Promise<AxeBuilder> {
  axeCore ??= readFileSync(axeFile, 'utf8');
  await page.evaluate(axeCore);
  return new AxeBuilder({ page, axeSource: '"is there"' })
    .setLegacyMode()
    .options({ resultTypes: ['violations'] });
}

/**
 * What axe-core objects to in a page (rules of WCAG 2.2 A and AA, and its best practices): one line each, none hoped for.
 * The open list of a choice is left out of one rule: it is scrolled with the arrow keys from where the focus is, as
 * WAI-ARIA 1.2 describes a combobox, so that a second stop within it would only be in the way.
 */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  const { violations } = await (await axeOn(page)).analyze();
  return violations.flatMap(({ id, nodes }) =>
    nodes
      .map(({ target, failureSummary }) => `${id}: ${target.join(' ')}: ${failureSummary}`)
      .filter((fault) => !/^scrollable-region-focusable: \S+,vscode-scrollable,/.test(fault)),
  );
}
