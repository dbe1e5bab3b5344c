import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

describe('marks in numbers that differ within a column', () => {
  const text = table(
    'File | Root | Volume dB | Loop start | Loop end',
    'viol1.wav | 40 | -1.5 | 3,200 | 21.700',
    'viol2.wav | 45 | -2,5 | 3,300 | 22,700',
    'viol3.wav | 50 | -4.0 | 3,400 | 23,700',
  );

  it('are read and told once a column', () => {
    expect(
      regions(text).map(({ volume, loop_start, loop_end }) => [volume, loop_start, loop_end].join(' ')),
    ).toEqual(['-1.5 3200 21700', '-2.5 3300 22700', '-4 3400 23700']);
    const notes = notesOf(text).filter((note) => note.includes('as in'));
    expect(notes).toEqual([
      expect.stringMatching(/"Volume dB" have decimal commas and decimal points, as in "-1\.5" and "-2,5"/),
      expect.stringMatching(/Thousands in column "Loop end" are parted by several signs/),
    ]);
  });
});
