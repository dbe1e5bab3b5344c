import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const ranges = (text: string) =>
  regions(text).map(({ lokey, hikey, pitch_keycenter: root }) => [lokey, root, hikey].join(' '));

describe('a column that can only be the end of the keys that no heading gives', () => {
  it.each([
    [
      'a misspelt heading over notes',
      table(
        'Fil | Lägsta ton | Högta ton | Grundton',
        'viola_G3.wav | F3 | A3 | G3',
        'viola_C4.wav | A#3 | D4 | C4',
        'viola_F4.wav | D#4 | A4 | F4',
      ),
      ['53 55 57', '58 60 62', '63 65 69'],
      'hig',
    ],
    [
      'an unknown heading over numbers that leave gaps',
      table(
        'sample | lo | zzz | root',
        'fl_60.wav | 58 | 62 | 60',
        'fl_67.wav | 64 | 69 | 67',
        'fl_74.wav | 71 | 79 | 74',
      ),
      ['58 60 62', '64 67 69', '71 74 79'],
      'high key',
    ],
    [
      'no heading at all, in layers',
      table(
        'File | Root |  | High key | Vel lo | Vel hi',
        'p1.wav | 48 | 45 | 50 | 1 | 80',
        'f1.wav | 48 | 45 | 50 | 81 | 127',
        'p2.wav | 53 | 51 | 55 | 1 | 80',
        'f2.wav | 53 | 51 | 55 | 81 | 127',
      ),
      ['45 48 50', '45 48 50', '51 53 55', '51 53 55'],
      'low key',
    ],
    [
      'a slip in each word',
      table(
        'Sample | Root | Hihg | Noote du bs',
        'gong_40.wav | 40 | 45 | 36',
        'gong_50.wav | 50 | 55 | 46',
        'gong_60.wav | 60 | 65 | 56',
      ),
      ['36 40 45', '46 50 55', '56 60 65'],
      'low key',
    ],
    [
      'no roots, where each zone meets the next',
      table('File | Low key | upr', 'a.wav | 36 | 40', 'b.wav | 41 | 47', 'c.wav | 48 | 60'),
      ['36  40', '41  47', '48  60'],
      'high key',
    ],
  ])('%s', (_what, text, expected, end) => {
    expect(ranges(text)).toEqual(expected);
    expect(notesOf(text).join('\n')).toMatch(new RegExp(`is the ${end}`));
  });

  it.each([
    [
      'two columns could be it',
      table(
        'File | Root | Low key | aa | bb',
        'a.wav | 48 | 46 | 50 | 49',
        'b.wav | 53 | 51 | 55 | 54',
        'c.wav | 59 | 56 | 60 | 60',
      ),
      'aa',
    ],
    [
      'it repeats the root keys',
      table(
        'File | Root | Low key | aa',
        'a.wav | 48 | 46 | 48',
        'b.wav | 53 | 51 | 53',
        'c.wav | 59 | 56 | 59',
      ),
      'aa',
    ],
    [
      'its zones would cross',
      table(
        'File | Root | Low key | aa',
        'a.wav | 48 | 46 | 60',
        'b.wav | 53 | 51 | 70',
        'c.wav | 59 | 56 | 80',
      ),
      'aa',
    ],
    [
      'without roots it could be those',
      table('File | High key | aa', 'a_C3.wav | 50 | 48', 'b_F3.wav | 55 | 53', 'c_B3.wav | 60 | 58'),
      'aa',
    ],
  ])('is left alone with a note where %s', (_what, text, heading) => {
    expect(notesOf(text).join('\n')).toMatch(new RegExp(`What stands in column "${heading}" is not used`));
  });
});
