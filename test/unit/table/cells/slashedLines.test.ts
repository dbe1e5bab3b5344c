import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../../server/table/looksLikeZoneTable';
import { regions } from '../tableRegions';

const found = (text: string) =>
  regions(text).map(({ sample, lokey, hikey, pitch_keycenter, loop_start, loop_end }) =>
    [sample, lokey, hikey, pitch_keycenter, loop_start, loop_end].join(' '),
  );
const expected = ['reg1.wav 40 46 43 900 5899', 'reg2.wav 47 53 50 1200 4199', 'reg3.wav 54 60 57 300 2299'];

describe('list lines parted by a sign between blanks', () => {
  it.each(['/', '·', '::'])('are read with %s', (sign) => {
    const text = [
      'Regal, from the notebook',
      'no / file / keys / root / loop (start+length)',
      '1) reg1.wav / 40 to 46 / 43 / 900+5000',
      '2) reg2.wav / 47 to 53 / 50 / 1200+3000',
      '3) reg3.wav / 54 to 60 / 57 / 300+2000',
    ].join('\n');
    expect(found(text.replaceAll(' / ', ` ${sign} `))).toEqual(expected);
  });

  it('are read where the heading leaves the number out', () => {
    const text = [
      'file / keys / root / loop (start+length)',
      '1. reg1.wav / 40-46 / 43 / 900+5000',
      '2. reg2.wav / 47-53 / 50 / 1200+3000',
      '3. reg3.wav / 54-60 / 57 / 300+2000',
    ].join('\n');
    expect(found(text)).toEqual(expected);
  });
});

describe('lists of a key, a file and a value', () => {
  it.each([
    '36 tin_big.wav -2\n38 tin_low.wav 0\n43 tin_rim.wav +1.5',
    'C2 tin_big.wav -2\nD2 tin_low.wav 0\nG2 tin_rim.wav +1.5',
  ])('are read without signs between them: %s', (lines) => {
    const text = `Tin kit (levels are dB)\n\n${lines}\n`;
    expect(looksLikeZoneTable(text)).toBe(true);
    const read = regions(text);
    expect(read.map(({ sample, key, lokey, volume }) => `${sample} ${key ?? lokey} ${volume ?? 0}`)).toEqual([
      'tin_big.wav 36 -2',
      'tin_low.wav 38 0',
      'tin_rim.wav 43 1.5',
    ]);
  });
});
