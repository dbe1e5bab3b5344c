import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { PreviewFromPage, PreviewToPage } from '../../../client/tablePreview/messages';
import type { PreviewTableResult, TableDecisions } from '../../../server/protocol/requests/tableRequests';
import { accessibilityFaults } from './accessibility';
import { hasBrowser } from './browser';
import type { OpenedPage } from './pageBrowser';
import { choose, PageBrowser, rgb, send, sent, styleOf, themeNames, themes } from './pageBrowser';

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
      scale: {
        taken: 'dB',
        reason: `All numbers lie below ${markup}.`,
        options: [
          { id: 'dB', label: 'dB' },
          { id: 'percent', label: 'percent' },
        ],
      },
    },
    { index: 2, heading: '', meaning: 'unknown', confidence: 0, evidence: [], examples: [] },
  ],
  rows: [
    { line: 1, cells: ['Name', markup, ''], isHeading: true, notes: [] },
    { line: 2, cells: ['one.wav', 'C3', 'x'], isHeading: false, notes: [1] },
    { line: 3, cells: [markup, 'C4'], isHeading: false, notes: [] },
  ],
  rowCount: 5,
  groupings: [{ kind: 'layers', message: 'The sample names of 2 regions give their velocity layers: p, f.' }],
  samples: [
    { name: `"two" ${markup}.wav`, choices: ['a/two.wav', "b/'two'.wav"], taken: 'a/two.wav' },
    { name: 'three.wav', choices: ['tree.wav'] },
  ],
  middleC: 'C3',
  markup: `<region> sample=one.wav lokey=48\n<region> sample=${markup}\n`,
  moreLines: 0,
  notes: [
    { kind: 'assumed', message: `Key 60 is read as C3. ${markup}`, line: 1 },
    { kind: 'dropped', message: 'Line 2: "x" is left out.', line: 2 },
  ],
  regionCount: 2,
  matchCount: 1,
  changedCount: 1,
  unchangedCount: 0,
  goneCount: 0,
  addedCount: 1,
  headings: 'name\tlow\t',
  edits: [],
};

