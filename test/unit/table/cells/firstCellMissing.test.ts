import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

describe('a row without its first cell', () => {
  it('is read under the headings that fit, which is told, where two rows show what stands where', () => {
    const text = table(
      'Group | File | Low | High | Root',
      'Reeds | dune1.wav | 30 | 41 | 36',
      'dune2.wav | 42 | 53 | 48',
      'Reeds | dune3.wav | 54 | 65 | 60',
    );
    const found = regions(text).map(({ sample, lokey, hikey }) => `${sample} ${lokey}-${hikey}`);
    expect(found.sort()).toEqual(['dune1.wav 30-41', 'dune2.wav 42-53', 'dune3.wav 54-65']);
    expect(notesOf(text).join()).toMatch(/"dune2.wav" stands one cell too far left/);
  });
});
