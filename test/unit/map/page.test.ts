import { existsSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { HostMessage, PageMessage } from '../../../client/keyboardMap/messages';
import { buildMapScene } from '../../../server/map/scene';
import { readSfz } from '../../../server/sfz/read';
import { PageBrowser } from '../pageBrowser';

const executable = process.env.ZONEWRIGHT_CHROMIUM ?? '/usr/bin/chromium';

const bells = `<group> group_label=soft & &lt;b&gt;low hivel=63
<region> sample=one.wav lokey=48 hikey=53 pitch_keycenter=50
<region> sample=two.wav lokey=48 hikey=53 pitch_keycenter=50
<region> sample=three.wav lokey=54 hikey=59 pitch_keycenter=57
<group> group_label=loud lovel=64
<region> sample=four.wav lokey=48 hikey=53 pitch_keycenter=50
<region> sample=five.wav lokey=54 hikey=59 pitch_keycenter=57`;

const sceneOf = (text: string) =>
  buildMapScene(readSfz(text, { path: 'bells.sfz', include: () => ({ kind: 'missing' }) }));

/** Values of theme variables as three kinds of theme set them; the colours are invented. */
const themes = {
  'vscode-light': { foreground: '#333333', 'editor-background': '#ffffff', focusBorder: '#0055bb' },
  'vscode-dark': { foreground: '#cccccc', 'editor-background': '#202020', focusBorder: '#3388dd' },
  'vscode-high-contrast': {
    foreground: '#ffffff',
    'editor-background': '#000000',
    focusBorder: '#ff8800',
    contrastBorder: '#66ccdd',
  },
};
const chartColours = {
  'charts-red': '#d03030',
  'charts-blue': '#2080e0',
  'charts-yellow': '#b08000',
  'charts-orange': '#d08020',
  'charts-green': '#308840',
  'charts-purple': '#8040a0',
};

describe.skipIf(!existsSync(executable))('the page of the keyboard map in a browser', () => {
  let pages: PageBrowser;

  beforeAll(async () => {
    pages = await PageBrowser.start(executable, 'keyboardMap');
  });

  afterAll(() => pages?.close());

  async function open(theme: keyof typeof themes = 'vscode-light'): Promise<Page> {
    return pages.open({
      title: 'Keyboard map',
      id: 'keyboard-map',
      theme,
      variables: { ...chartColours, ...themes[theme] },
      width: 900,
      height: 700,
    });
  }

  const send = (page: Page, message: HostMessage) =>
    page.evaluate(`window.dispatchEvent(new MessageEvent('message', { data: ${JSON.stringify(message)} }))`);
  const sent = (page: Page) => page.evaluate('window.sent') as Promise<PageMessage[]>;
  const show = (page: Page, text = bells) =>
    send(page, { type: 'scene', scene: sceneOf(text), document: 'bells.sfz' });
  const focused = async (page: Page) => {
    const id = await page.getByRole('listbox').getAttribute('aria-activedescendant');
    return page.locator(`#${id}`).getAttribute('aria-label');
  };

  it('says that it is ready and shows a hint until there is a map', async () => {
    const page = await open();
    expect(await sent(page)).toEqual([{ type: 'ready' }]);
    await send(page, { type: 'empty', reason: 'Nothing <here>.' });
    expect(await page.getByText('Nothing <here>.').isVisible()).toBe(true);
    expect(await page.getByText('The keyboard map shows which keys').isVisible()).toBe(true);
    expect(await page.getByRole('listbox').count()).toBe(0);
    await page.close();
  });

  it('offers the shapes as options of a list with all of their facts', async () => {
    const page = await open();
    await show(page);
    const list = page.getByRole('listbox', { name: 'Regions by key and velocity' });
    expect(await list.getByRole('option').count()).toBe(4);
    expect(
      await page
        .getByRole('option', {
          name: 'C3 to F3, velocity 1 to 63, group soft & &lt;b&gt;low, 2 regions, sample one.wav and others, root key D3',
          exact: true,
        })
        .count(),
    ).toBe(1);
    expect(await page.getByRole('status').getByText('no gaps, no overlaps').count()).toBe(1);
    await page.close();
  });

  it('moves over shapes with the keyboard, chooses and goes back', async () => {
    const page = await open();
    await show(page);
    await page.getByRole('listbox').focus();
    expect(await focused(page)).toContain('C3 to F3, velocity 1 to 63');
    await page.keyboard.press('ArrowRight');
    expect(await focused(page)).toContain('F#3 to B3, velocity 1 to 63');
    await page.keyboard.press('ArrowUp');
    expect(await focused(page)).toContain('F#3 to B3, velocity 64 to 127');
    await page.keyboard.press('Enter');
    const at = bells.indexOf('<region> sample=five.wav');
    expect((await sent(page)).at(-1)).toEqual({
      type: 'choose',
      header: 6,
      source: 0,
      start: at,
      end: bells.length,
    });

    await page.keyboard.press('Home');
    expect(await focused(page)).toContain('C3 to F3, velocity 1 to 63');
    await page.keyboard.press('Enter');
    expect(await page.locator(':focus').textContent()).toContain('one.wav');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect((await sent(page)).at(-1)).toMatchObject({ type: 'choose', header: 2 });
    await page.keyboard.press('Escape');
    expect(await page.locator(':focus').getAttribute('role')).toBe('listbox');
    await page.keyboard.press('End');
    expect(await focused(page)).toContain('F#3 to B3, velocity 64 to 127');
    await page.keyboard.press('PageUp');
    expect(await focused(page)).toContain('F#3 to B3, velocity 1 to 63');
    await page.close();
  });

  it('shows details under the pointer and chooses by a click', async () => {
    const page = await open();
    await show(page);
    const details = page.getByRole('region', { name: 'Details' });
    await page.locator('#shape-2').hover({ position: { x: 4, y: 40 } });
    expect(await details.textContent()).toContain('C3 to F3, velocity 64 to 127, group loud');
    await page.locator('#shape-1').click({ position: { x: 4, y: 40 } });
    expect((await sent(page)).at(-1)).toMatchObject({ type: 'choose', header: 3 });
    await details.getByRole('button', { name: 'three.wav' }).click();
    expect((await sent(page)).filter(({ type }) => type === 'choose')).toHaveLength(2);
    await page.close();
  });

  it('marks the shapes at the text cursor and keeps selection and focus when the text changes', async () => {
    const page = await open();
    await show(page);
    await send(page, { type: 'select', regions: [2, 5] });
    const selected = () =>
      page
        .locator('[role=option][aria-selected=true]')
        .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')));
    expect(await selected()).toHaveLength(2);
    await page.getByRole('listbox').focus();
    await page.keyboard.press('End');
    // One region more at the front and a key moved: header numbers and rectangles are others than before.
    await show(
      page,
      `<region> sample=zero.wav key=30\n${bells.replace('three.wav lokey=54 hikey=59', 'three.wav lokey=54 hikey=58')}`,
    );
    expect(await focused(page)).toContain('F#3 to B3, velocity 64 to 127');
    expect(await page.locator(':focus').getAttribute('role')).toBe('listbox');
    expect((await selected()).map((label) => label?.split(',').slice(0, 2).join())).toEqual(
      expect.arrayContaining(['C3 to F3, velocity 1 to 63', 'C3 to F3, velocity 64 to 127']),
    );
    await page.close();
  });

  it('switches layers off and on, and zooms', async () => {
    const page = await open();
    await show(page);
    await page.getByRole('checkbox', { name: 'loud' }).uncheck();
    expect(await page.getByRole('option').count()).toBe(2);
    await page.getByRole('checkbox', { name: 'loud' }).check();
    expect(await page.getByRole('option').count()).toBe(4);
    const width = async () => (await page.locator('#shape-0').boundingBox())?.width ?? 0;
    const before = await width();
    await page.getByRole('button', { name: 'Zoom in' }).click();
    const zoomed = await width();
    expect(zoomed).toBeGreaterThan(before * 1.4);
    await page.getByRole('listbox').focus();
    await page.keyboard.press('-');
    expect(await width()).toBeCloseTo(before, 0);
    await page.locator('#shape-0').hover();
    await page.keyboard.down('Control');
    await page.mouse.wheel(0, -100);
    await page.keyboard.up('Control');
    await expect.poll(width).toBeGreaterThan(before * 1.1);
    expect(await page.evaluate('window.kept')).toMatchObject({ hiddenLayers: [] });
    await page.close();
  });

  it.each(Object.keys(themes) as (keyof typeof themes)[])(
    'takes its colours from the theme %s',
    async (theme) => {
      const page = await open(theme);
      await show(page);
      const colour = (selector: string, property: string) =>
        page.evaluate(
          `getComputedStyle(document.querySelector('${selector}')).${property}`,
        ) as Promise<string>;
      const rgb = (hex: string) =>
        `rgb(${[1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)).join(', ')})`;
      expect(await colour('body', 'backgroundColor')).toBe(rgb(themes[theme]['editor-background']));
      expect(await colour('.label', 'fill')).toBe(rgb(themes[theme].foreground));
      await page.getByRole('listbox').focus();
      expect(await colour('.mark.focused', 'stroke')).toBe(rgb(themes[theme].focusBorder));
      if (theme === 'vscode-high-contrast') {
        expect(await colour('.shape', 'stroke')).toBe(rgb(themes[theme].foreground));
        expect(await colour('.details', 'borderTopColor')).toBe(rgb('#66ccdd'));
      }
      await page.close();
    },
  );

  it('ran without an error and without anything that its content policy refuses', () => {
    expect(pages.troubles).toEqual([]);
  });
});
