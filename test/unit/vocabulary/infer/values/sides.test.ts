import { describe, expect, it } from 'vitest';
import { valuesIn } from '../inferred';

const drums = (name: string, places: readonly string[]) =>
  `<kit>${places.map((place, at) => `<hit key="${36 + at}" sound="${at}.wav" ${name}="${place}"/>`).join('')}</kit>`;
const pansOf = (name: string, ...places: string[]) => valuesIn(drums(name, places), 'pan');

// How far out is a share of the way to a side (common practice); the open SFZ format counts pan from -100 to 100.
describe('places in words', () => {
  it('are pan positions, whatever they are called', () => {
    expect(pansOf('place', 'centre', '10% left', '35% right')).toEqual(['0', '-10', '35']);
    expect(pansOf('stands', 'middle', '20 left', '60 right')).toEqual(['0', '-20', '60']);
    expect(pansOf('ort', 'mitte', '30 % links', 'ganz rechts', 'halb links')).toEqual([
      '0',
      '-30',
      '100',
      '-50',
    ]);
    expect(pansOf('posto', 'centro', 'sinistra 40%', 'destra 15%')).toEqual(['0', '-40', '15']);
  });

  it('may have words alone', () => {
    expect(pansOf('pan', 'hard left', 'half right', 'center')).toEqual(['-100', '50', '0']);
  });

  it('are none where letters count takes', () => {
    expect(pansOf('take', 'R1', 'R2', 'R3')).toEqual(['-', '-', '-']);
  });
});
