import type { Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import type { MapFromPage } from '../../../client/keyboardMap/messages';
import { usedControllers } from '../../../server/features/usedControllers';
import { buildMapScene } from '../../../server/map/scene';
import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import { packed } from '../../../server/protocol/conversion/packedData';
import { readSfz } from '../../../server/sfz/read';
import { soundOf } from '../../../server/sound/program/soundOf';
import { accessibilityFaults } from './accessibility';
import { hasBrowser } from './browser';
import { PageBrowser, send, sent, themeNames } from './pageBrowser';

const tones = `<control> label_cc1=Swell
<region> sample=*sine lokey=36 hikey=59 volume=-30
<region> sample=*sine lokey=60 hikey=84 amplitude_oncc1=100`;

const instrument = readSfz(tones, { path: 'tones.sfz' });
const playable = playableInstrument(instrument);
const sound = {
  type: 'sound',
  instrument: packed({
    playable,
    program: soundOf(instrument),
    controllers: usedControllers(instrument, playable),
    sampleStates: [],
  }),
};

describe.skipIf(!hasBrowser)('sound in the page of the keyboard map', () => {
  const pages = new PageBrowser('keyboardMap', 'keyboard-map');

  const open = async (theme: (typeof themeNames)[number] = 'light'): Promise<Page> => {
    const page = await pages.open({ theme, playsSound: true, width: 700 });
    await send(page, { type: 'scene', scene: buildMapScene(instrument), document: 'tones.sfz' });
    return page;
  };
  const told = async <Type extends MapFromPage['type']>(page: Page, type: Type) =>
    (await sent<MapFromPage>(page)).filter((one) => one.type === type) as Extract<
      MapFromPage,
      { type: Type }
    >[];
  const turnOn = async (page: Page) => {
    await page.getByRole('button', { name: 'Turn sound on' }).click();
    await vi.waitFor(async () => expect(await told(page, 'wantSound')).toHaveLength(1), { timeout: 10_000 });
    await send(page, sound);
  };
  const sounding = async (page: Page) => (await told(page, 'sounding')).at(-1)?.headers;
  const headers = [...playable.header];

  it('is off until it is turned on, and says to start quiet', async () => {
    const page = await open();
    await page.locator('.map').click({ position: { x: 300, y: 40 } });
    expect(await told(page, 'wantSound')).toEqual([]);
    expect(await page.locator('.audition').textContent()).toContain('Start quiet');
    await turnOn(page);
    expect(await page.getByRole('slider', { name: 'Level' }).inputValue()).toBe('-12');
    expect(await page.locator('.audition-status').textContent()).toContain('by up to 30 dB');
  });

  it('plays what is typed, and stops by Escape and by losing the focus', async () => {
    const page = await open();
    await turnOn(page);
    await page.getByRole('application', { name: 'Play by typing' }).focus();
    await page.keyboard.down('KeyZ');
    await vi.waitFor(async () => expect(await sounding(page)).toEqual([headers[0]]));
    await page.keyboard.down('KeyQ');
    await vi.waitFor(async () => expect(await sounding(page)).toEqual(headers));
    await page.keyboard.press('Escape');
    await vi.waitFor(async () => expect(await sounding(page)).toEqual([]));
    await page.keyboard.up('KeyZ');
    await page.keyboard.down('KeyZ');
    await vi.waitFor(async () => expect(await sounding(page)).toEqual([headers[0]]));
    await page.evaluate("window.dispatchEvent(new Event('blur'))");
    await vi.waitFor(async () => expect(await sounding(page)).toEqual([]));
    expect(pages.troubles).toEqual([]);
  });

  it('plays a shape for as long as it is pressed, and says what would sound at the pointer', async () => {
    const page = await open();
    await turnOn(page);
    const box = await page.locator('.map').boundingBox();
    if (!box) throw new Error('The map has no place.');
    await page.mouse.move(box.x + box.width * 0.75, box.y + box.height * 0.3);
    await page.mouse.down();
    await vi.waitFor(async () => expect(await sounding(page)).toEqual([headers[1]]));
    await page.mouse.up();
    await vi.waitFor(async () => expect(await sounding(page)).toEqual([]));
    await vi.waitFor(async () =>
      expect(await page.locator('.audition-readout').textContent()).toContain('1 region sounds'),
    );
  });

  it('plays regions that the host names, one after another', async () => {
    const page = await open();
    await send(page, { type: 'play', headers: [headers[1]], what: 'regions' });
    await vi.waitFor(async () => expect(await told(page, 'wantSound')).toHaveLength(1), { timeout: 10_000 });
    await send(page, sound);
    await vi.waitFor(async () => expect(await sounding(page)).toEqual([headers[1]]));
  });

  it('plays what a MIDI keyboard sends, where sound is on, and its controllers move', async () => {
    const page = await open();
    const midi = (message: object) => send(page, { type: 'midi', message });
    await midi({ kind: 'noteOn', key: 48, velocity: 100 });
    await turnOn(page);
    expect((await sounding(page)) ?? []).toEqual([]);
    await midi({ kind: 'controller', number: 1, value: 90 });
    expect(await page.getByRole('slider', { name: /Swell/ }).inputValue()).toBe('90');
    await midi({ kind: 'noteOn', key: 48, velocity: 100 });
    await vi.waitFor(async () => expect(await sounding(page)).toEqual([headers[0]]));
    await midi({ kind: 'controller', number: 64, value: 127 });
    await midi({ kind: 'noteOff', key: 48, velocity: 64 });
    await midi({ kind: 'noteOn', key: 72, velocity: 100 });
    // The pedal holds the first.
    await vi.waitFor(async () => expect(await sounding(page)).toEqual(headers));
    await midi({ kind: 'noteOff', key: 72, velocity: 64 });
    await midi({ kind: 'controller', number: 64, value: 0 });
    await vi.waitFor(async () => expect(await sounding(page)).toEqual([]));
  });

  it('plays a sample by itself, and the instrument again afterwards', async () => {
    const page = await open();
    await send(page, { type: 'play', headers: [headers[1]], what: 'sample' });
    await vi.waitFor(async () => expect(await told(page, 'wantSound')).toHaveLength(1), { timeout: 10_000 });
    await send(page, sound);
    await vi.waitFor(async () =>
      expect(await told(page, 'wantSample')).toMatchObject([{ header: headers[1] }]),
    );
    const alone = readSfz('<region> sample=alone.wav pitch_keycenter=60 loop_mode=one_shot', {
      path: 'tones.sfz',
    });
    await send(page, {
      type: 'sampleSound',
      instrument: packed({
        playable: playableInstrument(alone),
        program: soundOf(alone),
        controllers: [],
        sampleStates: [],
      }),
    });
    // The voice waits for the audio of the sample, which nothing but this names.
    await vi.waitFor(async () =>
      expect(await told(page, 'wantAudio')).toMatchObject([{ sample: 'alone.wav' }]),
    );
    await page.getByRole('application', { name: 'Play by typing' }).focus();
    await page.keyboard.down('KeyZ');
    await vi.waitFor(async () => expect(await sounding(page)).toEqual([headers[0]]));
  });

  it.each(themeNames)('has no fault of accessibility in the theme %s', async (theme) => {
    const page = await open(theme);
    await turnOn(page);
    await page.getByText('Swell').waitFor();
    expect(await accessibilityFaults(page)).toEqual([]);
    if (process.env.ZONEWRIGHT_PICTURES)
      await page.screenshot({ path: `${process.env.ZONEWRIGHT_PICTURES}/audition-${theme}.png` });
  });
});
