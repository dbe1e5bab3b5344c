import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../server/table/looksLikeZoneTable';
import { notesOf, regions, table } from './tableRegions';

const pieces = (text: string, options?: Parameters<typeof regions>[1]) =>
  regions(text, options).map(({ sample, key, offset, end }) => `${sample} ${key} ${offset ?? 0}-${end}`);
const rows = table('Strike | Key | Start | Length', 'pan | 40 | 0 | 9000', 'pot | 41 | 9000 | 7000');
const expected = ['kitchen.wav 40 0-8999', 'kitchen.wav 41 9000-15999'];

describe('pieces of one recording that the text names', () => {
  it.each([
    'All sounds are slices of kitchen.wav.',
    'One file: kitchen.wav',
    'Source: kitchen.wav (16000 frames)',
    'Alles steckt in einer Aufnahme: "kitchen.wav"',
    'Tout est dans un seul fichier : kitchen.wav',
  ])('start and end as the table says: "%s"', (said) => {
    for (const text of [`${said}\n\n${rows}`, `${rows}\n\n${said}`]) {
      expect(pieces(text)).toEqual(expected);
      expect(looksLikeZoneTable(text)).toBe(true);
      expect(notesOf(text).join()).toMatch(/taken for pieces of kitchen\.wav/);
      expect(notesOf(text).join()).not.toMatch(/see whether the row/);
    }
  });

  it('are read from rows without names, and in seconds', () => {
    const text = `One long take: "my kitchen.wav"\n\n${table('Key | Start (s) | Length (s)', '40 | 0 | 0.5', '41 | 0.5 | 1.25')}`;
    expect(pieces(text, { rateOf: () => 8000 })).toEqual([
      'my kitchen.wav 40 0-3999',
      'my kitchen.wav 41 4000-13999',
    ]);
  });

  it('end before the next one where ends are starts of others', () => {
    const ends = table(
      'Name | Key | Start | End',
      'a | 40 | 0 | 900',
      'b | 41 | 900 | 1500',
      'c | 42 | 1500 | 2100',
    );
    const text = `Cut from kitchen.wav\n\n${ends}`;
    expect(pieces(text)).toEqual([
      'kitchen.wav 40 0-899',
      'kitchen.wav 41 900-1499',
      'kitchen.wav 42 1500-2099',
    ]);
    expect(notesOf(text).join()).toMatch(/1 is taken off each/);
  });

  it.each([
    ['Files are called like kitchen.wav', 'pan | 40 | 100 | 9000', 'pot | 41 | 100 | 7000'],
    ['Everything comes from kitchen.wav and cellar.wav', 'pan | 40 | 0 | 9000', 'pot | 41 | 9000 | 7000'],
    ['Slices, but not of kitchen.wav', 'pan | 40 | 0 | 9000', 'pot | 41 | 9000 | 7000'],
    ['All cut from kitchen.wav', 'pan.wav | 40 | 0 | 9000', 'pot.wav | 41 | 9000 | 7000'],
  ])('are none where it stays open: "%s"', (said, ...others) => {
    const text = `${said}\n\n${table('Strike | Key | Start | Length', ...others)}`;
    expect(pieces(text).join()).not.toMatch(/kitchen/);
  });
});

describe('lengths beside starts', () => {
  it('are those of pieces where rows name one file again', () => {
    const text = table('File | Key | Start | Length', 'k.wav | 40 | 0 | 900', 'k.wav | 41 | 900 | 900');
    expect(pieces(text)).toEqual(['k.wav 40 0-899', 'k.wav 41 900-1799']);
  });

  it('are those of files where each row has its own', () => {
    const text = table('File | Key | Start | Length', 'a.wav | 40 | 10 | 900', 'b.wav | 41 | 20 | 800');
    expect(pieces(text)).toEqual(['a.wav 40 10-undefined', 'b.wav 41 20-undefined']);
  });
});
