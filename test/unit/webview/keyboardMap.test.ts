import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { MapFromPage, MapToPage } from '../../../client/keyboardMap/messages';
import { buildMapScene } from '../../../server/map/scene';
import { readSfz } from '../../../server/sfz/read';
import { accessibilityFaults } from './accessibility';
import { hasBrowser } from './browser';
import type { OpenedPage } from './pageBrowser';
import { choose, PageBrowser, rgb, send, sent, styleOf, themeNames, themes } from './pageBrowser';

const bells = `<group> group_label=soft & &lt;b&gt;low hivel=63
<region> sample=one.wav lokey=48 hikey=53 pitch_keycenter=50
<region> sample=two.wav lokey=48 hikey=53 pitch_keycenter=50
<region> sample=three.wav lokey=54 hikey=59 pitch_keycenter=57
<group> group_label=loud lovel=64
<region> sample=four.wav lokey=48 hikey=53 pitch_keycenter=50
<region> sample=five.wav lokey=54 hikey=59 pitch_keycenter=57`;

const articulated = `<global> sw_lokey=24 sw_hikey=25
<group> group_label=held sw_last=24 sw_label=long
<region> sample=one.wav lokey=48 hikey=53 pitch_keycenter=50
<group> group_label=short sw_last=25 sw_label=short
<region> sample=two.wav lokey=48 hikey=53 pitch_keycenter=50
<group> group_label=release sw_last=24 sw_label=long trigger=release
<region> sample=three.wav lokey=54 hikey=59
<group> group_label=always
<region> sample=four.wav lokey=60 hikey=64`;

/** With a gap, an overlap, a keyswitch and regions that are not on the keyboard. */
const faulty = `<group> group_label=soft sw_lokey=24 sw_hikey=25 sw_last=24 sw_label=held
<region> sample=one.wav lokey=48 hikey=55 pitch_keycenter=50
<region> sample=two.wav lokey=53 hikey=59 pitch_keycenter=57
<group> group_label=loud
<region> sample=three.wav lokey=64 hikey=67 pitch_keycenter=65
<region> sample=four.wav lokey=-1 hikey=-1
<region> sample=five.wav lokey=60 hikey=50`;

const sceneOf = (text: string) =>
  buildMapScene(readSfz(text, { path: 'bells.sfz', include: () => ({ kind: 'missing' }) }));

