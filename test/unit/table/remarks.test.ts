import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

describe('keys with remarks behind a dash', () => {
  it('are read, each with a note', () => {
    const text = table(
      'Sample | Key | Volume | Pan',
      'pan.wav | 36: low pan | -1 dB | 0',
      'tin.wav | 38 - main tin | -3 dB - check | L10',
      'lid.wav | 42 - new! | -5 dB | R25',
    );
    expect(regions(text).map(({ key, volume, pan }) => [key, volume, pan ?? '0'].join(' '))).toEqual([
      '36 -1 0',
      '38 -3 -10',
      '42 -5 25',
    ]);
    expect(notesOf(text).join()).toMatch(/"42 - new!" is read as 42; the rest is a remark/);
  });

  it('leave names of layers alone', () => {
    const text = table('File | Root | Group', 'a.wav | 60 | 1 - soft', 'b.wav | 62 | 2 - loud');
    expect(regions(text).map(({ group }) => group)).toEqual(['1 - soft', '2 - loud']);
  });
});
