import { describe, expect, it } from 'vitest';
import { valuesIn } from '../inferred';

const bells = (last: string) =>
  `<rack>${[
    ['C4', 'D4', 'E4'],
    ['F4', 'G4', 'A4'],
    ['A#4', 'B4', last],
  ]
    .map(([one, root, other]) => `<bell aa="${one}" root="${root}" bb="${other}" file="${root}.wav"/>`)
    .join('')}</rack>`;

// MIDI 1.0: middle C is key 60, here C4.
describe('note names around the root keys', () => {
  it('are the ends of key ranges', () => {
    expect(valuesIn(bells('C5'), 'lokey', 'pitch_keycenter', 'hikey')).toEqual([
      '60 62 64',
      '65 67 69',
      '70 71 72',
    ]);
  });

  it('are none where a root key lies outside', () => {
    expect(valuesIn(bells('A4'), 'hikey')).toEqual(['-', '-', '-']);
  });
});
