import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { soundClips, waveOf } from '../../../server/comparison/page/soundClips';
import type { StereoSound } from '../../../server/comparison/soundDifference';
import { folderWith, run } from '../commandLine/runInFolder';
import { accessibilityFaults } from '../webview/accessibility';
import { hasBrowser, sharedBrowser } from '../webview/browser';

const region = (more: string) =>
  ['lokey=48 hikey=59 hivel=80', 'lokey=48 hikey=59 lovel=81', 'lokey=60 hikey=72', 'lokey=73 hikey=84']
    .map(
      (range, at) =>
        `<region> sample=*saw ${range} pitch_keycenter=60 ampeg_release=0.2 ${at === 2 ? '' : more}`,
    )
    .join('\n');

/** The page of two instruments that differ in three regions and lack one, whose name tries to end what it stands in. */
async function pageOf(): Promise<string> {
  const [a, b] = ['first "<script>.sfz', 'second.sfz'];
  const folder = folderWith({
    [a]: region('volume=-3'),
    [b]: `${region('tune=10')}\n<region> sample=*noise key=90`,
  });
  const { out, status } = await run(folder, ['compare', a, b, '--format', 'html']);
  expect(status).toBe(1);
  return out;
}

describe('a sound to listen to', () => {
  const rate = 1000;
  const loud: StereoSound = {
    left: new Float32Array(rate).fill(0.9),
    right: new Float32Array(rate).fill(-0.9),
  };
  const faint: StereoSound = {
    left: new Float32Array(rate).fill(0.8999),
    right: new Float32Array(rate).fill(-0.9),
  };
  const peak = ({ left, right }: StereoSound) => Math.max(...left.map(Math.abs), ...right.map(Math.abs));

  it('is at −18 dB at the most, both sides by the same gain, and a difference raised by 48 dB at the most', () => {
    const { a, b, difference, gainDb, differenceGainDb } = soundClips(loud, faint, rate);
    expect(20 * Math.log10(peak(a))).toBeCloseTo(-18, 3);
    expect(b.left[500] / a.left[500]).toBeCloseTo(0.8999 / 0.9, 5);
    expect(gainDb).toBeCloseTo(-18 - 20 * Math.log10(0.9), 3);
    expect(differenceGainDb).toBe(48);
    expect(peak(difference)).toBeLessThan(10 ** (-18 / 20));
  });

  it('is a WAV file that says what it holds', () => {
    const bytes = waveOf(loud, rate);
    const view = new DataView(bytes.buffer);
    // Little endian sizes of RIFF, `fmt ` and `data` (Multimedia Programming Interface and Data Specifications 1.0).
    expect([view.getUint32(4, true), view.getUint32(16, true), view.getUint32(40, true)]).toEqual([
      bytes.length - 8,
      16,
      bytes.length - 44,
    ]);
  });
});

describe.skipIf(!hasBrowser)('the page of a comparison', () => {
  let html: string;
  beforeAll(async () => {
    html = await pageOf();
  });

  const troubles: string[] = [];
  async function open(colorScheme: 'light' | 'dark'): Promise<Page> {
    const browser = await sharedBrowser();
    const context = await browser.newContext({ viewport: { width: 1000, height: 900 }, colorScheme });
    const page = await context.newPage();
    page.on('console', (message) => troubles.push(message.text()));
    page.on('request', (request) => {
      if (!/^(data|file):/.test(request.url())) troubles.push(request.url());
    });
    await page.setContent(html);
    return page;
  }

  it.each(['light', 'dark'] as const)('can be read by everybody in %s colours', async (colours) => {
    const page = await open(colours);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.context().close();
  });

  it('needs no script and nothing from outside, and plays A, B and the difference', async () => {
    const page = await open('light');
    expect(html).not.toMatch(/<script/);
    expect(await page.locator('h1').textContent()).toContain('first "<script>.sfz');
    expect(await page.locator('audio').count()).toBe(12);
    expect(await page.locator('svg rect.area').count()).toBe(4);
    expect(await page.locator('a.mark').count()).toBe(4);
    for (const mark of await page.locator('a.mark').all()) {
      const card = page.locator((await mark.getAttribute('href')) as string);
      expect(await card.locator('audio').count()).toBe(3);
    }
    expect(await page.locator('.caution').textContent()).toContain('Start quiet');
    const lasts = await page.evaluate(
      `Promise.all([...document.querySelectorAll('audio')].map((one) => new Promise((done) => { one.onloadedmetadata = () => done(one.duration); one.onerror = () => done(-1); one.load(); one.preload = 'metadata'; })))`,
    );
    for (const seconds of lasts as number[]) expect(seconds).toBeGreaterThan(0.3);
    expect(troubles).toEqual([]);
    await page.context().close();
  });
});
