import { describe, expect, it } from 'vitest';
import { regions, table } from '../tableRegions';

describe('dynamics that are written in full', () => {
  it.each([
    ['Dynamik', ['pianissimo', 'mezzopiano', 'mezzoforte', 'fortissimo']],
    ['nuance', ['piano', 'mezzo-piano', 'mezzo-forte', 'forte']],
    ['dinámica', ['pianísimo', 'piano', 'forte', 'fortísimo']],
    ['Dynamics', ['Piano', 'Mezzo Forte', 'Forte', 'Fortissimo']],
    ['динамика', ['пиано', 'меццо-форте', 'форте', 'фортиссимо']],
    ['強弱', ['ピアノ', 'メゾフォルテ', 'フォルテ', 'フォルティッシモ']],
    ['Velocity', ['piano', 'mezzopiano', 'mezzoforte', 'forte']],
  ])('share out the velocities under "%s"', (heading, words) => {
    const text = table(
      `Sample | Low | High | Root | ${heading}`,
      ...words.map((word, at) => `gamba${at + 1}.wav | 28 | 36 | 31 | ${word}`),
    );
    const found = regions(text).map(
      ({ sample, lovel = '1', hivel = '127' }) => `${sample} ${lovel}-${hivel}`,
    );
    expect(found).toEqual(['gamba1.wav 1-31', 'gamba2.wav 32-63', 'gamba3.wav 64-95', 'gamba4.wav 96-127']);
  });

  it('are read in records too', () => {
    const text = JSON.stringify(
      ['mezzopiano', 'fortissimo'].map((nuance) => ({
        file: `${nuance}.wav`,
        tasti: [28, 36],
        nota: 31,
        dinamica: nuance,
      })),
    );
    expect(regions(text).map(({ lovel = '1', hivel = '127' }) => `${lovel}-${hivel}`)).toEqual([
      '1-63',
      '64-127',
    ]);
  });
});
