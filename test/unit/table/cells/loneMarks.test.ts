import { describe, expect, it } from 'vitest';
import { regions } from '../tableRegions';

// A quotation mark alone in a cell says "the same as above" (common practice); RFC 4180 would open a quoted cell.
describe('marks for the same as above', () => {
  it.each([
    ['bars', ' | '],
    ['tabs', '\t'],
    ['semicolons', ';'],
    ['semicolons with blanks', ' ; '],
    ['commas', ', '],
  ])('stand between %s, also at the end of a line', (_, mark) => {
    const text = [
      ['File', 'Velocity', 'Low', 'High', 'Root'],
      ['a.wav', '1-60', '50', '57', '55'],
      ['b.wav', '61-127', '"', '"', '"'],
      ['c.wav', '1-60', '58', '64', '62'],
      ['d.wav', '61-127', '"', '"', '"'],
    ]
      .map((row) => row.join(mark))
      .join('\n');
    expect(regions(text).map(({ lokey, hikey, pitch_keycenter }) => [lokey, hikey, pitch_keycenter])).toEqual(
      [
        ['50', '57', '55'],
        ['50', '57', '55'],
        ['58', '64', '62'],
        ['58', '64', '62'],
      ],
    );
  });

  it('leave quoted cells as they are', () => {
    const text = 'File;Low;High;Root\n"a; ""1"".wav";50;57;55\n"b.wav";58;64;62\n';
    expect(regions(text).map(({ sample }) => sample)).toEqual(['a; "1".wav', 'b.wav']);
  });
});
