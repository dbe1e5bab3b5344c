import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const read = (text: string) =>
  regions(text).map(
    ({ sample, lokey, hikey, tune = '0', volume = '0' }) => `${sample} ${lokey}-${hikey} ${tune} ${volume}`,
  );
const expected = [
  'vent1.wav 30-35 4 -3',
  'vent2.wav 36-41 -6 -1',
  'vent3.wav 42-47 0 -5',
  'vent4.wav 48-53 2 -4',
  'vent5.wav 54-59 0 -7',
];

describe('rows of which many stand apart from their headings', () => {
  it.each(['vent3.wav | 42 | 47 | 44 | -5 dB', 'vent3.wav | 42 | 47 | 44 | -5 dB | '])(
    'are read under the headings that fit, with the empty cell that "%s" lacks',
    (lacking) => {
      const text = table(
        'File | From key | To key | Root | Tune | Gain',
        'vent1.wav | 30 | 35 | 32 | 4 ct | -3 dB',
        ' | vent2.wav | 36 | 41 | 38 | -6 ct | -1 dB',
        lacking,
        ' | vent4.wav | 48 | 53 | 50 | 2 ct | -4 dB',
        'vent5.wav | 54 | 59 | 56 | | -7 dB',
      );
      expect(read(text)).toEqual(expected);
      const notes = notesOf(text).join('\n');
      expect(notes).toMatch(/"vent2.wav" stands one cell too far right/);
      expect(notes).toMatch(/"vent3.wav" lacks an empty cell, as the unit of "-5 dB" shows/);
    },
  );

  it('are left out if several cells may be lacking', () => {
    const text = table(
      'File | Low | High | Root | Gain',
      'vent1.wav | 30 | 35 | 32 | -3 dB',
      'vent2.wav | 36 | 41 | 38 | -1 dB',
      'vent3.wav | 42 | 47 | -5 dB',
    );
    expect(read(text)).toHaveLength(2);
    expect(notesOf(text).join('\n')).not.toMatch(/lacks an empty cell/);
    expect(notesOf(text).join('\n')).toMatch(/"vent3.wav" .* may be "High" or "Root" that is missing/);
  });
});
