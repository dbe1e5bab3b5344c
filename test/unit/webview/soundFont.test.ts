import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FontFromPage, FontToPage } from '../../../client/soundFont/messages';
import type { FontFacts } from '../../../server/protocol/requests/fontRequests';
import type { OpenedPage } from './pageBrowser';
import { accessibilityFaults, hasBrowser, PageBrowser, send, sent, themeNames } from './pageBrowser';

const markup = '<img src=x onerror="window.broken = true">';

const facts: FontFacts = {
  name: 'Mill reeds',
  version: '2.04',
  texts: [
    { kind: 'copyright', text: `Free for all ${markup}` },
    { kind: 'tools', text: 'By hand' },
  ],
  bytes: 12_345_678,
  bits: 24,
  samples: 1,
  presets: [
    { bank: 0, program: 0, name: 'Reed', regions: 12, keys: [48, 72], velocities: [1, 127] },
    { bank: 0, program: 5, name: markup, regions: 1, keys: [60, 60], velocities: [1, 63] },
    { bank: 128, program: 0, name: 'Empty', regions: 0 },
  ],
  problems: [`Generator 200 has no meaning. ${markup}`],
};

describe.skipIf(!hasBrowser)('the page of a SoundFont in a browser', () => {
  let pages: PageBrowser;
  beforeAll(async () => {
    pages = await PageBrowser.start('soundFont', 'sound-font');
  });
  afterAll(() => pages?.close());

  const tell = (page: Page, message: FontToPage) => send(page, message);
  const last = async (page: Page) => (await sent<FontFromPage | { type: 'ready' }>(page)).at(-1);
  const open = async (how: OpenedPage = {}) => {
    const page = await pages.open(how);
    await tell(page, { type: 'font', file: 'reeds.sf2', facts });
    return page;
  };

  it('says that it is ready, and why there is nothing to show', async () => {
    const page = await pages.open();
    expect(await last(page)).toEqual({ type: 'ready' });
    expect(await page.getByRole('status').textContent()).toBe('The SoundFont is being read.');
    await tell(page, {
      type: 'problem',
      file: 'cut.sf2',
      reason: 'This SoundFont cannot be read: it is cut short.',
    });
    expect(await page.getByRole('heading', { name: 'cut.sf2' }).isVisible()).toBe(true);
    expect(await page.getByText('it is cut short.').isVisible()).toBe(true);
    expect(await page.getByRole('button').count()).toBe(0);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.close();
  });

  it('shows facts, what is odd, and presets, all of it escaped', async () => {
    const page = await open();
    expect(await page.getByRole('heading', { name: 'Mill reeds' }).isVisible()).toBe(true);
    for (const text of [
      'reeds.sf2, 12.3 MB',
      'SoundFont 2.04, 24 bit, 1 sample',
      `Free for all ${markup}`,
      facts.problems[0]!,
    ])
      expect(await page.getByText(text).count()).toBe(1);
    const row = page.getByRole('row').filter({ hasText: 'Reed' });
    expect((await row.getByRole('cell').allTextContents()).slice(0, 4)).toEqual([
      '0:0',
      '12',
      'C3–C5',
      '1–127',
    ]);
    expect(await page.getByRole('rowheader', { name: markup }).isVisible()).toBe(true);
    expect(await page.locator('img').count()).toBe(0);
    expect(await page.evaluate('window.broken')).toBeUndefined();
    await page.close();
  });

  it('tells what is to be opened or converted, and offers neither for what is empty', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'Show 0:0 Reed as text' }).click();
    expect(await last(page)).toEqual({ type: 'open', preset: { bank: 0, program: 0 } });
    await page.getByRole('button', { name: `Convert 0:5 ${markup} to SFZ` }).click();
    expect(await last(page)).toEqual({ type: 'convert', preset: { bank: 0, program: 5 } });
    await page.getByRole('button', { name: 'Convert All to SFZ…' }).click();
    expect(await last(page)).toEqual({ type: 'convert' });
    expect(
      await page.getByRole('button', { name: 'Show 128:0 Empty as text' }).getAttribute('aria-disabled'),
    ).toBe('true');
    await page.close();
  });

  it('narrows the presets down by words and numbers, and remembers that', async () => {
    const page = await open({ state: { filter: '128:' } });
    expect(await page.getByRole('row').count()).toBe(2);
    expect(await page.getByRole('searchbox').inputValue()).toBe('128:');
    await page.getByRole('searchbox').fill('reed 0:0');
    expect(await page.getByRole('rowheader').allTextContents()).toEqual(['Reed']);
    expect(await page.getByRole('status').textContent()).toBe('1 of 3 presets');
    expect(await page.evaluate('window.kept')).toEqual({ filter: 'reed 0:0' });
    await page.close();
  });

  it.each(themeNames)('can be read and used by everybody in the theme %s', async (theme) => {
    const page = await open({ theme, width: 420 });
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(pages.troubles).toEqual([]);
    await page.close();
  });
});
