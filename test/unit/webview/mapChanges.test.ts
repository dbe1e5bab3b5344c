import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { MapFromPage } from '../../../client/keyboardMap/messages';
import { buildMapScene } from '../../../server/map/scene';
import { readSfz } from '../../../server/sfz/read';
import { accessibilityFaults } from './accessibility';
import { hasBrowser } from './browser';
import type { ThemeName } from './pageBrowser';
import { PageBrowser, send, sent } from './pageBrowser';

/** Two velocity layers of two shapes side by side; headers 1, 2, 4 and 5. */
const layered = `<group> group_label=soft hivel=63
<region> sample=one.wav lokey=48 hikey=53 pitch_keycenter=50
<region> sample=two.wav lokey=54 hikey=59 pitch_keycenter=57
<group> group_label=loud lovel=64
<region> sample=three.wav lokey=48 hikey=53 pitch_keycenter=50
<region> sample=four.wav lokey=54 hikey=59 pitch_keycenter=57`;

describe.skipIf(!hasBrowser)('changing the keyboard map in a browser', () => {
  const pages = new PageBrowser('keyboardMap', 'keyboard-map');

  const show = (page: Page, text = layered, version = 1) =>
    send(page, {
      type: 'scene',
      scene: buildMapScene(readSfz(text, { path: 'a.sfz' })),
      document: 'a.sfz',
      version,
    });
  const open = async (theme: ThemeName = 'light') => {
    const page = await pages.open({ theme });
    await show(page);
    return page;
  };
  /** What the page has asked for since it was asked last. */
  const arrangements = async (page: Page) => {
    const found = (await sent<MapFromPage>(page)).filter(({ type }) => type === 'arrange');
    await page.evaluate('window.sent.length = 0');
    return found.map((one) => one.type === 'arrange' && one.arrangement);
  };
  const values = (...list: object[]) => [{ values: list, copies: [], removed: [] }];
  const said = (page: Page) => page.locator('.gesture').textContent();
  /** The box of a shape on the screen. */
  const boxOf = async (page: Page, shape: number) => {
    const box = await page.locator(`#shape-${shape}`).boundingBox();
    if (!box) throw new Error('The shape has no place.');
    return box;
  };
  const drag = async (page: Page, from: [number, number], to: [number, number], isReleased = true) => {
    await page.mouse.move(...from);
    await page.mouse.down();
    await page.mouse.move((from[0] + to[0]) / 2, (from[1] + to[1]) / 2);
    await page.mouse.move(...to);
    if (isReleased) await page.mouse.up();
  };

  it('drags a border that two shapes share, and with Alt of one alone', async () => {
    const page = await open();
    const box = await boxOf(page, 0);
    const key = box.width / 6;
    const [right, middle] = [box.x + box.width - 2, box.y + box.height / 2];
    await drag(page, [right, middle], [right + 2 * key, middle]);
    expect(await arrangements(page)).toEqual(values({ header: 1, hikey: 55 }, { header: 2, lokey: 56 }));
    await show(page, layered, 2);
    await page.keyboard.down('Alt');
    await drag(page, [right, middle], [right - key, middle]);
    await page.keyboard.up('Alt');
    expect(await arrangements(page)).toEqual(values({ header: 1, hikey: 52 }));
    // A drag is no click.
    expect((await sent<MapFromPage>(page)).filter(({ type }) => type === 'choose')).toEqual([]);
  });

  it('drags a corner, a whole shape and a root mark, and says what changes', async () => {
    const page = await open();
    const box = await boxOf(page, 0);
    const [key, velocity] = [box.width / 6, box.height / 63];
    await drag(
      page,
      [box.x + 2, box.y + box.height - 2],
      [box.x + 2 - key, box.y + box.height - 2 - 20 * velocity],
      false,
    );
    expect(await said(page)).toBe(
      'Moving the lowest key and velocity: B2 to F3, velocity 21 to 63; 1 region changes',
    );
    await page.mouse.up();
    expect(await arrangements(page)).toEqual(values({ header: 1, lokey: 47, lovel: 21 }));
    await show(page, layered, 2);
    const [x, y] = [box.x + box.width * 0.9, box.y + box.height / 2];
    await drag(page, [x, y], [x - 12 * key, y]);
    expect(await arrangements(page)).toEqual(values({ header: 1, lokey: 36, hikey: 41 }));
    await show(page, layered, 3);
    const root = [box.x + 2.5 * key, box.y + box.height - 5] as const;
    await drag(page, [...root], [root[0] + key, root[1]]);
    expect(await arrangements(page)).toEqual(values({ header: 1, pitch_keycenter: 51 }));
  });

  it('settles on the border of another shape, and with Shift between borders', async () => {
    const page = await open();
    await show(page, `${layered}\n<group> <region> sample=five.wav lokey=36 hikey=40 hivel=40`, 2);
    const box = await boxOf(page, 0);
    const [x, top, velocity] = [box.x + box.width / 2, box.y + 1, box.height / 63];
    // Of five velocities more than another shape has.
    await drag(page, [x, top], [x, top + 22 * velocity]);
    expect(await arrangements(page)).toEqual(values({ header: 1, hivel: 40 }, { header: 4, lovel: 41 }));
    await show(page, `${layered}\n<group> <region> sample=five.wav lokey=36 hikey=40 hivel=40`, 3);
    await page.mouse.move(x, top);
    await page.mouse.down();
    await page.keyboard.down('Shift');
    await page.mouse.move(x, top + 10 * velocity);
    await page.mouse.move(x, top + 22 * velocity);
    await page.keyboard.up('Shift');
    await page.mouse.up();
    expect(await arrangements(page)).toEqual(values({ header: 1, hivel: 41 }, { header: 4, lovel: 42 }));
  });

  it('leaves everything as it was by Escape and when the text is changed in the meantime', async () => {
    const page = await open();
    const box = await boxOf(page, 0);
    const [right, middle] = [box.x + box.width - 2, box.y + box.height / 2];
    await page.getByRole('listbox').focus();
    await drag(page, [right, middle], [right + 60, middle], false);
    await page.keyboard.press('Escape');
    expect(await said(page)).toBe('Nothing was changed.');
    await page.mouse.up();
    await drag(page, [right, middle], [right + 60, middle], false);
    await show(page, layered.replace('one.wav', 'other.wav'), 2);
    expect(await said(page)).toContain('changed in the meantime');
    await page.mouse.move(right + 80, middle);
    await page.mouse.up();
    expect(await arrangements(page)).toEqual([]);
    // What was said is not about another document.
    await send(page, {
      type: 'scene',
      scene: buildMapScene(readSfz(layered, { path: 'b.sfz' })),
      document: 'b.sfz',
      version: 1,
    });
    expect(await said(page)).toBe('');
    await show(page, layered.replace('one.wav', 'other.wav'), 2);
    // The same text again ends nothing.
    await drag(page, [right, middle], [right + 60, middle], false);
    await show(page, layered.replace('one.wav', 'other.wav'), 2);
    await page.mouse.up();
    expect(await arrangements(page)).toHaveLength(1);
  });

  it('changes several at once, chosen by clicks or by a frame', async () => {
    const page = await open();
    const first = await boxOf(page, 0);
    const second = await boxOf(page, 1);
    await page.locator('#shape-0').click();
    await page.locator('#shape-1').click({ modifiers: ['Control'] });
    const x = second.x + second.width / 2;
    await drag(page, [x, second.y + 1], [x, second.y + 1 + (10 * second.height) / 63]);
    expect(await arrangements(page)).toEqual(
      values(
        { header: 2, hivel: 53 },
        { header: 5, lovel: 54 },
        { header: 1, hivel: 53 },
        { header: 4, lovel: 54 },
      ),
    );
    await show(page, layered, 2);
    await drag(page, [first.x - 20, first.y + 5], [second.x + 20, first.y + first.height - 5]);
    await page.getByRole('button', { name: 'Join into the first' }).click();
    expect(await arrangements(page)).toEqual([
      { values: [{ header: 1, hikey: 59 }], copies: [], removed: [2] },
    ]);
  });

  it('changes shapes by keys alone', async () => {
    const page = await open();
    await page.getByRole('listbox').focus();
    await page.keyboard.press('g');
    await page.keyboard.press('g');
    await page.keyboard.press('g');
    expect(await said(page)).toBe('Moving the highest key: not moved yet');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    expect(await said(page)).toBe('Moving the highest key: C3 to G3, velocity 1 to 63; 2 regions change');
    await page.keyboard.press('n');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Enter');
    expect(await arrangements(page)).toEqual(values({ header: 1, hikey: 54 }));
    await send(page, { type: 'arranged', message: 'Changed in the text.' });
    expect(await said(page)).toBe('Changed in the text.');
    await page.keyboard.press('g');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Space');
    await page.keyboard.press('PageDown');
    await page.keyboard.press('PageDown');
    await page.keyboard.press('Space');
    await page.keyboard.press('v');
    expect(await arrangements(page)).toEqual([
      {
        values: [
          { header: 1, hivel: 31 },
          { header: 2, hivel: 31 },
        ],
        copies: [
          { header: 1, lovel: 32 },
          { header: 2, lovel: 32 },
        ],
        removed: [],
      },
    ]);
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+Shift+z');
    expect((await sent<MapFromPage>(page)).map(({ type }) => type)).toEqual(['undo', 'redo']);
  });

  it('splits at the place that was clicked, shown before it is done', async () => {
    const page = await open();
    const box = await boxOf(page, 1);
    await page.mouse.click(box.x + box.width * 0.4, box.y + box.height * 0.5);
    const split = page.getByRole('button', { name: 'Split below G#3' });
    await split.hover();
    expect(await said(page)).toBe('F#3 to G3, velocity 1 to 63; 1 region changes; 1 more');
    await split.click();
    expect(await arrangements(page)).toEqual([
      { values: [{ header: 2, hikey: 55 }], copies: [{ header: 2, lokey: 56 }], removed: [] },
    ]);
  });

  it.each(['light', 'highContrast'] as const)(
    'has no fault of accessibility while something is moved, in the theme %s',
    async (theme) => {
      const page = await open(theme);
      await page.getByRole('listbox').focus();
      await page.keyboard.press('g');
      await page.keyboard.press('ArrowRight');
      expect(await accessibilityFaults(page)).toEqual([]);
      if (process.env.ZONEWRIGHT_PICTURES)
        await page.screenshot({ path: `${process.env.ZONEWRIGHT_PICTURES}/changes-${theme}.png` });
    },
  );

  it('takes samples that are dropped, on the key and into the group under the pointer', async () => {
    const page = await open();
    const dropAt = (selector: string, x: number, y: number, list: string) =>
      page.evaluate(`(() => {
        const target = document.querySelector('${selector}');
        const dataTransfer = new DataTransfer();
        dataTransfer.setData('text/uri-list', ${JSON.stringify(list)});
        const at = { dataTransfer, clientX: ${x}, clientY: ${y}, bubbles: true, cancelable: true };
        const isTaken = !target.dispatchEvent(new DragEvent('dragover', at));
        target.dispatchEvent(new DragEvent('drop', at));
        return isTaken;
      })()`);
    const added = async () => (await sent<MapFromPage>(page)).filter(({ type }) => type === 'addSamples');
    const box = await boxOf(page, 1);
    const uris = ['file:///s/new.wav', 'file:///s/more'];
    const list = `# dragged\r\n${uris.join('\r\n')}\r\n`;
    expect(await dropAt('.map', box.x + 2, box.y + 5, list)).toBe(true);
    expect(await added()).toEqual([{ type: 'addSamples', uris, key: 54, after: 2 }]);
    expect(await said(page)).toContain('being measured');
    await send(page, { type: 'arranged', message: '"new.wav" is at C4.' });
    expect(await said(page)).toBe('"new.wav" is at C4.');
    // Beside all shapes there is a key and no group; what is no file is left alone.
    await page.evaluate('window.sent.length = 0');
    await dropAt('.map', box.x + 3 * box.width, box.y + 5, uris[0]);
    expect(await added()).toMatchObject([{ uris: [uris[0]], after: undefined }]);
    expect(await dropAt('.map', box.x + 2, box.y + 5, '')).toBe(true);
    expect(await added()).toHaveLength(1);
    await show(page, '', 3);
    await dropAt('.empty', 100, 100, uris[0]);
    expect(await added()).toHaveLength(2);
  });

  it('ran without an error', () => {
    expect(pages.troubles).toEqual([]);
  });
});
