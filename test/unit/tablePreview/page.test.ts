import { existsSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { HostMessage, PageMessage } from '../../../client/tablePreview/messages';
import type { PreviewTableResult, TableDecisions } from '../../../server/protocol/requests/tableRequests';
import { PageBrowser } from '../pageBrowser';

const executable = process.env.ZONEWRIGHT_CHROMIUM ?? '/usr/bin/chromium';
const markup = '<img src=x onerror="window.broken = true">';

const preview: PreviewTableResult = {
  columns: [
    {
      index: 0,
      heading: 'Name',
      meaning: 'sample',
      confidence: 0.95,
      evidence: ['The heading says so.'],
      examples: ['one.wav', markup],
    },
    {
      index: 1,
      heading: markup,
      meaning: 'lokey',
      confidence: 0.7,
      evidence: [`Cells such as ${markup} say so.`],
      examples: ['C3'],
    },
    { index: 2, heading: '', meaning: 'unknown', confidence: 0, evidence: [], examples: [] },
  ],
  rows: [
    { line: 1, cells: ['Name', markup, ''], isHeading: true, notes: [] },
    { line: 2, cells: ['one.wav', 'C3', 'x'], isHeading: false, notes: [1] },
    { line: 3, cells: [markup, 'C4'], isHeading: false, notes: [] },
  ],
  rowCount: 5,
  groupings: [{ kind: 'layers', message: 'The sample names of 2 regions tell their velocity layers: p, f.' }],
  samples: [
    { name: `"two" ${markup}.wav`, choices: ['a/two.wav', "b/'two'.wav"], taken: 'a/two.wav' },
    { name: 'three.wav', choices: ['tree.wav'] },
  ],
  middleC: 'C3',
  markup: `<region> sample=one.wav lokey=48\n<region> sample=${markup}\n`,
  notes: [
    { kind: 'assumed', message: `Key 60 was taken to be called C3. ${markup}`, line: 1 },
    { kind: 'dropped', message: 'Line 2: "x" is left out.', line: 2 },
  ],
  regionCount: 2,
  matchCount: 1,
  changedCount: 1,
  unchangedCount: 0,
  addedCount: 1,
  headings: 'name\tlow\t',
  edits: [],
};

/** Values of theme variables as three kinds of theme set them; the colours are invented. */
const themes = {
  'vscode-light': {
    foreground: '#333333',
    'editor-background': '#ffffff',
    focusBorder: '#0055bb',
    'button-background': '#0055aa',
    'button-foreground': '#ffffff',
  },
  'vscode-dark': {
    foreground: '#cccccc',
    'editor-background': '#202020',
    focusBorder: '#3388dd',
    'button-background': '#226699',
    'button-foreground': '#f0f0f0',
  },
  'vscode-high-contrast': {
    foreground: '#ffffff',
    'editor-background': '#000000',
    focusBorder: '#ff8800',
    contrastBorder: '#66ccdd',
  },
};

describe.skipIf(!existsSync(executable))('the page of the table preview in a browser', () => {
  let pages: PageBrowser;

  beforeAll(async () => {
    pages = await PageBrowser.start(executable, 'tablePreview');
  });

  afterAll(() => pages?.close());

  async function open(theme: keyof typeof themes = 'vscode-light', width = 1100): Promise<Page> {
    return pages.open({
      title: 'Copied table',
      id: 'table-preview',
      theme,
      variables: themes[theme],
      width,
      height: 800,
    });
  }

  const send = (page: Page, message: HostMessage) =>
    page.evaluate(`window.dispatchEvent(new MessageEvent('message', { data: ${JSON.stringify(message)} }))`);
  const last = async (page: Page) => ((await page.evaluate('window.sent')) as PageMessage[]).at(-1);
  const show = (
    page: Page,
    decisions: TableDecisions = {},
    change: Partial<PreviewTableResult> = {},
    place: Extract<HostMessage, { type: 'preview' }>['place'] = { kind: 'document', name: 'bells.sfz' },
  ) => send(page, { type: 'preview', preview: { ...preview, ...change }, decisions, place });
  const focused = (page: Page) => page.evaluate('document.activeElement.id') as Promise<string>;

  it('says that it is ready, and why there is nothing to show', async () => {
    const page = await open();
    expect(await last(page)).toEqual({ type: 'ready' });
    await send(page, { type: 'empty', reason: 'Nothing <here>.' });
    expect(await page.getByText('Nothing <here>.').isVisible()).toBe(true);
    expect(await page.getByRole('button').count()).toBe(0);
    await page.close();
  });

  it('shows columns, rows with notes beside them, and the text, all of it escaped', async () => {
    const page = await open();
    await show(page);
    const columns = page.getByRole('region', { name: 'Columns as understood' });
    expect(await columns.getByRole('row').count()).toBe(4);
    expect(await columns.getByText('Sure (95 %).').count()).toBe(1);
    expect(await columns.getByText('Likely (70 %).').count()).toBe(1);
    expect(await columns.getByText('The heading says so.').count()).toBe(1);
    const meaning = page.getByRole('combobox', { name: 'Meaning of Name' });
    expect(await meaning.inputValue()).toBe('sample');
    const row = page
      .getByRole('row')
      .filter({ has: page.getByRole('rowheader', { name: '2', exact: true }) });
    expect(await row.getByText('Line 2: "x" is left out.').isVisible()).toBe(true);
    expect(await page.getByText('Key 60 was taken to be called C3.').isVisible()).toBe(true);
    expect(await page.getByText('and 2 more rows').count()).toBe(1);
    expect(await page.locator('pre').textContent()).toBe(preview.markup);
    expect(await page.locator('img').count()).toBe(0);
    expect(await page.evaluate('window.broken')).toBeUndefined();
    await page.close();
  });

  it('tells what is chosen, and keeps the focus when the preview is made anew', async () => {
    const page = await open();
    await show(page);
    await page.getByRole('combobox', { name: 'Meaning of Column 3' }).focus();
    await page.getByRole('combobox', { name: 'Meaning of Column 3' }).selectOption('hikey');
    expect(await last(page)).toEqual({ type: 'column', column: 2, meaning: 'hikey' });
    await show(page, { columns: [[2, 'hikey']] });
    expect(await focused(page)).toBe('column-2');
    expect(await page.getByText('Set by hand.').count()).toBe(1);
    await page
      .getByRole('combobox', { name: 'Meaning of Column 3' })
      .selectOption({ label: 'as found by itself' });
    expect(await last(page)).toEqual({ type: 'column', column: 2, meaning: null });

    await page.getByRole('combobox', { name: 'Key 60, middle C, is called' }).selectOption('C5');
    expect(await last(page)).toEqual({ type: 'middleC', middleC: 'C5' });
    await page.getByRole('checkbox', { name: 'Group by velocity layer.' }).check();
    expect(await last(page)).toEqual({ type: 'grouping', kind: 'layers', isTaken: true });
    const sample = page.getByRole('combobox', { name: `"two" ${markup}.wav` });
    await sample.selectOption("b/'two'.wav");
    expect(await last(page)).toEqual({ type: 'sample', name: `"two" ${markup}.wav`, path: "b/'two'.wav" });
    await page.getByRole('combobox', { name: 'three.wav' }).selectOption('tree.wav');
    expect(await last(page)).toEqual({ type: 'sample', name: 'three.wav', path: 'tree.wav' });
    await page.getByRole('radio', { name: /Change those regions/ }).check();
    expect(await last(page)).toEqual({ type: 'update', isUpdate: true });
    await show(page, { update: true, columns: [[2, 'hikey']] });
    expect(await page.getByText('1 region to change, 0 the same already, 1 to add; 2 notes.').count()).toBe(
      1,
    );
    await page.getByRole('button', { name: 'Show the difference' }).click();
    expect(await last(page)).toEqual({ type: 'write' });
    await page.getByRole('button', { name: 'Forget corrections for these headings' }).click();
    expect(await last(page)).toEqual({ type: 'forget' });
    await page.close();
  });

  it('can be used with the keyboard alone', async () => {
    const page = await open();
    await show(page);
    expect(await focused(page)).toBe('write');
    await page.keyboard.press('Enter');
    expect(await last(page)).toEqual({ type: 'write' });
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    expect(await last(page)).toEqual({ type: 'writeText' });
    // Round the page backwards: every control and both scrolled parts are reached.
    const reached = new Set<string>();
    for (let step = 0; step < 20; step++) {
      reached.add(await focused(page));
      await page.keyboard.press('Shift+Tab');
    }
    for (const id of ['rows', 'markup', 'sample-1', 'sample-0', 'grouping-layers', 'middle-c', 'column-0'])
      expect([...reached], id).toContain(id);
    await page.locator('#column-0').focus();
    await page.keyboard.press('Control+Enter');
    expect(await last(page)).toEqual({ type: 'write' });
    await page.close();
  });

  it('offers nothing to write where the text is no table yet, but the columns to correct', async () => {
    const page = await open();
    await show(page, {}, { problem: 'No column of <sample> names was found.', regionCount: 0 });
    expect(await page.getByRole('alert').textContent()).toBe('No column of <sample> names was found.');
    expect(await page.getByRole('button', { name: 'Write', exact: true }).isDisabled()).toBe(true);
    await page.keyboard.press('Control+Enter');
    expect(await last(page)).toEqual({ type: 'ready' });
    expect(await page.getByRole('combobox', { name: 'Meaning of Name' }).isEnabled()).toBe(true);
    await page.close();
  });

  it('asks for the notation of a new document, and for nothing that only documents have', async () => {
    const page = await open();
    await show(page, {}, {}, { kind: 'new', format: 'sfz' });
    await page.getByRole('combobox', { name: 'Notation of the new document' }).selectOption('xml');
    expect(await last(page)).toEqual({ type: 'format', format: 'xml' });
    expect(await page.getByRole('radio').count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Write as text' }).count()).toBe(0);
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
      expect(await colour('h1', 'color')).toBe(rgb(themes[theme].foreground));
      await page.keyboard.press('Tab');
      expect(await colour(':focus', 'outlineColor')).toBe(rgb(themes[theme].focusBorder));
      if (theme === 'vscode-high-contrast') {
        expect(await colour('.markup', 'borderTopColor')).toBe(rgb('#66ccdd'));
        expect(await colour('button.main', 'borderTopColor')).toBe(rgb('#66ccdd'));
      } else expect(await colour('button.main', 'color')).toBe(rgb(themes[theme]['button-foreground']));
      await page.close();
    },
  );

  it('needs no sideways scrolling in a narrow panel', async () => {
    const page = await open('vscode-dark', 420);
    await show(page);
    expect(await page.evaluate('document.documentElement.scrollWidth <= window.innerWidth')).toBe(true);
    await page.close();
  });

  it('ran without an error and without anything that its content policy refuses', () => {
    expect(pages.troubles).toEqual([]);
  });
});
