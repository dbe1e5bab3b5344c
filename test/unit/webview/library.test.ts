import { mkdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { LibraryFromPage, LibraryToPage } from '../../../client/library/messages';
import type { LibraryRow } from '../../../server/library/report/libraryRow';
import { accessibilityFaults } from './accessibility';
import { hasBrowser } from './browser';
import type { OpenedPage } from './pageBrowser';
import { PageBrowser, send, sent, themeNames } from './pageBrowser';

const markup = '<img src=x onerror="window.broken = true">';
const nothing = { errors: 0, warnings: 0, information: 0, assumed: 0, approximated: 0, dropped: 0 };
const rows: LibraryRow[] = [
  {
    ...{
      name: 'Quay bell',
      fileName: 'Quay bell',
      state: 'built',
      source: 'old/bell.sfz',
      text: 'sfz/Quay bell.sfz',
    },
    ...{
      regions: 12,
      keys: [48, 72],
      layers: 2,
      missing: 0,
      cents: 3.2,
      loudness: -19.5,
      licence: 'CC0 1.0',
    },
    ...{ ...nothing, warnings: 2, assumed: 1 },
    proof: { verdict: 'alike', worstDb: null, where: '' },
    doubts: [],
    shapes: [
      [48, 60, 1, 127],
      [61, 72, 64, 127],
    ],
  },
  {
    ...{
      name: 'Ferry reed',
      fileName: 'Ferry reed',
      state: 'stale',
      source: 'reed.tsv',
      text: 'sfz/Ferry reed.sfz',
    },
    ...{ regions: 100, keys: [36, 96], layers: 4, missing: 3 },
    ...{ ...nothing, errors: 3 },
    proof: {
      verdict: 'differs',
      worstDb: -23.1,
      where: 'key 60 (C4), velocity 64: Tunings in cents differ.',
    },
    doubts: ['3 of its 100 samples are not there.'],
    shapes: [[36, 96, 1, 127]],
  },
  {
    ...{
      name: markup,
      fileName: 'x',
      state: 'failed',
      source: 'x.txt',
      message: `This is no table. ${markup}`,
    },
    ...nothing,
    doubts: [],
    shapes: [],
  },
  {
    name: 'Harbour organ',
    fileName: 'Harbour organ',
    state: 'missing',
    source: 'o.sfz',
    ...nothing,
    doubts: [],
    shapes: [],
  },
];
const libraries: LibraryToPage = {
  type: 'libraries',
  libraries: [{ uri: 'file:///lib.json', title: 'Two rivers', rows, problems: ['No file fits "*.tsv".'] }],
};

describe.skipIf(!hasBrowser)('the page of libraries in a browser', () => {
  const pages = new PageBrowser('library', 'library');

  const tell = (page: Page, message: LibraryToPage) => send(page, message);
  const last = async (page: Page) => (await sent<LibraryFromPage | { type: 'ready' }>(page)).at(-1);
  const open = async (how: OpenedPage = {}) => {
    const page = await pages.open({ width: 1400, ...how });
    await tell(page, libraries);
    return page;
  };
  const names = (page: Page) => page.locator('tbody .name').allInnerTexts();

  it('says why there is nothing to show', async () => {
    const page = await pages.open();
    expect(await page.getByRole('status').textContent()).toContain('The library is being read.');
    await tell(page, { type: 'libraries', libraries: [] });
    expect(await page.getByRole('status').textContent()).toContain('zonewright library new');
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  it('shows each instrument as text, sorts by any column and narrows down by words', async () => {
    const page = await open();
    expect(await names(page)).toEqual(['Quay bell', 'Ferry reed', markup, 'Harbour organ']);
    expect(await page.evaluate('window.broken')).toBeUndefined();
    expect(await page.getByText('No file fits').isVisible()).toBe(true);
    await page.getByRole('button', { name: 'Regions' }).click();
    expect(await names(page)).toEqual(['Quay bell', 'Ferry reed', markup, 'Harbour organ']);
    await page.getByRole('button', { name: 'Regions' }).click();
    expect(await names(page)).toEqual(['Ferry reed', 'Quay bell', markup, 'Harbour organ']);
    expect(await page.getByRole('columnheader', { name: 'Regions' }).getAttribute('aria-sort')).toBe(
      'descending',
    );
    await page.getByRole('button', { name: 'Instrument' }).click();
    expect((await names(page)).slice(1)).toEqual(['Ferry reed', 'Harbour organ', 'Quay bell']);
    await page.getByRole('button', { name: 'Worst dB' }).click();
    await page.getByRole('button', { name: 'Worst dB' }).click();
    expect((await names(page)).slice(0, 2)).toEqual(['Ferry reed', 'Quay bell']);
    expect(await page.getByText('Tunings in cents differ.').isVisible()).toBe(true);
    expect(await page.getByRole('cell', { name: 'sounds alike' }).count()).toBe(1);
    await page.getByRole('button', { name: 'Instrument' }).click();
    await page.getByRole('searchbox').fill('reed changed');
    expect(await names(page)).toEqual(['Ferry reed']);
    expect(await page.getByRole('status').textContent()).toBe('1 of 4 instruments');
    expect(await page.evaluate('window.kept')).toEqual({ by: 'name', falls: false, filter: 'reed changed' });
  });

  it('leads to text, map, sound and source, and asks for a build', async () => {
    const page = await open();
    const places = {
      'Quay bell: Map': 'map',
      'Quay bell: Sound': 'sound',
      'Quay bell: Source': 'source',
      'Quay bell': 'text',
    };
    for (const [name, place] of Object.entries(places)) {
      await page.getByRole('button', { name, exact: true }).click();
      expect(await last(page)).toEqual({
        type: 'open',
        uri: 'file:///lib.json',
        fileName: 'Quay bell',
        place,
      });
    }
    await page.getByRole('button', { name: 'Harbour organ', exact: true }).click();
    expect(await last(page)).toMatchObject({ fileName: 'Harbour organ', place: 'source' });
    await page.locator('#build').click();
    expect(await last(page)).toEqual({ type: 'build', uri: 'file:///lib.json' });
    await tell(page, { type: 'progress', uri: 'file:///lib.json', done: 1, all: 4 });
    expect(await page.getByRole('status').textContent()).toBe('1 of 4 built');
    expect(await page.locator('#build').getAttribute('aria-disabled')).toBe('true');
    await tell(page, { type: 'progress', uri: '', done: 0, all: 0 });
    expect(await page.locator('#build').getAttribute('aria-disabled')).toBe('false');
  });

  it.each(themeNames)('can be read by everybody in the theme %s', async (theme) => {
    const page = await open({ theme });
    expect(await accessibilityFaults(page)).toEqual([]);
    mkdirSync('out/screenshots', { recursive: true });
    await page.screenshot({ path: `out/screenshots/library-page-${theme}.png` });
    expect(pages.troubles).toEqual([]);
  });
});
