import { describe, expect, it } from 'vitest';
import { notesOf, regions } from '../tableRegions';

const keysOf = (text: string) =>
  regions(text).map(({ sample, lokey, hikey, pitch_keycenter, tune, pan, volume }) =>
    [sample, lokey, hikey, pitch_keycenter, tune ?? pan ?? volume]
      .filter((one) => one !== undefined)
      .join(' '),
  );

describe('rows with fewer values below headings that single blanks part', () => {
  it.each([
    [
      'names that end in numbers, the last value missing',
      'Name Low High Root Tune\nViol 1 40 44 42 -6\nViol 2 45 49 47\nViol 3 50 54 52 8\n',
      ['Viol 1 40 44 42 -6', 'Viol 2 45 49 47', 'Viol 3 50 54 52 8'],
    ],
    [
      'the highest row short',
      'Name Low High Root Tune\nViol 1 40 44 42 -6\nViol 2 45 49 47 3\nViol 3 50 54 52\n',
      ['Viol 1 40 44 42 -6', 'Viol 2 45 49 47 3', 'Viol 3 50 54 52'],
    ],
    [
      'names that end in words which could be values',
      'Name Low High Root Tune\nViol mid 40 44 42 -6\nViol mid 45 49 47\nViol left 50 54 52 8\n',
      ['Viol mid 40 44 42 -6', 'Viol mid 45 49 47', 'Viol left 50 54 52 8'],
    ],
    [
      'a blank cell in the middle of columns',
      'Sample Low High Root Tune Pan\nc.wav   40   44   42   -6   0\nd.wav   45   49   47        30\ne.wav   50   54   52   8\n',
      ['c.wav 40 44 42 -6', 'd.wav 45 49 47 30', 'e.wav 50 54 52 8'],
    ],
    [
      'no row that has all',
      'Name Low High Root Tune\nViol 1 40 44 42\nViol 2 45 49 47\n',
      ['Viol 1 40 44 42', 'Viol 2 45 49 47'],
    ],
    [
      'a name whose number is the low key of its row',
      'Name Low High Root Tune\nViol 1 40 44 42 -6\nBass 45 49 47 -1\nBell 50 54 52\n',
      ['Viol 1 40 44 42 -6', 'Bass 45 49 47 -1', 'Bell 50 54 52'],
    ],
  ])('%s', (_, text, expected) => {
    expect(keysOf(text)).toEqual(expected);
    expect(notesOf(text).join(' ')).toMatch(/fewer values than there are headings/);
  });

  it('leaves a value out that may be in either of two columns', () => {
    const text = 'Name Low High Root Tune Pan\nViol 1 40 44 42 6 5\nViol 2 45 49 47 5\nViol 3 50 54 52 4 6\n';
    expect(keysOf(text)[1]).toBe('Viol 2 45 49 47');
    expect(notesOf(text).join(' ')).toContain('so "5" is left out');
  });
});
