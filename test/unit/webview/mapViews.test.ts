import { writeFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { MapFromPage } from '../../../client/keyboardMap/messages';
import { mapMeasures } from '../../../server/features/mapViews/mapMeasures';
import { samplePage } from '../../../server/features/sampleReport/page/samplePage';
import { sampleReport } from '../../../server/features/sampleReport/sampleReport';
import { buildMapScene } from '../../../server/map/scene';
import { sfzNotation } from '../../../server/sfz/notation';
import { readSfz } from '../../../server/sfz/read';
import { accessibilityFaults } from './accessibility';
import { hasBrowser } from './browser';
import { choose, PageBrowser, send, sent, themeNames } from './pageBrowser';

const layered = `<group> group_label=soft hivel=63
<region> sample=one.wav lokey=48 hikey=53 pitch_keycenter=50
<region> sample=two.wav lokey=54 hikey=59 pitch_keycenter=57
<group> group_label=loud lovel=64 volume=3
<region> sample=three.wav lokey=48 hikey=53 pitch_keycenter=50
<region> sample=four.wav lokey=54 hikey=59 pitch_keycenter=57`;
const instrument = readSfz(layered, { path: 'a.sfz' });
const noSamples = { state: () => ({ kind: 'missing' }) as const, nearest: () => [] };
const measuresOf = (key: number) => ({
  ...mapMeasures({ instrument, notation: sfzNotation, samples: noSamples }, key),
  regions: [
    { header: 1, cents: -3.2, levelDb: -24 },
    { header: 2, cents: 14, levelDb: -22 },
    { header: 4, cents: 1.5, levelDb: -12 },
    { header: 5, cents: -40, levelDb: -10 },
  ],
});

describe.skipIf(!hasBrowser)('curves over the keyboard in a browser', () => {
  const pages = new PageBrowser('keyboardMap', 'keyboard-map');

  const open = async (theme: (typeof themeNames)[number] = 'light') => {
    const page = await pages.open({ theme });
    await send(page, { type: 'scene', scene: buildMapScene(instrument), document: 'a.sfz', version: 1 });
    return page;
  };
  const wanted = async (page: Page) =>
    (await sent<MapFromPage>(page)).flatMap((one) => (one.type === 'wantMeasures' ? [one.key] : []));
  const view = (page: Page, label: string) => choose(page, 'Shown over the keyboard', label);
  const words = async (page: Page) => {
    await page.locator('.view-words summary').click();
    return page.locator('.view-words li').allTextContents();
  };

  it('are drawn when what they show was measured, of the groups that are shown', async () => {
    const page = await open();
    await view(page, 'Tuning at the roots');
    expect(await wanted(page)).toEqual([50]);
    expect(await page.locator('.view-text').textContent()).toContain('being measured');
    await send(page, { type: 'measures', measures: measuresOf(50) });
    expect(await words(page)).toEqual([
      'C3 to F3, soft: −3.2 cents at D3',
      'C3 to F3, loud: +1.5 cents at D3',
      'F#3 to B3, soft: +14 cents at A3',
      'F#3 to B3, loud: −40 cents at A3',
    ]);
    await choose(page, 'Group', 'loud');
    expect(await page.locator('.view-words li').count()).toBe(2);
    await page.getByRole('listbox', { name: 'Regions' }).focus();
    expect(await page.locator('.details-text').textContent()).toContain('+1.5 cents at D3');
    await view(page, 'Distance from the root');
    expect(await page.locator('.view-words li').first().textContent()).toBe(
      'C3 to F3, loud: −2 to +3 semitones',
    );
    // Nothing can be dragged in a curve.
    await page.keyboard.press('g');
    expect(await page.locator('.gesture').textContent()).toBe('');
    expect(await wanted(page)).toEqual([50]);
  });

  it('tell what a note does by velocity on the key that is chosen', async () => {
    const page = await open();
    await view(page, 'Level by velocity');
    await send(page, { type: 'measures', measures: measuresOf(50) });
    // 40·log10(60/127), and 3 dB more of the loud group at full velocity.
    const found = await words(page);
    const assumed = ', a sample is not measured and counts as full scale';
    expect(found).toContain(`velocity 60: −13 dB${assumed}`);
    expect(found.at(-1)).toBe(`velocity 127: +3 dB${assumed}`);
    expect(await page.getByText('Dashed where a sample is not measured').isVisible()).toBe(true);
    await choose(page, 'Key', 'A3');
    expect(await wanted(page)).toEqual([50, 57]);
  });

  it.each(themeNames)('stand in the report on samples, in the theme %s and for everybody', async (theme) => {
    const views = { scene: buildMapScene(instrument), measures: measuresOf(50) };
    const page = await pages.show(
      samplePage('Samples of <b>a</b>', sampleReport(instrument, sfzNotation, noSamples), views),
      theme,
      400,
    );
    expect(await page.locator('h1').textContent()).toBe('Samples of <b>a</b>');
    expect(await page.getByRole('heading', { level: 3 }).count()).toBe(4);
    for (const title of [
      'Tuning at the roots',
      'Loudness',
      'Distance from the root',
      'Level by velocity at D3',
    ])
      expect(await page.getByRole('img', { name: title }).isVisible()).toBe(true);
    await page.getByText('Loudness in words').click();
    expect(await page.getByText('C3 to F3, soft: −24 LUFS').isVisible()).toBe(true);
    const tones: string[] = await page.evaluate(
      `[...document.querySelectorAll('.groups path')].map((one) => getComputedStyle(one).stroke)`,
    );
    expect(new Set(tones).size).toBe(2);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(400);
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  it('share velocities out by loudness as soon as that is known', async () => {
    const page = await open();
    await page.locator('#shape-0').click();
    await page.locator('#shape-2').click({ modifiers: ['Control'] });
    await page.getByRole('button', { name: 'Velocity layers by loudness' }).click();
    expect(await page.locator('.gesture').textContent()).toContain('being measured');
    await send(page, { type: 'measures', measures: measuresOf(50) });
    const arrangements = (await sent<MapFromPage>(page)).flatMap((one) =>
      one.type === 'arrange' ? [one.arrangement.values] : [],
    );
    // Halfway of 12 dB: 127·10^(−6/40) = 89.9.
    expect(arrangements).toEqual([
      [
        { header: 1, hivel: 89 },
        { header: 4, lovel: 90 },
      ],
    ]);
  });

  it('stand beside a way to the report on the samples', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'Report on the samples' }).click();
    expect((await sent<MapFromPage>(page)).at(-1)).toEqual({ type: 'report' });
  });

  it('are saved as a drawing and as pixels, as they are shown', async () => {
    const page = await pages.open({ makesPictures: true });
    await send(page, { type: 'scene', scene: buildMapScene(instrument), document: 'a.sfz', version: 1 });
    const saved = async () => {
      await page.getByRole('button', { name: 'Save what is shown as a picture' }).click();
      const last = () =>
        sent<MapFromPage>(page).then((all) =>
          all.flatMap((one) => (one.type === 'picture' ? [one] : [])).at(-1),
        );
      await expect.poll(last).toBeDefined();
      const picture = await last();
      await page.evaluate('window.sent.length = 0');
      const bytes = Buffer.from(picture?.png ?? '', 'base64');
      // Signature, then width and height of the header (W3C PNG, 5.2 and 11.2.1).
      expect(bytes.subarray(1, 4).toString('latin1')).toBe('PNG');
      return { svg: picture?.svg ?? '', width: bytes.readUInt32BE(16), bytes };
    };
    const whole = await saved();
    expect(whole.svg).toContain('three');
    expect(whole.width).toBe(2 * Number(/width="(\d+)"/.exec(whole.svg)?.[1]));
    await choose(page, 'Group', 'soft');
    expect((await saved()).svg).not.toContain('>three<');
    await view(page, 'Tuning at the roots');
    await send(page, { type: 'measures', measures: measuresOf(50) });
    const curve = await saved();
    expect(curve.svg).toContain('>cents<');
    if (process.env.ZONEWRIGHT_PICTURES)
      writeFileSync(`${process.env.ZONEWRIGHT_PICTURES}/saved.png`, whole.bytes);
  });

  it.each(themeNames)('have no fault of accessibility in the theme %s', async (theme) => {
    const page = await open(theme);
    for (const [name, label] of [
      ['tuning', 'Tuning at the roots'],
      ['velocity', 'Level by velocity'],
      ['stretch', 'Distance from the root'],
      ['loudness', 'Loudness'],
    ]) {
      await view(page, label);
      await send(page, { type: 'measures', measures: measuresOf(50) });
      if (process.env.ZONEWRIGHT_PICTURES)
        await page.screenshot({ path: `${process.env.ZONEWRIGHT_PICTURES}/view-${name}-${theme}.png` });
    }
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  it('ran without an error', () => {
    expect(pages.troubles).toEqual([]);
  });
});
