import { describe, expect, it } from 'vitest';
import { readZoneTable } from '../../../../server/table/readTable';
import { regions, table } from '../tableRegions';

const zones = (text: string) =>
  regions(text).map(({ sample, lokey, hikey, pitch_keycenter: root }) =>
    [sample, lokey ?? '-', root ?? '-', hikey ?? '-'].join(' '),
  );

const read = ['oboe a.wav 40 42 44', 'oboe b.wav 45 47 50', 'oboe c.wav 51 53 53'];
const rows = [
  '1 | oboe a.wav | 40 | 44 | 42 | 9,120',
  '2 | oboe b.wav | 45 | 50 | 47 | 8,004',
  '3 | oboe c.wav | 51 | 53 | 53 | 7,500',
];
const heads = 'No | File | Low key | High key | Root | Frames';

describe('rows that sum up others', () => {
  it.each([
    ['Total | 3 files | 40 | 53 | 53 | 24,624'],
    ['Grand total | 3 | 40 | 53 | 53 | 24,624'],
    ['Average | | 45 | 49 | 47 | 8,208'],
    ['Gesamtzahl: | 3 | | | | '],
    ['Σ | 3 | | | | 24,624'],
    ['Łącznie | 3 plik | 40 | 53 | 50 | '],
    ['小計 | 3 | | | | '],
    [' | 3 files in total | 40 | 53 | 50 | '],
    ['All of it | x | 40 | 53 | | 24,624'],
  ])('are no zones where the others name files: %s', (sum) => {
    const text = table(heads, ...rows, sum);
    expect(zones(text)).toEqual(read);
    const told = readZoneTable(text).notes.filter(({ message }) => /sums up/.test(message));
    expect(told).toHaveLength(1);
  });

  it('are no zones where names have no endings and the row holds less than others', () => {
    const bare = rows.map((row) => row.replace('.wav', ''));
    expect(zones(table(heads, ...bare, 'Total | 3 | 40 | 53 | | '))).toEqual(
      read.map((one) => one.replace('.wav', '')),
    );
  });

  it('are zones where the word is part of a name or of several groups', () => {
    const text = table(
      'Sample | Low | High | Root',
      'Mean bell | 40 | 44 | 42',
      'Sum | 45 | 50 | 47',
      'Sous bois | 51 | 53 | 53',
    );
    expect(zones(text)).toHaveLength(3);
    const grouped = table(
      'Group | Sample | Low | High | Root',
      'Media | a | 40 | 44 | 42',
      'Media | b | 45 | 50 | 47',
    );
    expect(zones(grouped)).toHaveLength(2);
  });
});

describe('a row below all others with the number of one of them where its file would stand', () => {
  it('makes the others no list of samples', () => {
    const text = table(heads, ...rows, 'Rows | 3 | | | | ');
    expect(zones(text)).toEqual(read);
  });
});

describe('numbers of keys beside low and high ones', () => {
  const keyed = (heading: string, ...counts: number[]) =>
    table(
      `File | Low key | High key | ${heading} | Root`,
      `oboe a.wav | 40 | 44 | ${counts[0]} | 42`,
      `oboe b.wav | 45 | 50 | ${counts[1]} | 47`,
      `oboe c.wav | 51 | 53 | ${counts[2]} | 53`,
    );
  it.each([
    ['as many as there are', keyed('Keys', 5, 6, 3)],
    ['one less, from end to end', keyed('Range', 4, 5, 2)],
    ['German', keyed('Tasten', 5, 6, 3)],
    ['numbers outside of the ranges, which are not used', keyed('Keys', 3, 3, 2)],
  ])('are no keys: %s', (_, text) => {
    expect(zones(text)).toEqual(read);
  });

  it('are no keys beside names of notes', () => {
    const text = table(
      'File | Low key | High key | Keys | Root',
      'oboe a.wav | E2 | G#2 | 5 | F#2',
      'oboe b.wav | A2 | D3 | 6 | B2',
    );
    expect(zones(text)).toEqual(read.slice(0, 2));
  });
});
