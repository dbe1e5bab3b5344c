import { describe, expect, it } from 'vitest';
import { notesOf, regions } from '../tableRegions';

const zones = (text: string) =>
  regions(text).map(({ sample, lokey, hikey, pitch_keycenter }) =>
    [sample, lokey, hikey, pitch_keycenter].join(' '),
  );
const whole = ['dulcian_1.wav 36 40 38', 'dulcian_2.wav 41 45 43', 'dulcian_3.wav 46 50 48'];
const rows = whole.map((one) => one.split(' '));
const csv = (last: string) => `sample,low,high,root\n${rows.map((row) => row.join(',')).join('\n')}\n${last}`;
const json = (row: string[]) =>
  `{"file": "${row[0]}", "low": ${row[1]}, "high": ${row[2]}, "root": ${row[3]}}`;
const lua = (row: string[]) => `{ file = "${row[0]}", low = ${row[1]}, high = ${row[2]}, root = ${row[3]} }`;
const yaml = (row: string[]) => `- file: ${row[0]}\n  low: ${row[1]}\n  high: ${row[2]}\n  root: ${row[3]}\n`;
const markup = (row: string[]) => `<tr>${row.map((cell) => `<td>${cell}</td>`).join('')}</tr>\n`;
const head = '<table><tr><th>Sample</th><th>Low</th><th>High</th><th>Root</th></tr>\n';

// Common practice: a text that is selected by hand ends anywhere.
describe('a text that ends in the middle of a zone', () => {
  it.each([
    ['JSON', `[\n${rows.map(json).join(',\n')},\n{"file": "dulcian_4.wav", "low": 51, "high": 5`],
    ['JSON, in a name', `[\n${rows.map(json).join(',\n')},\n{"file": "dulcian_4.w`],
    ['lines of JSON', `${rows.map(json).join('\n')}\n{"file": "dulcian_4.wav", "low": 51, "high": 5\n`],
    ['a script', `zones = {\n${rows.map(lua).join(',\n')},\n  { file = "dulcian_4.wav", low = 5`],
    ['an indented list', `${rows.map(yaml).join('')}- file: dulcian_4.wav\n  low: 51\n  high: 5`],
    ['an indented list, in a key', `${rows.map(yaml).join('')}- file: dulcian_4.wav\n  low: 51\n  hi`],
    ['a row with commas', csv('dulcian_4.wav,51,5')],
    ['a row with tabs', csv('dulcian_4.wav,51,5').replaceAll(',', '\t')],
    ['a cell in quotation marks', csv('"dulcian_4.w')],
    [
      'the last value of all',
      `sample,low,high,root,top\n${whole.map((one) => `${one.replaceAll(' ', ',')},127\n`).join('')}dulcian_4.wav,51,55,53,12`,
    ],
    ['a row of HTML', `${head}${rows.map(markup).join('')}<tr><td>dulcian_4.wav</td><td>51</td><td>5`],
    [
      'a row between bars',
      `| Sample | Low | High | Root |\n|---|---|---|---|\n${rows.map((row) => `| ${row.join(' | ')} |\n`).join('')}| dulcian_4.wav | 51 | 5`,
    ],
  ])('leaves that zone out: %s', (_, text) => {
    expect(zones(text).map((one) => one.trim())).toEqual(whole);
    expect(notesOf(text).join('\n')).toMatch(
      /The text ends (?:in the middle of the zone|before what opens) at \w+ (?:[4-9]|13)/,
    );
  });

  it('reads none where only the first zone is begun', () => {
    expect(regions('[{"file": "dulcian_4.wav", "low": 51, "high": 5')).toEqual([]);
  });

  it('hands on no value that is cut off', () => {
    const text = `{"zones": [${rows.map(json).join(',')}], "defaults": {"gain_db": -1`;
    expect(regions(text).map(({ volume }) => volume)).toEqual([undefined, undefined, undefined]);
    expect(notesOf(text).join('\n')).toMatch(/before what opens at Line 1 is closed/);
  });

  it('is told where only the bracket around whole zones is missing', () => {
    const text = `zones = {\n${rows.map(lua).join(',\n')},\n`;
    expect(zones(text)).toEqual(whole);
    expect(notesOf(text).join('\n')).toMatch(/The text ends before what opens at Line 1 is closed/);
  });

  it.each([
    ['a last row that gives no root', csv('dulcian_4.wav,51,55')],
    ['a last row without line break', csv('dulcian_4.wav,51,55,53')],
    ['a last value of fewer digits', csv('dulcian_4.wav,9,9,9')],
    ['brackets that close one another', `zones = {\n${rows.map(lua).join(',\n')},\n]`],
  ])('is not told of %s', (_, text) => {
    expect(notesOf(text).join('\n')).not.toMatch(/The text ends/);
  });
});
