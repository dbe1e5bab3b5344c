import { describe, expect, it } from 'vitest';
import { middleCIn, otherOctavesIn } from '../../../../server/trade/statements/keys/statedOctave';

// Helmholtz counts lines: c1 is middle C, key 60 of MIDI 1.0, and a1 the concert pitch of 440 Hz (ISO 16).
describe('octaves that a text counts in another way than C3, C4 or C5', () => {
  it.each([
    ['Mittleres C = c1', 36, true],
    ['das c1 liegt auf MIDI-Note 60, das c2 auf 72', 36, true],
    ['MIDI 60 entspricht c1', 36, true],
    ['Kammerton a1 = 440 Hz', 36, true],
    ['\u015brodkowe C to c1', 36, true],
    ['c1 is de middelste c', 36, true],
    ['c1 är mellan-C', 36, true],
    ['fis1 = 66, c1 = 60', 36, true],
    ['C1 = 60', 36, false],
    ['C2 is middle C', 24, false],
    ['Middle C is written C6 here.', -24, false],
  ])('%s', (text, shift, isLined) => {
    expect(middleCIn(text)).toBeUndefined();
    expect(otherOctavesIn(text)).toMatchObject({ shift, isLined });
  });

  it.each([
    ['one number that may count anything', 'es1 = 63'],
    ['numbers that contradict one another', 'c1 = 60, c2 = 60'],
    ['a usual convention', 'C3 = 60'],
    ['a distance that is no octave', 'C2 = 61, C3 = 73'],
    ['names without a key', 'The keys run from c1 to c3.'],
  ])('are not told by %s', (_, text) => {
    expect(otherOctavesIn(text)).toBeUndefined();
  });

  it.each([
    ['do3 correspond \u00e0 la note MIDI 60', 'C3'],
    ['C5 corresponds to MIDI note 60', 'C5'],
    ['do3 corrisponde a 60', 'C3'],
    ['C3 komt overeen met MIDI 60', 'C3'],
    ['MIDI-Nummer 60 ist bei uns C3', 'C3'],
  ])('%s', (text, expected) => {
    expect(middleCIn(text)).toBe(expected);
  });
});