describe.skipIf(!hasBrowser)('the page of the keyboard map in a browser', () => {
  const pages = new PageBrowser('keyboardMap', 'keyboard-map');

  const open = (how: OpenedPage = {}) => pages.open(how);
  const tell = (page: Page, message: MapToPage) => send(page, message);
  const told = (page: Page) => sent<MapFromPage | { type: 'ready' }>(page);
  const show = (page: Page, text = bells, document = 'bells.sfz', version = 1) =>
    tell(page, { type: 'scene', scene: sceneOf(text), document, version });
  /** The colours of all pixels of a picture that are not translucent, as `#rrggbb`. */
  const coloursOf = async (page: Page, selector: string): Promise<Set<string>> => {
    const found: string[] = await page.evaluate(`(() => {
      const canvas = document.querySelector('${selector}');
      const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
      const found = new Set();
      for (let at = 0; at < data.length; at += 4)
        if (data[at + 3] === 255) found.add('#' + [0, 1, 2].map((part) => data[at + part].toString(16).padStart(2, '0')).join(''));
      return [...found];
    })()`);
    return new Set(found);
  };
  const pixelsOf = (page: Page, colour: string): Promise<number> =>
    page.evaluate(`(() => {
      const { width, height } = document.querySelector('.marks');
      const { data } = document.querySelector('.marks').getContext('2d').getImageData(0, 0, width, height);
      const wanted = [1, 3, 5].map((at) => Number.parseInt('${colour}'.slice(at, at + 2), 16));
      let count = 0;
      for (let at = 0; at < data.length; at += 4) if (wanted.every((part, by) => data[at + by] === part)) count++;
      return count;
    })()`);
  const groupName = (page: Page, name: string) =>
    page.locator('.layer .name').getByText(name, { exact: true });
  const focused = async (page: Page) => {
    const id = await page.getByRole('listbox').getAttribute('aria-activedescendant');
    return page.locator(`#${id}`).getAttribute('aria-label');
  };

  it('says that it is ready and shows a hint until there is a map', async () => {
    const page = await open();
    expect(await told(page)).toEqual([{ type: 'ready' }]);
    await tell(page, { type: 'empty', reason: 'Nothing <here>.' });
    expect(await page.getByText('Nothing <here>.').isVisible()).toBe(true);
    expect(await page.getByText('The keyboard map shows which keys').isVisible()).toBe(true);
    expect(await page.getByRole('listbox').count()).toBe(0);
    expect(await accessibilityFaults(page)).toEqual([]);
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
    expect((await told(page)).at(-1)).toEqual({
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
    expect((await told(page)).at(-1)).toMatchObject({ type: 'choose', header: 2 });
    await page.keyboard.press('Escape');
    expect(await page.locator(':focus').getAttribute('role')).toBe('listbox');
    await page.keyboard.press('End');
    expect(await focused(page)).toContain('F#3 to B3, velocity 64 to 127');
    await page.keyboard.press('PageUp');
    expect(await focused(page)).toContain('F#3 to B3, velocity 1 to 63');
  });

  it('shows details under the pointer and chooses by a click', async () => {
    const page = await open();
    await show(page);
    const details = page.getByRole('region', { name: 'Details' });
    await page.locator('#shape-2').hover({ position: { x: 4, y: 40 } });
    expect(await details.textContent()).toContain('C3 to F3, velocity 64 to 127, group loud');
    await page.locator('#shape-1').click({ position: { x: 4, y: 40 } });
    expect((await told(page)).at(-1)).toMatchObject({ type: 'choose', header: 3 });
    await details.getByRole('button', { name: 'three.wav' }).click();
    expect((await told(page)).filter(({ type }) => type === 'choose')).toHaveLength(2);
  });

  it('marks the shapes at the text cursor and keeps selection and focus when the text changes', async () => {
    const page = await open();
    await show(page);
    await tell(page, { type: 'select', regions: [2, 5] });
    const selected = () =>
      page
        .locator('.shape-options > [aria-selected=true]')
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
  });

  it('switches layers off and on, and zooms', async () => {
    const page = await open();
    await show(page);
    const loud = page.getByRole('checkbox', { name: 'loud' });
    const shapes = () => page.locator('.shape-options > [role=option]').count();
    await groupName(page, 'loud').click();
    expect([await loud.isChecked(), await shapes()]).toEqual([false, 2]);
    await loud.press('Space');
    expect([await loud.isChecked(), await shapes()]).toEqual([true, 4]);
    // As a screen reader presses it.
    await loud.evaluate((box: { click(): void }) => box.click());
    expect([await loud.isChecked(), await shapes()]).toEqual([false, 2]);
    await loud.press('Space');
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
  });

  it.each(themeNames)('takes its colours from the theme %s, and axe-core finds no fault', async (theme) => {
    const page = await open({ theme });
    const { variables } = themes[theme];
    await show(page, faulty);
    await tell(page, { type: 'select', regions: [2] });
    for (const list of await page.locator('summary').all()) await list.click();
    await page.getByRole('listbox').focus();
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(await styleOf(page, 'body', 'backgroundColor')).toBe(rgb(variables['editor-background'] ?? ''));
    const inked = [...(await coloursOf(page, '.picture.marks'))];
    expect(inked).toContain(variables.focusBorder);
    const painted = await coloursOf(page, '.picture');
    expect(painted).toContain(variables['editor-background']);
    // Letters are thin, so that few of their pixels have the whole colour.
    expect(painted).toContain(variables.foreground);
    if (theme.startsWith('highContrast'))
      expect(await styleOf(page, '.details', 'borderTopColor')).toBe(rgb(variables.contrastBorder ?? ''));
  });

  it.each([300, 420])('needs no sideways scrolling at %i pixels', async (width) => {
    const page = await open({ width });
    await show(page, faulty);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  it('has room for plot and keyboard in a panel of 250 pixels', async () => {
    const page = await open({ height: 250, width: 1000 });
    await show(page, articulated);
    const bottom = async () => {
      const box = await page.getByRole('listbox', { name: 'Regions' }).boundingBox();
      return (box?.y ?? 0) + (box?.height ?? 999);
    };
    expect(await bottom()).toBeLessThanOrEqual(250);
    // A panel that is made lower still, as by its border.
    await page.setViewportSize({ width: 1000, height: 300 });
    await page.setViewportSize({ width: 1000, height: 232 });
    await expect.poll(bottom).toBeLessThanOrEqual(232);
  });

  it('shows what a group, a keyswitch, a trigger or a problem narrows it down to', async () => {
    const page = await open();
    await show(page, articulated);
    const labels = () =>
      page
        .getByRole('option', { name: 'velocity' })
        .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')?.split(', ')[2]));
    expect(await labels()).toHaveLength(4);
    const long = page.getByRole('button', { name: 'C1 long', exact: true });
    await long.click();
    expect(await long.getAttribute('aria-pressed')).toBe('true');
    // The group without a keyswitch sounds in any case.
    expect((await labels()).sort()).toEqual(['group always', 'group held', 'group release']);
    await choose(page, 'Trigger', 'trigger=release');
    expect(await labels()).toEqual(['group release']);
    await page.getByRole('button', { name: 'Show all' }).click();
    expect(await labels()).toHaveLength(4);
    await choose(page, 'Group', 'short');
    expect(await labels()).toEqual(['group short']);
    expect(await page.getByRole('checkbox', { name: 'held' }).isChecked()).toBe(false);
    await choose(page, 'Group', 'All groups');

    const header = sceneOf(articulated).shapes[1].regions[0].header;
    await tell(page, {
      type: 'problems',
      problems: [{ header, severity: 'error', message: 'No file "two.wav".' }],
    });
    await page.getByText('Only regions with problems').click();
    expect(await labels()).toEqual(['group short']);
    expect(await page.getByRole('option', { name: 'root key D3, 1 problem' }).count()).toBe(1);
    await page.getByText('Problems of regions in words').click();
    expect(await page.getByText('C3 to F3: No file "two.wav".').isVisible()).toBe(true);
    expect(await page.getByRole('img', { name: 'Error' }).count()).toBe(1);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'No file "two.wav".' }).click();
    expect((await told(page)).at(-1)).toMatchObject({ type: 'choose', header });
    await tell(page, { type: 'problems', problems: [] });
    expect(await page.getByText('No region matches what is shown.').isVisible()).toBe(true);
    await page.getByRole('button', { name: 'Show all' }).click();
    await page.locator('#shape-3').click({ position: { x: 4, y: 40 } });
    await page.getByRole('button', { name: 'Only the group always' }).click();
    expect(await labels()).toEqual(['group always']);
    await page.getByRole('listbox', { name: 'Regions' }).focus();
    await page.keyboard.press('o');
    expect(await labels()).toHaveLength(4);
    await page.keyboard.press('o');
    expect(await labels()).toEqual(['group always']);
    await page.getByRole('button', { name: 'Show short alone' }).click();
    expect(await labels()).toEqual(['group short']);
    // Where there is little room, a list does what the row of buttons does.
    await page.setViewportSize({ width: 900, height: 250 });
    expect(await long.isVisible()).toBe(false);
    await choose(page, 'Group', 'All groups');
    await choose(page, 'Keyswitch', 'C#1 short');
    expect((await labels()).sort()).toEqual(['group always', 'group short']);
  });

  it('shows what one strike in turn or one state of a controller starts', async () => {
    const page = await open();
    await show(
      page,
      `<group> seq_length=2
<region> sample=one.wav key=48 seq_position=1
<region> sample=two.wav key=49 seq_position=2
<group> <region> sample=three.wav key=50 hicc64=63
<region> sample=four.wav key=51 locc64=64
<region> sample=five.wav key=52`,
    );
    const samples = () =>
      page
        .getByRole('option', { name: 'velocity' })
        .evaluateAll((all) =>
          all.map((one) => /sample (\w+)/.exec(one.getAttribute('aria-label') ?? '')?.[1]).sort(),
        );
    await choose(page, 'Round robin', 'Round robin: strike 2');
    expect(await samples()).toEqual(['five', 'four', 'three', 'two']);
    await choose(page, 'Controller', 'Controller 64: 64 to 127');
    expect(await samples()).toEqual(['five', 'four', 'two']);
    await page.getByRole('button', { name: 'Show all' }).click();
    expect(await samples()).toHaveLength(5);
  });

  it('says that groups lie one over the other, shows each in one press, and makes a small chosen shape stand out', async () => {
    const page = await open();
    const keys = Array.from({ length: 60 }, (_, at) => `<region> sample=a.wav key=${30 + at}`).join('\n');
    await show(
      page,
      ['one', 'two', 'three'].map((name) => `<group> group_label=${name}\n${keys}`).join('\n'),
    );
    const shown = page.getByText('3 groups one over the other');
    expect(await shown.isVisible()).toBe(true);
    await page.getByRole('button', { name: 'two', exact: true }).click();
    expect(await page.getByRole('option', { name: 'group two' }).count()).toBe(60);
    expect(await shown.count()).toBe(0);
    const ink = '#3b3b3b';
    expect(await coloursOf(page, '.marks')).not.toContain(ink);
    const before = await pixelsOf(page, ink);
    await tell(page, {
      type: 'select',
      regions: [sceneOf(`<group>\n${keys}`).shapes[5].regions[0].header + 61],
    });
    expect((await pixelsOf(page, ink)) - before).toBeGreaterThan(600);
  });

  it('leads from a gap or an overlap in words to the text', async () => {
    const page = await open();
    await show(page, faulty);
    await page.getByText('Gaps and overlaps in words').click();
    await page.getByRole('button', { name: 'Overlap: ' }).click();
    expect((await told(page)).at(-1)).toMatchObject({ type: 'choose', header: 2 });
    await page.getByRole('button', { name: 'Gap: C4 to D#4' }).click();
    expect((await told(page)).at(-1)).toMatchObject({ type: 'choose', header: 4 });
  });

  it('remembers zoom, hidden groups and open lists of a document', async () => {
    const page = await open();
    await show(page, faulty);
    await page.getByRole('button', { name: 'Zoom in' }).click();
    await groupName(page, 'soft').click();
    await page.getByText('Gaps and overlaps in words').click();
    await expect.poll(() => page.evaluate('window.kept.openLists')).toHaveLength(1);
    const state = (await page.evaluate('window.kept')) as object;

    const again = await open({ state });
    await show(again, faulty);
    expect(await again.getByRole('checkbox', { name: 'soft' }).isChecked()).toBe(false);
    expect(await again.getByText('150 %').isVisible()).toBe(true);
    expect(await again.getByText('Overlap: ').isVisible()).toBe(true);
    await show(again, faulty, 'other.sfz');
    expect(await again.getByRole('checkbox', { name: 'soft' }).isChecked()).toBe(true);
  });

  it('ran without an error and without anything that its content policy refuses', () => {
    expect(pages.troubles).toEqual([]);
  });
});
