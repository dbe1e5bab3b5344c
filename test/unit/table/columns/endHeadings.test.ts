import { describe, expect, it } from 'vitest';
import { regions } from '../tableRegions';

describe('headings that give ends only beside each other', () => {
  it('are the ends of key ranges, though the first alone would be any key', () => {
    expect(
      regions('Arquivo\tDa nota\tAté a nota\tNota raiz\na.wav\tC2\tF2\tD2\nb.wav\tF#2\tC3\tA2'),
    ).toMatchObject([
      { sample: 'a.wav', lokey: '36', hikey: '41', pitch_keycenter: '38' },
      { sample: 'b.wav', lokey: '42', hikey: '48', pitch_keycenter: '45' },
    ]);
  });
});
