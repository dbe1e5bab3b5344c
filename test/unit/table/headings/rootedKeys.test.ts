import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const keys = (text: string) =>
  regions(text).map(
    ({ sample, lokey, hikey, pitch_keycenter }) => `${sample} ${lokey}-${hikey} @${pitch_keycenter}`,
  );

describe('columns of samples whose headings give a root key and a range', () => {
  it.each([
    ['D3 (48-51)', 'G3 (52-57)'],
    ['48-51 (D3)', '52-57 (G3)'],
    ['D3: 48..51', 'G3: 52..57'],
    ['48-51 @50', '52-57 @55'],
    ['Root D3, keys 48-51', 'Root G3, keys 52-57'],
    // The roots lie in their ranges with middle C = C3 only.
    ['D2 (48-51)', 'G2 (52-57)'],
  ])('are zones on those keys: %s', (low, high) => {
    const text = table(`Velocity | ${low} | ${high}`, '1-70 | a1.wav | b1.wav', '71-127 | a2.wav | b2.wav');
    expect(keys(text)).toEqual(
      ['a1.wav 48-51 @50', 'b1.wav 52-57 @55', 'a2.wav 48-51 @50', 'b2.wav 52-57 @55'].sort(
        (one, other) => keys(text).indexOf(one) - keys(text).indexOf(other),
      ),
    );
    expect(notesOf(text).join('\n')).toContain('Their headings give the keys.');
  });

  it('are none where a root lies in no octave within its range', () => {
    const text = table(
      'Velocity | D3 (60-61) | G3 (62-63)',
      '1-70 | a1.wav | b1.wav',
      '71-127 | a2.wav | b2.wav',
    );
    expect(regions(text).every(({ pitch_keycenter }) => pitch_keycenter === undefined)).toBe(true);
  });

  it('stay velocities where they share these out', () => {
    const text = table('Key | soft (1-60) | loud (61-127)', '50 | a1.wav | a2.wav', '52 | b1.wav | b2.wav');
    expect(regions(text).map(({ hivel }) => hivel)).toContain('60');
  });
});
