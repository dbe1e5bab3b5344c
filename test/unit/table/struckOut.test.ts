import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const wiki = (...rows: string[]) =>
  `{| class="wikitable"\n! Sample !! Low !! High !! Root\n${rows.map((row) => (row.startsWith('|-') ? row : `|-\n${row}`)).join('\n')}\n|}\n`;
const html = (...rows: string[]) =>
  `<table><tr><th>Sample</th><th>Low</th><th>High</th><th>Root</th></tr>${rows.join('')}</table>`;
const markdown = (...rows: string[]) =>
  `| Sample | Low | High | Root |\n|---|---|---|---|\n${rows.join('\n')}\n`;

/** The samples, keys and root of all regions, one string a region. */
const zones = (text: string) =>
  regions(text).map(({ sample, lokey, hikey, pitch_keycenter }) =>
    [sample, lokey, hikey, pitch_keycenter].join(' '),
  );

// Common practice of wikis and forums; `s`, `del` and `text-decoration` as in the HTML Living Standard and CSS Text Decoration 3.
describe('a row that is struck out', () => {
  it.each([
    [
      'a wiki',
      wiki(
        '| a.wav || 40 || 47 || 44',
        '| <s>b.wav</s> || <s>48</s> || <s>52</s> || <s>50</s>',
        '| c.wav || 48 || 53 || 50',
      ),
    ],
    [
      'a wiki, by its name alone',
      wiki('| a.wav || 40 || 47 || 44', '| <del>b.wav</del> || 48 || 52 || 50', '| c.wav || 48 || 53 || 50'),
    ],
    [
      'a wiki, by the style of the row',
      wiki(
        '| a.wav || 40 || 47 || 44',
        '|- style="text-decoration: line-through"\n| b.wav || 48 || 52 || 50',
        '| c.wav || 48 || 53 || 50',
      ),
    ],
    [
      'a page',
      html(
        '<tr><td>a.wav<td>40<td>47<td>44',
        '<tr><td><strike>b.wav</strike><td><s>48</s><td><s>52</s><td>50',
        '<tr><td>c.wav<td>48<td>53<td>50',
      ),
    ],
    [
      'a page, by a span',
      html(
        '<tr><td>a.wav<td>40<td>47<td>44',
        '<tr><td><span style="text-decoration:line-through">b.wav</span><td>48<td>52<td>50',
        '<tr><td>c.wav<td>48<td>53<td>50',
      ),
    ],
    [
      'a spreadsheet, by a class',
      `<html><style>.x1 {color:red} .x2\n{font-style:normal; text-decoration:line-through;}</style>${html('<tr><td>a.wav<td>40<td>47<td>44', '<tr class="r x2"><td>b.wav<td>48<td>52<td>50', '<tr class="x1"><td>c.wav<td>48<td>53<td>50')}</html>`,
    ],
    [
      'Markdown',
      markdown(
        '| a.wav | 40 | 47 | 44 |',
        '| ~~b.wav~~ | ~~48~~ | ~~52~~ | 50 |',
        '| c.wav | 48 | 53 | 50 |',
      ),
    ],
  ])('of %s is left out and noted', (_, text) => {
    expect(zones(text)).toEqual(['a.wav 40 47 44', 'c.wav 48 53 50']);
    expect(notesOf(text).join()).toContain('is struck out');
  });

  it('stays out where rows below others share their keys', () => {
    const text = wiki(
      '| a.wav || rowspan="2" | 40 || rowspan="2" | 47 || rowspan="2" | 44',
      '| <s>a_old.wav</s>',
      '| b.wav || 48 || 53 || 50',
    );
    expect(zones(text)).toEqual(['a.wav 40 47 44', 'b.wav 48 53 50']);
  });
});

describe('a value that is struck out', () => {
  it.each([
    ['a wiki', wiki('| a.wav || 40 || <s>46</s> 47 || 44', '| b.wav || 48 || 53 || 50')],
    ['a page', html('<tr><td>a.wav<td>40<td><del>46</del> 47<td>44', '<tr><td>b.wav<td>48<td>53<td>50')],
    ['Markdown', markdown('| a.wav | 40 | ~~46~~ 47 | 44 |', '| b.wav | 48 | 53 | 50 |')],
  ])('of %s gives way to the one beside it, with a note', (_, text) => {
    expect(zones(text)).toEqual(['a.wav 40 47 44', 'b.wav 48 53 50']);
    expect(notesOf(text).join()).toContain('"46" is struck out, so "47" is taken');
  });

  it('counts as empty where nothing stands beside it', () => {
    const text = html('<tr><td>a.wav<td>40<td>47<td><s>45</s>', '<tr><td>b.wav<td>48<td>53<td>50');
    expect(regions(text)[0]).not.toHaveProperty('pitch_keycenter', '45');
    expect(notesOf(text).join()).toContain('"45" is struck out, so the cell counts as empty');
  });

  it('is no row: one of two files that is struck out goes alone', () => {
    const text =
      '| Root | Near | Far |\n|---|---|---|\n| 40 | a_n.wav | ~~a_f.wav~~ |\n| 45 | b_n.wav | b_f.wav |\n';
    expect(regions(text).map(({ sample }) => sample)).toEqual(['a_n.wav', 'b_n.wav', 'b_f.wav']);
  });
});

// A line over letters is U+0336 of Unicode, combining long stroke overlay.
describe('a row that is struck out in plain text', () => {
  const struckOver = (text: string) => [...text].map((letter) => `${letter}\u0336`).join('');
  it.each([
    ['in each cell', '~~b.wav~~ | ~~46~~ | ~~50~~ | ~~48~~'],
    ['as a line', '~~b.wav | 46 | 50 | 48~~'],
    ['on a message board', '[s]b.wav[/s] | [s]46[/s] | [s]50[/s] | [s]48[/s]'],
    ['by its name', '~~b.wav~~ | 46 | 50 | 48'],
    ['letter by letter', ['b.wav', '46', '50', '48'].map(struckOver).join(' | ')],
  ])('is no zone: %s', (_, row) => {
    const text = table('File | Low | High | Root', 'a.wav | 40 | 45 | 43', row, 'c.wav | 51 | 55 | 53');
    expect(zones(text)).toEqual(['a.wav 40 45 43', 'c.wav 51 55 53']);
    expect(notesOf(text).join('\n')).toMatch(/Line 3 is no zone: it is struck out/);
  });

  it('says nothing of the table', () => {
    const rows = table('File | Low | High | Root', 'a.wav | C3 | E3 | D3', 'b.wav | F3 | A3 | G3');
    expect(zones(`~~Middle C is C3.~~\n\n${rows}`)[0]).toBe('a.wav 48 52 50');
    expect(zones(`Middle C is C3.\n\n${rows}`)[0]).toBe('a.wav 60 64 62');
  });

  it('leaves a value beside a struck-out one', () => {
    const text = table('File | Low | High | Root', 'a.wav | 40 | 45 | ~~42~~ 43', 'b.wav | 46 | 50 | 48');
    expect(zones(text)).toEqual(['a.wav 40 45 43', 'b.wav 46 50 48']);
  });
});
