import { describe, expect, it } from 'vitest';
import { notesOf, regions } from '../tableRegions';

const values = (text: string, ...names: string[]) =>
  regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));
const zones = (text: string) => values(text, 'sample', 'lokey', 'pitch_keycenter', 'hikey');

const headings = ['Sample', 'Root', 'Low key', 'High key'];
const rows = [
  ['gong_40.wav', '40', '36', '43'],
  ['gong_47.wav', '47', '44', '50'],
  ['gong_55.wav', '55', '51', '60'],
];
const expected = ['gong_40.wav 36 40 43', 'gong_47.wav 44 47 50', 'gong_55.wav 51 55 60'];
const joined = (sign: string, number: (row: number) => string, above = headings) =>
  [above, ...rows.map((row, at) => [number(at), ...row])].map((cells) => cells.join(sign)).join('\n');

describe('a running number in front of rows whose headings lack it', () => {
  it.each([
    ['semicolons', ';'],
    ['tabs', '\t'],
    ['bars', '|'],
    ['commas', ','],
    ['commas with blanks', ', '],
  ])('is no part of the row, between %s', (_, sign) => {
    const text = joined(sign, (row) => String(row + 1));
    expect(zones(text)).toEqual(expected);
    expect(notesOf(text).join()).toMatch(/running number.*without a heading/);
  });

  it.each([
    ['from 0', (row: number) => String(row)],
    ['with noughts in front', (row: number) => `0${row + 1}`],
    ['with dots', (row: number) => `${row + 1}.`],
  ])('may count %s', (_, number) => {
    expect(zones(joined(';', number))).toEqual(expected);
  });

  it('may stand in front of keys, and of headings that end in a sign', () => {
    expect(zones('Root;Sample;Low key;High key\n1;55;a.wav;52;57\n2;60;b.wav;58;62')).toEqual([
      'a.wav 52 55 57',
      'b.wav 58 60 62',
    ]);
    expect(zones(joined(';', (row) => String(row + 1), [...headings, '']))).toEqual(expected);
  });

  it('may stand beside a comma inside of a name', () => {
    const text =
      'Sample,Root,Low key,High key\n1,a.wav,55,52,57\n2,bass, muted.wav,60,58,62\n3,c.wav,65,63,67';
    expect(zones(text)).toEqual(['a.wav 52 55 57', 'bass, muted.wav 58 60 62', 'c.wav 63 65 67']);
  });

  it('goes on below headings that stand again, beside units and sums', () => {
    const head = 'Sample;Root;Low key;High key';
    const again = `${head}\n1;a.wav;55;52;57\n2;b.wav;60;58;62\n\n${head}\n3;c.wav;65;63;67`;
    const both = ['a.wav 52 55 57', 'b.wav 58 60 62'];
    expect(zones(again)).toEqual([...both, 'c.wav 63 65 67']);
    expect(zones(again.replace('3;c', '1;c'))).toEqual([...both, 'c.wav 63 65 67']);
    expect(zones(`${head}\n;;(key);(key)\n1;a.wav;55;52;57\n2;b.wav;60;58;62\n;Total: 2;;;`)).toEqual(both);
  });

  it('has its own heading where a comma parts all names', () => {
    const text = 'No,Sample,Low key,High key\n1,bass, muted.wav,52,57\n2,bass, open.wav,58,62';
    expect(values(text, 'sample', 'lokey', 'hikey')).toEqual([
      'bass, muted.wav 52 57',
      'bass, open.wav 58 62',
    ]);
  });

  it('is none where the numbers do not run on', () => {
    const text = 'Sample;Root;Low key;High key\n1;a.wav;55;52;57\n7;b.wav;60;58;62';
    expect(notesOf(text).join()).not.toMatch(/running number/);
  });

  it('is none where an empty cell behind the others is the one more', () => {
    const text = 'No;Sample;Root;Low key;High key\n1;a.wav;55;52;57;\n2;b.wav;60;58;62;';
    expect(zones(text)).toEqual(['a.wav 52 55 57', 'b.wav 58 60 62']);
    expect(notesOf(text).join()).not.toMatch(/running number/);
  });
});
