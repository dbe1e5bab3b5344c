import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const keys = (text: string) =>
  regions(text).map(({ lokey, hikey, pitch_keycenter }) => `${lokey}-${hikey} ${pitch_keycenter}`);
const right = ['40-44 42', '45-49 47', '50-54 52'];

describe('headings over one another’s columns', () => {
  it.each([
    [
      'root, low, high over low, high, root',
      'File | Root | Low | High',
      ['40 | 44 | 42', '45 | 49 | 47', '50 | 54 | 52'],
    ],
    [
      'low, high, root over root, low, high',
      'File | Low | High | Root',
      ['42 | 40 | 44', '47 | 45 | 49', '52 | 50 | 54'],
    ],
    [
      'low and root, where ranges meet only so',
      'File | Root | Low | High',
      ['40 | 42 | 44', '45 | 47 | 49', '50 | 52 | 54'],
    ],
    ['low and high alone', 'File | Root | Low | High', ['42 | 44 | 40', '47 | 49 | 45', '52 | 54 | 50']],
  ])('are read as the values say: %s', (_, heading, rows) => {
    const text = table(heading, ...rows.map((row, at) => `reed ${'mqx'.charAt(at)}.wav | ${row}`));
    expect(keys(text)).toEqual(right);
    expect(notesOf(text).join('\n')).toMatch(/stand over one another's columns|taken the other way round/);
  });

  it('are read so where names of samples give the roots', () => {
    const rows = ['reed_C3.wav | 48 | 40 | 60', 'reed_E3.wav | 52 | 44 | 64', 'reed_G3.wav | 55 | 47 | 67'];
    expect(keys(table('File | Low | Root | High', ...rows))).toEqual(['40-60 48', '44-64 52', '47-67 55']);
  });

  it.each([
    [
      'the ranges meet as headed, and roots lie an octave lower',
      ['36 | 48 | 52', '41 | 53 | 57', '46 | 58 | 62'],
      ['48-52 36', '53-57 41', '58-62 46'],
    ],
    [
      'all roots are one',
      ['60 | 44 | 40', '60 | 49 | 45', '60 | 54 | 50'],
      ['40-44 60', '45-49 60', '50-54 60'],
    ],
    ['they fit', ['40 | 40 | 44', '45 | 45 | 49', '50 | 50 | 54'], ['40-44 40', '45-49 45', '50-54 50']],
  ])('keep root and ends apart where %s', (_, rows, expected) => {
    const text = table(
      'File | Root | Low | High',
      ...rows.map((row, at) => `reed ${'mqx'.charAt(at)}.wav | ${row}`),
    );
    expect(keys(text)).toEqual(expected);
  });

  it('are told to contradict the roots where no order fits all rows', () => {
    const rows = ['40 | 44 | 42', '45 | 49 | 47', '50 | 54 | 37', '55 | 59 | 57', '60 | 64 | 62'];
    const text = table(
      'File | Root | Low | High',
      ...rows.map((row, at) => `reed ${'mqxkv'.charAt(at)}.wav | ${row}`),
    );
    expect(notesOf(text).join('\n')).toContain(
      'The root keys lie outside of the keys in most rows. Check the columns.',
    );
  });
});
