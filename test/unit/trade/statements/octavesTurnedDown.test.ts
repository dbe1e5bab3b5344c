import { describe, expect, it } from 'vitest';
import { middleCIn } from '../../../../server/trade/statements/keys/statedOctave';

/** Key 0 is in the lowest octave, and middle C five octaves above it (MIDI 1.0). */
describe('where middle C is', () => {
  it.each([
    ['Middle C is not C4 but C3.', 'C3'],
    ['Note that middle C is C3, not C4', 'C3'],
    ['Middle C is C5 instead of C4', 'C5'],
    ['Das mittlere C ist nicht C4, sondern C3.', 'C3'],
    ["Le do central n'est pas C4 mais C3", 'C3'],
    ['El do central no es C4 sino C3', 'C3'],
    ['Il do centrale non è C4 ma C3', 'C3'],
    ['中央のドはC4ではなくC3', 'C3'],
  ])('"%s"', (text, expected) => {
    expect(middleCIn(text)).toBe(expected);
  });

  it.each([
    ['Octaves are numbered from -2.', 'C3'],
    ['Octave numbers start at \u22122', 'C3'],
    ['The first octave is -1.', 'C4'],
    ['Our octave numbering begins with 0', 'C5'],
    ['lowest octave = -2', 'C3'],
    ['Lowest C is C-2', 'C3'],
    ['The lowest note is C-1.', 'C4'],
    ['Die Oktaven werden ab -2 gezählt.', 'C3'],
    ['Die tiefste Oktave ist -2', 'C3'],
    ['Les octaves commencent à -2', 'C3'],
    ['Las octavas empiezan en -2', 'C3'],
    ['Le ottave partono da -2', 'C3'],
    ['De octaven beginnen bij -2', 'C3'],
    ['オクターブは-2から始まる', 'C3'],
  ])('"%s" says by the lowest octave', (text, expected) => {
    expect(middleCIn(text)).toBe(expected);
  });

  it.each([
    'The octave was moved by -2.',
    'Sounds from 2 octaves below',
    'First take an octave down, -12 semitones',
    'Middle C is not C4.',
    'The lowest note is C2',
  ])('"%s" does not', (text) => {
    expect(middleCIn(text)).toBeUndefined();
  });
});