describe.skipIf(!hasBrowser)('the page of the table preview in a browser', () => {
  const pages = new PageBrowser('tablePreview', 'table-preview');

  const open = (how: OpenedPage = {}) => pages.open({ width: 1100, height: 800, ...how });
  const tell = (page: Page, message: PreviewToPage) => send(page, message);
  const last = async (page: Page) => (await sent<PreviewFromPage | { type: 'ready' }>(page)).at(-1);
  const show = (
    page: Page,
    decisions: TableDecisions = {},
    change: Partial<PreviewTableResult> = {},
    place: Extract<PreviewToPage, { type: 'preview' }>['place'] = { kind: 'document', name: 'bells.sfz' },
  ) => tell(page, { type: 'preview', preview: { ...preview, ...change }, decisions, place });
  const focused = (page: Page) => page.evaluate('document.activeElement.id') as Promise<string>;

  it('says that it is ready, and why there is nothing to show', async () => {
    const page = await open();
    expect(await last(page)).toEqual({ type: 'ready' });
    await tell(page, { type: 'empty', reason: 'Nothing <here>.' });
    expect(await page.getByText('Nothing <here>.').isVisible()).toBe(true);
    expect(await page.getByRole('button').count()).toBe(0);
    expect(await accessibilityFaults(page)).toEqual([]);
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
    expect(await meaning.inputValue()).toBe('sample file');
    const row = page
      .getByRole('row')
      .filter({ has: page.getByRole('rowheader', { name: '2', exact: true }) });
    expect(await row.getByText('Line 2: "x" is left out.').isVisible()).toBe(true);
    expect(await page.getByText('Key 60 is read as C3.').isVisible()).toBe(true);
    expect(await page.getByText('and 2 more rows').count()).toBe(1);
    expect(await page.locator('pre').textContent()).toBe(preview.markup);
    expect(await page.locator('img').count()).toBe(0);
    expect(await page.evaluate('window.broken')).toBeUndefined();
  });

  it('offers how the numbers of a column are counted, with the reason, by keyboard too', async () => {
    const page = await open();
    await show(page);
    expect(await page.getByText('Scale: All numbers lie below').count()).toBe(1);
    await choose(page, `Scale of ${markup}`, 'percent');
    expect(await last(page)).toEqual({ type: 'scale', column: 1, scale: 'percent' });
    await show(page, { scales: [[1, 'percent']] });
    expect(await page.getByText('Scale: set by hand.').count()).toBe(1);
    expect(await page.getByRole('button', { name: 'Forget corrections for these headings' }).count()).toBe(1);
    await choose(page, `Scale of ${markup}`, 'automatic');
    expect(await last(page)).toEqual({ type: 'scale', column: 1, scale: null });
    await page.locator('#scale-1').focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    expect((await last(page))?.type).toBe('scale');
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  it('tells what is chosen, and keeps the focus when the preview is made anew', async () => {
    const page = await open();
    await show(page);
    await page.getByRole('combobox', { name: 'Meaning of Column 3' }).focus();
    await choose(page, 'Meaning of Column 3', 'high key');
    expect(await last(page)).toEqual({ type: 'column', column: 2, meaning: 'hikey' });
    await show(page, { columns: [[2, 'hikey']] });
    expect(await focused(page)).toBe('column-2');
    expect(await page.getByText('Set by hand.').count()).toBe(1);
    await choose(page, 'Meaning of Column 3', 'automatic');
    expect(await last(page)).toEqual({ type: 'column', column: 2, meaning: null });

    await choose(page, 'Key 60, middle C, is called', 'C5');
    expect(await last(page)).toEqual({ type: 'middleC', middleC: 'C5' });
    await page.getByText('Group by velocity layer.').click();
    expect(await last(page)).toEqual({ type: 'grouping', kind: 'layers', isTaken: true });
    await choose(page, `"two" ${markup}.wav`, "b/'two'.wav");
    expect(await last(page)).toEqual({ type: 'sample', name: `"two" ${markup}.wav`, path: "b/'two'.wav" });
    await choose(page, 'three.wav', 'tree.wav');
    expect(await last(page)).toEqual({ type: 'sample', name: 'three.wav', path: 'tree.wav' });
    await page.getByText('Change those regions').click();
    expect(await last(page)).toEqual({ type: 'update', isUpdate: true });
    await show(page, { update: true, columns: [[2, 'hikey']] });
    expect(await page.getByText('1 region to change, 0 the same already, 1 to add; 2 notes.').count()).toBe(
      1,
    );
    await page.getByRole('button', { name: 'Show the difference' }).click();
    expect(await last(page)).toEqual({ type: 'write' });
    await page.getByRole('button', { name: 'Forget corrections for these headings' }).click();
    expect(await last(page)).toEqual({ type: 'forget' });
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
  });

  it('offers nothing to write where the text is no table yet, but the columns to correct', async () => {
    const page = await open();
    await show(page, {}, { problem: 'No column of <sample> names was found.', regionCount: 0 });
    expect(await page.getByRole('alert').textContent()).toBe('No column of <sample> names was found.');
    expect(await page.getByRole('button', { name: 'Write', exact: true }).isDisabled()).toBe(true);
    await page.keyboard.press('Control+Enter');
    expect(await last(page)).toEqual({ type: 'ready' });
    expect(await page.getByRole('combobox', { name: 'Meaning of Name' }).isEnabled()).toBe(true);
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  it('asks for the notation of a new document, and for nothing that only documents have', async () => {
    const page = await open();
    await show(page, {}, {}, { kind: 'new', format: 'sfz' });
    await choose(page, 'Notation of the new document', 'Instrument XML');
    expect(await last(page)).toEqual({ type: 'format', format: 'xml' });
    expect(await page.getByRole('checkbox', { name: /Change those regions/ }).count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Write as text' }).count()).toBe(0);
  });

  it.each(themeNames)('takes its colours from the theme %s, and axe-core finds no fault', async (theme) => {
    const page = await open({ theme });
    const { variables } = themes[theme];
    await show(page, { columns: [[1, 'lokey']] });
    await page.getByRole('combobox', { name: 'Meaning of Name' }).click();
    expect(await page.getByRole('option', { name: 'root key', exact: true }).isVisible()).toBe(true);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    expect(await styleOf(page, 'body', 'backgroundColor')).toBe(rgb(variables['editor-background'] ?? ''));
    expect(await styleOf(page, 'h1', 'color')).toBe(rgb(variables.foreground ?? ''));
    await page.locator('#markup').focus();
    await page.keyboard.press('Tab');
    expect(await styleOf(page, ':focus', 'outlineColor')).toBe(rgb(variables.focusBorder ?? ''));
    if (theme.startsWith('highContrast'))
      expect(await styleOf(page, '.markup', 'borderTopColor')).toBe(rgb(variables.contrastBorder ?? ''));
  });

  it.each([300, 420])('needs no sideways scrolling at %i pixels', async (width) => {
    const page = await open({ theme: 'dark', width });
    await show(page);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  it('ran without an error and without anything that its content policy refuses', () => {
    expect(pages.troubles).toEqual([]);
  });
});
