import { mkdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type {
  RecordingsFromPage,
  RecordingsToPage,
  ShownRecordings,
} from '../../../client/recordingsPreview/messages';
import { instrumentOfRecordings } from '../../../server/workspace/readRecordingsFolder';
import { accessibilityFaults } from './accessibility';
import { hasBrowser } from './browser';
import type { OpenedPage } from './pageBrowser';
import { PageBrowser, send, sent, themeNames } from './pageBrowser';

const heard = (path: string, pitch: number | undefined, loudness: number | undefined = -20) => ({
  ...{ path, pitch, loudness, frames: 1000, rootKey: undefined, loop: undefined, content: path },
});
const { decisions, notes } = instrumentOfRecordings(
  [
    heard('tarn harp C3 soft.wav', 60, -30),
    heard('tarn harp C3 loud.wav', 60.1, -18),
    heard('tarn harp G3 soft.wav', 67, -31),
    heard('tarn harp G3 loud.wav', undefined, -17),
    heard('<b>room</b>.wav', undefined),
  ],
  '/rec',
  '/rec',
);
const shown: ShownRecordings = {
  ...{ folder: 'Tarn', format: 'sfz', leftOut: [], unreadable: ['torn.wav'], regionCount: 4 },
  ...{ decisions, notes: notes.map(({ kind, message }) => ({ kind, message })) },
  text: '<region> sample=a.wav\n',
};

describe.skipIf(!hasBrowser)('the preview of a folder of recordings in a browser', () => {
  const pages = new PageBrowser('recordingsPreview', 'recordings-preview');
  const last = async (page: Page) => (await sent<RecordingsFromPage | { type: 'ready' }>(page)).at(-1);
  const tell = (page: Page, now: ShownRecordings) => {
    const message: RecordingsToPage = { type: 'recordings', shown: now };
    return send(page, message);
  };
  const open = async (how: OpenedPage = {}) => {
    const page = await pages.open({ width: 1200, ...how });
    await tell(page, shown);
    return page;
  };

  it('shows the place of each recording with the reasons, and what is left out', async () => {
    const page = await open();
    const row = page.getByRole('row', { name: 'tarn harp C3 loud.wav' });
    for (const words of [
      'C4',
      '64–127',
      '-10',
      'It sounds at 60 (C4), 10 cents above it; tune corrects that.',
    ])
      expect(await row.textContent()).toContain(words);
    expect(await row.textContent()).toContain('Its name says "loud": layer 2 of 2.');
    expect(await page.getByRole('row', { name: 'G3 loud' }).textContent()).toContain(
      '"G3" in its name means 67 (G4)',
    );
    expect(await page.getByRole('row', { name: '<b>room</b>.wav' }).textContent()).toContain('Left out: ');
    expect(await page.getByText('torn.wav cannot be read as audio.').isVisible()).toBe(true);
    expect(await page.getByText('Middle C is called C3').isVisible()).toBe(true);
    expect((await page.getByRole('status').textContent())?.trim()).toBe(
      '4 regions; 1 recording is left out.',
    );
  });

  it('takes what a person decides', async () => {
    const page = await open();
    await page.getByRole('checkbox', { name: 'Take tarn harp C3 soft.wav' }).uncheck();
    expect(await last(page)).toEqual({ type: 'take', path: 'tarn harp C3 soft.wav', isTaken: false });
    const leftOut = ['tarn harp C3 soft.wav'];
    const less = { ...shown, leftOut, decisions: decisions.filter(({ path }) => path !== leftOut[0]) };
    await tell(page, less);
    await page.getByRole('checkbox', { name: 'Take tarn harp C3 soft.wav' }).check();
    expect(await last(page)).toEqual({ type: 'take', path: 'tarn harp C3 soft.wav', isTaken: true });
    await page.keyboard.press('Control+Enter');
    expect(await last(page)).toEqual({ type: 'write' });
    await tell(page, { ...shown, regionCount: 0, text: '' });
    expect(await page.locator('#write').getAttribute('aria-disabled')).toBe('true');
  });

  it.each(themeNames)('can be read by everybody in the theme %s', async (theme) => {
    const page = await open({ theme });
    expect(await accessibilityFaults(page)).toEqual([]);
    mkdirSync('out/screenshots', { recursive: true });
    await page.screenshot({ path: `out/screenshots/recordings-page-${theme}.png` });
    expect(pages.troubles).toEqual([]);
  });
});
