import { describe, expect, it } from 'vitest';
import { regions, table } from '../tableRegions';

const loops = (first: string, second: string, ...points: [string, string][]) =>
  regions(
    table(
      `Sample | Low | High | Root | ${first} | ${second}`,
      ...points.map(
        ([one, other], at) =>
          `horn${at}.wav | ${30 + at * 4} | ${33 + at * 4} | ${31 + at * 4} | ${one} | ${other}`,
      ),
    ),
  ).map(({ loop_start: start, loop_end: end }) => `${start}-${end}`);

describe('a heading of loops over positions, beside one of lengths', () => {
  it.each([
    ['loop', 'len'],
    ['Loop', 'Length'],
    ['Schleife', 'Länge'],
    ['boucle', 'durée'],
    ['Bucle', 'longitud'],
    ['ciclo', 'lunghezza'],
  ])('"%s" and "%s" are where loops start and how long they are', (first, second) => {
    expect(loops(first, second, ['9000', '21000'], ['25000', '8000'])).toEqual(['9000-29999', '25000-32999']);
  });

  it.each([',', '.', ' '])('are read with "%s" between thousands', (sign) => {
    const grouped = (text: string) => text.replace(' ', sign);
    const points: [string, string][] = [
      [grouped('9 020'), grouped('21 000')],
      [grouped('25 480'), grouped('8 016')],
    ];
    expect(loops('loop', 'len', ...points)).toEqual(['9020-30019', '25480-33495']);
  });

  it('stays open where the lengths may be those of the files', () => {
    expect(loops('loop', 'len', ['9000', '21000'], ['8000', '25000'])).toEqual([
      'undefined-undefined',
      'undefined-undefined',
    ]);
  });
});
