import { describe, expect, it } from 'vitest';
import { regions, table } from '../tableRegions';

// Words that mean a level and a layer, in languages that the reader knows (general dictionaries).
describe('a word for both a level and a layer', () => {
  it.each(['Taso', 'Niveau', 'Nivel'])('%s is a level where its cells are in dB', (heading) => {
    const text = table(
      `File | Low | High | Root | ${heading}`,
      'a.wav | 40 | 45 | 43 | -2.5 dB',
      'b.wav | 46 | 50 | 48 | 0 dB',
      'c.wav | 51 | 55 | 53 | -4 dB',
    );
    expect(regions(text).map(({ volume, group }) => [volume, group])).toEqual([
      ['-2.5', undefined],
      [undefined, undefined],
      ['-4', undefined],
    ]);
  });

  it('is no level where the heading names a layer alone', () => {
    const text = table(
      'File | Low | High | Root | Layer',
      'a.wav | 40 | 45 | 43 | -2.5',
      'b.wav | 46 | 50 | 48 | -1',
    );
    expect(regions(text).some(({ volume }) => volume !== undefined)).toBe(false);
  });

  it('is a group where its cells are words or plain numbers', () => {
    const rows = (one: string, two: string) =>
      table(
        'Tiedosto | Kosketin | Taso',
        `a.wav | 40 | ${one}`,
        `b.wav | 40 | ${two}`,
        `c.wav | 41 | ${one}`,
      );
    for (const [one, two] of [
      ['hiljaa', 'kovaa'],
      ['1', '2'],
    ] as const)
      expect(regions(rows(one, two)).some(({ volume }) => volume !== undefined)).toBe(false);
  });
});
