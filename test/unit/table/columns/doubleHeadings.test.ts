import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const keys = (text: string) =>
  regions(text).map(({ lokey, hikey, pitch_keycenter }) => `${lokey}-${hikey} ${pitch_keycenter}`);
const notes = (text: string) => notesOf(text).join('\n');
const english = 'Sample | Root | Low | High';
const german = 'Datei | von | Grundton | bis';
const rows = ['rebec1.wav | 51 | 49 | 53', 'rebec2.wav | 56 | 54 | 58', 'rebec3.wav | 61 | 59 | 63'];
const expected = ['49-53 51', '54-58 56', '59-63 61'];

describe('two rows of headings that name the columns in another order', () => {
  it.each([
    ['the first fits', table(english, german, ...rows)],
    ['the second fits', table(german, english, ...rows)],
    ['a blank line and a title stand above', table('Rebec', '', german, english, ...rows)],
    ['one heading is not known', table(english, 'Datei | von | Grundton | Obenaufzu', ...rows)],
    [
      'a line is drawn between them',
      ['| Sample | Root | Low | High |', '|---|---|---|---|', '| Datei | von | Grundton | bis |']
        .concat(rows.map((row) => `| ${row} |`))
        .join('\n'),
    ],
  ])('are read by the one that the numbers agree with, which is told, where %s', (_, text) => {
    expect(keys(text)).toEqual(expected);
    expect(notes(text)).toMatch(
      /contradict each other: "Sample, Root, Low, High" is used, as the numbers agree with it better/,
    );
  });

  it('are read by the first where the numbers agree with both, which is told', () => {
    const text = table(english, german, 'rebec1.wav | 51 | 51 | 51', 'rebec2.wav | 56 | 56 | 56');
    expect(keys(text)).toEqual(['51-51 51', '56-56 56']);
    expect(notes(text)).toMatch(/"Sample, Root, Low, High" is used, as it is the first/);
  });

  it('tell keys from velocities by keys that are not the same in all rows', () => {
    const text = table(
      'Sample | Low key | High key | Low velocity | High velocity',
      'Datei | Velocity von | Velocity bis | Taste von | Taste bis',
      'rebec1.wav | 1 | 127 | 40 | 44',
      'rebec2.wav | 1 | 127 | 45 | 49',
    );
    expect(regions(text).map(({ lokey, hivel }) => `${lokey} ${hivel}`)).toEqual(['40 127', '45 127']);
  });

  it('are one heading over two lines where the lower one goes on', () => {
    const text = table(
      'Sample | Key | | Velocity | ',
      'Name | Low | High | Low | High',
      'rebec1.wav | 40 | 44 | 1 | 90',
    );
    expect(regions(text)).toEqual([expect.objectContaining({ lokey: '40', hikey: '44', hivel: '90' })]);
    expect(notes(text)).not.toMatch(/contradict/);
  });
});
