import { describe, expect, it } from 'vitest';
import { regions } from '../../tableRegions';

describe('signs of wikis for a cell that is merged with the one above', () => {
  it.each([':::', '::', '^^'])('"%s" takes what stands above, down a whole column', (sign) => {
    const text = [
      '==== Cellar harmonium ====',
      '^ Range ^ Root ^ Side ^ Recording ^ Gain ^',
      '| 30-37 | 34 | L | {{harm_34_l.wav}} | -2 dB |',
      `| ${sign} | ${sign} | R | {{harm_34_r.wav}} | ${sign} |`,
      '| 38-45 | 41 | L | {{harm_41_l.wav}} | -4 dB |',
      `| ${sign} | ${sign} | R | {{harm_41_r.wav}} | -3 dB |`,
      '',
      'All files are mono, L goes hard left and R hard right.',
    ].join('\n');
    const found = regions(text).map(
      ({ sample, lokey, hikey, pitch_keycenter: root, pan, volume }) =>
        `${sample} ${lokey}-${hikey} ${root} ${pan} ${volume}`,
    );
    expect(found).toEqual([
      'harm_34_l.wav 30-37 34 -100 -2',
      'harm_34_r.wav 30-37 34 100 -2',
      'harm_41_l.wav 38-45 41 -100 -4',
      'harm_41_r.wav 38-45 41 100 -3',
    ]);
  });
});
