import { describe, expect, it } from 'vitest';
import { regions } from '../tableRegions';

const text = (said: string) => `${said}

DOWN
low  high  root  1st          2nd          3rd
31   36    33    zl_a_1.wav   zl_a_2.wav   zl_a_3.wav
37   42    40    zl_b_1.wav   zl_b_2.wav   zl_b_3.wav

RELEASES
low  high  root  1st          2nd
31   42    36    zl_up_1.wav  zl_up_2.wav
`;

describe('columns of samples that count themselves', () => {
  it.each([
    'Three strokes per key in rotation',
    'The strokes rotate.',
    'Strokes are cycled through one after another.',
    'Die Anschläge kommen abwechselnd.',
    'Les prises sont jouées en rotation.',
    'I colpi si alternano a rotazione.',
  ])('take turns where the text says "%s", below headings of their own in each block', (said) => {
    const found = regions(text(said));
    expect(
      found.map(({ sample, seq_position, seq_length, trigger }) => [
        sample,
        seq_position,
        seq_length,
        trigger,
      ]),
    ).toEqual([
      ...['a', 'b'].flatMap((name) =>
        ['1', '2', '3'].map((at) => [`zl_${name}_${at}.wav`, at, '3', undefined]),
      ),
      ['zl_up_1.wav', '1', '2', 'release'],
      ['zl_up_2.wav', '2', '2', 'release'],
    ]);
  });

  it('sound together where nothing is said', () => {
    expect(regions(text('Zither')).every(({ seq_length }) => seq_length === undefined)).toBe(true);
  });
});
