import { expect, it } from 'vitest';
import { regions } from '../tableRegions';

it.each(['dB', '(dB)', '[dB]'])(
  'a unit alone below a heading belongs to it, and names no group: %s',
  (unit) => {
    const text = `Sample\tLow\tHigh\tGain\n\t\t\t${unit}\nvat_a.wav\t60\t62\t-3\nvat_b.wav\t63\t65\t-6\n`;
    expect(regions(text).map(({ volume, group }) => [volume, group])).toEqual([
      ['-3', undefined],
      ['-6', undefined],
    ]);
  },
);
