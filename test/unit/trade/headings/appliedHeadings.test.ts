import { describe, expect, it } from 'vitest';
import { readHeading } from '../../../../server/trade/headings/headings';
import { notesOf, regions } from '../../table/tableRegions';

describe('a heading that says that its values are to be used', () => {
  it.each([
    ['fine tune in cents to apply', 'tune', 'cents'],
    ['tune to be applied in cents', 'tune', 'cents'],
    ['tune_cents_to_apply', 'tune', 'cents'],
    ['gain to use in the player (dB)', 'volume', 'dB'],
    ['Stimmung in Cent im Sampler', 'tune', 'cents'],
    ['Grundton zu verwenden', 'pitch_keycenter', undefined],
    ['accord en cents à appliquer', 'tune', 'cents'],
    ['volumen a aplicar', 'volume', undefined],
  ])('means the same without those words: %s', (heading, meaning, unit) => {
    expect(readHeading(heading)).toMatchObject({ meaning });
    expect(readHeading(heading)?.unit).toBe(unit);
  });

  it('stays open where it may tell of what was done', () => {
    expect(readHeading('gain applied')).toBeUndefined();
    expect(readHeading('to apply')).toBeUndefined();
    expect(readHeading('in use')).toMatchObject({ meaning: 'enabled' });
  });

  it('is heard in a comment over the values of a script', () => {
    const text = `# (file, lo, hi, root, tune in cents to apply)
zones = [
  ("celesta_a.wav", 60, 62, 61, -4),
  ("celesta_b.wav", 63, 65, 64, 7),
  ("celesta_c.wav", 66, 68, 67, 0),
]
`;
    expect(regions(text).map(({ tune = '0' }) => tune)).toEqual(['-4', '7', '0']);
    expect(notesOf(text)).toEqual([]);
  });
});
