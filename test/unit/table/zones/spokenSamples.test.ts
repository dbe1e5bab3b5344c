import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const rows = table(
  'File | Low | High | Root',
  'oboe 1.wav | 58 | 61 | 60',
  'oboe_2.wav | 74 | 77 | 75',
  'oboe_3.wav | 66 | 69 | 67',
);

describe('a line of text that speaks of a sample of the table', () => {
  it.each(['I was wrong about oboe_2.wav: it goes from 62 to 65.', 'Correction: "oboe_2.wav" has root 63'])(
    'is told with the sample, whose row stays as it is: %s',
    (line) => {
      const text = `${rows}\n\n${line}`;
      expect(regions(text)[1]).toMatchObject({ lokey: '74', hikey: '77' });
      expect(notesOf(text).join()).toMatch(
        /Line 6 is no zone: .* It speaks of "oboe_2\.wav": see whether the row of that sample is right\./,
      );
    },
  );

  it('is not told where it speaks of none', () => {
    const text = `${rows}\n\nThe file oboe_9.wav is lost, and all is well.`;
    expect(notesOf(text).join()).toMatch(/is no zone/);
    expect(notesOf(text).join()).not.toMatch(/speaks of/);
  });
});
