import { describe, expect, it } from 'vitest';
import { regions } from '../tableRegions';

describe('ranges whose dashes stand below one another', () => {
  it('are one cell each, whatever blanks stand before the dash', () => {
    const text = [
      'Recording          plays from - to     recorded at',
      'Quinta_1.wav       C   - E             D',
      'Quinta_2.wav       F   - A             G',
      'Quinta_3.wav       Ais - c             H',
      "Quinta_4.wav       cis - c'            f",
      "Quinta_5.wav       cis' - g'           e'",
    ].join('\n');
    const read = regions(text).map(({ lokey, hikey, pitch_keycenter: root }) => `${lokey} ${root} ${hikey}`);
    expect(read).toEqual(['36 38 40', '41 43 45', '46 47 48', '49 53 60', '61 64 67']);
  });
});
