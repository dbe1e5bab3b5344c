import type { Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import type { FontFromPage, FontToPage } from '../../../client/soundFont/messages';
import { buildMapScene } from '../../../server/map/scene';
import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import { packed } from '../../../server/protocol/conversion/packedData';
import type { FontFacts } from '../../../server/protocol/requests/fontRequests';
import { readSfz } from '../../../server/sfz/read';
import { soundOf } from '../../../server/sound/program/soundOf';
import { accessibilityFaults } from './accessibility';
import { hasBrowser } from './browser';
import type { OpenedPage } from './pageBrowser';
import { PageBrowser, send, sent, themeNames } from './pageBrowser';

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

const instrument = readSfz(
  '<region> sample=*sine lokey=36 hikey=59 volume=-30\n<region> sample=*sine lokey=60 hikey=84 volume=-30',
  { path: 'preset.sfz' },
);
const scene = buildMapScene(instrument);
const playable = playableInstrument(instrument);
const sound = {
  type: 'sound',
  instrument: packed({ playable, program: soundOf(instrument), controllers: [], sampleStates: [] }),
};

describe.skipIf(!hasBrowser)('the page of a SoundFont in a browser', () => {
  const pages = new PageBrowser('soundFont', 'sound-font');

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
  });

  it('shows the map of the preset that is chosen, and remembers which one', async () => {
    const page = await open({ state: { filter: '', preset: { bank: 128, program: 0 } } });
    // What was shown before plays nothing any more, so the first that does takes its place.
    expect(await last(page)).toEqual({ type: 'show', preset: { bank: 0, program: 0 } });
    expect(await page.locator('keyboard-chart').count()).toBe(0);
    await tell(page, { type: 'scene', scene, document: '0:0 Reed' });
    expect(await page.getByRole('heading', { name: '0:0 Reed' }).isVisible()).toBe(true);
    expect(await page.getByRole('option').count()).toBe(2);
    expect(await page.getByRole('button', { name: 'Reed', exact: true }).getAttribute('aria-current')).toBe(
      'true',
    );
    await page.getByRole('button', { name: markup, exact: true }).click();
    expect(await last(page)).toEqual({ type: 'show', preset: { bank: 0, program: 5 } });
    expect(await page.evaluate('window.kept.preset')).toEqual({ bank: 0, program: 5 });
    expect(await page.getByRole('button', { name: 'Empty', exact: true }).isDisabled()).toBe(true);
    await tell(page, { type: 'empty', reason: 'It is gone.' });
    expect(await page.locator('.chosen').textContent()).toContain('It is gone.');
  });

  it('shows the text of a region where it is asked for by keys, not by every press of a shape', async () => {
    const page = await open();
    await tell(page, { type: 'scene', scene, document: '0:0 Reed' });
    const { length } = await sent(page);
    await page.locator('.map').click({ position: { x: 300, y: 40 } });
    expect(await sent(page)).toHaveLength(length);
    await page.locator('.map').press('Enter');
    expect(await last(page)).toMatchObject({ type: 'choose', source: 0 });
  });

  it('plays the preset, quiet at first and only when it is asked to', async () => {
    const page = await open({ playsSound: true });
    await tell(page, { type: 'scene', scene, document: '0:0 Reed' });
    await page.locator('.map').click({ position: { x: 300, y: 40 } });
    expect((await sent<FontFromPage>(page)).some(({ type }) => type === 'wantSound')).toBe(false);
    await page.getByRole('button', { name: 'Turn sound on' }).click();
    await vi.waitFor(async () => expect(await last(page)).toEqual({ type: 'wantSound' }), {
      timeout: 10_000,
    });
    expect(await page.getByRole('slider', { name: 'Level' }).inputValue()).toBe('-12');
    await send(page, sound);
    await page.getByRole('application', { name: 'Play by typing' }).focus();
    await page.keyboard.down('KeyZ');
    await vi.waitFor(async () =>
      expect(await last(page)).toEqual({ type: 'sounding', headers: [...playable.header].slice(0, 1) }),
    );
    await page.keyboard.press('Escape');
    await vi.waitFor(async () => expect(await last(page)).toEqual({ type: 'sounding', headers: [] }));
    expect(pages.troubles).toEqual([]);
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
  });

  it('narrows the presets down by words and numbers, and remembers that', async () => {
    const page = await open({ state: { filter: '128:' } });
    expect(await page.getByRole('row').count()).toBe(2);
    expect(await page.getByRole('searchbox').inputValue()).toBe('128:');
    await page.getByRole('searchbox').fill('reed 0:0');
    expect(await page.getByRole('rowheader').allInnerTexts()).toEqual(['Reed']);
    expect(await page.getByRole('status').textContent()).toBe('1 of 3 presets');
    expect(await page.evaluate('window.kept.filter')).toBe('reed 0:0');
  });

  it.each(themeNames)('can be read and used by everybody in the theme %s', async (theme) => {
    const page = await open({ theme, width: 1200 });
    await tell(page, { type: 'scene', scene, document: '0:0 Reed' });
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(pages.troubles).toEqual([]);
    if (process.env.ZONEWRIGHT_PICTURES)
      await page.screenshot({ path: `${process.env.ZONEWRIGHT_PICTURES}/sound-font-${theme}.png` });
  });
});
