import { describe, expect, it } from 'vitest';
import { regions, table } from './tableRegions';

const values = (text: string, ...names: string[]) =>
  regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));

describe('headings that a text lists', () => {
  it('may stand below the rows', () => {
    const text =
      'a.wav, 45, 52, 50, 1, 64\nb.wav, 45, 52, 50, 65, 127\n(file, low key, high key, root, then velocity from and to)';
    expect(values(text, 'lokey', 'hikey', 'pitch_keycenter', 'lovel', 'hivel')).toEqual([
      '45 52 50 1 64',
      '45 52 50 65 127',
    ]);
  });

  it('may be parted by commas where blanks part the rows', () => {
    const text =
      'a.wav 45 52 50 1.0\nb.wav 53 57 55 0.5\n\nColumns: file, low, high, root, gain (1.0 = full, 0.5 = half)';
    expect(values(text, 'lokey', 'hikey', 'pitch_keycenter', 'volume')).toEqual([
      '45 52 50 -',
      '53 57 55 -6.02',
    ]);
  });

  it('may have explanations in brackets', () => {
    const text =
      '# name, lo, hi, root, gain (linear factor, 1.0 = unchanged)\nZONES = [\n("a.wav", 45, 52, 50, 1.0),\n("b.wav", 53, 57, 55, 0.25),\n]';
    // 20 log10(0.25) = -12.04 dB.
    expect(values(text, 'pitch_keycenter', 'volume')).toEqual(['50 -', '55 -12.04']);
  });

  it('leave rows above the headings of a second table what they are', () => {
    const text = table(
      'a.wav | 40 | 45 | 43',
      'b.wav | 46 | 50 | 48',
      'File | Root | Low | High',
      'c.wav | 54 | 51 | 56',
      'd.wav | 58 | 57 | 60',
    );
    expect(values(text, 'sample', 'lokey', 'hikey', 'pitch_keycenter')).toEqual([
      'a.wav 40 45 43',
      'b.wav 46 50 48',
      'c.wav 51 56 54',
      'd.wav 57 60 58',
    ]);
  });
});
