import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../server/model/effectiveValues';
import { frequencyOfKey, keyOfNoteName, noteNameOf } from '../../server/model/keys';
import { readSfz } from '../../server/sfz/read';

describe('frequencies', () => {
  // ISO 16:1975, Acoustics, standard tuning frequency: the A above middle C has 440 Hz. MIDI 1.0 gives it key 69.
  it('have the standard tuning frequency of ISO 16 at A4', () => {
    expect(frequencyOfKey(69)).toBe(440);
    expect(keyOfNoteName('a4')).toBe(69);
  });

  // The equal-tempered chromatic scale at A4 = 440 Hz as the CRC Handbook of Chemistry and Physics and other
  // handbooks print it, two decimals; typed in from memory.
  it.each([
    ['C0', 16.35],
    ['A0', 27.5],
    ['C1', 32.7],
    ['E2', 82.41],
    ['C3', 130.81],
    ['C4', 261.63],
    ['C#4', 277.18],
    ['D4', 293.66],
    ['D#4', 311.13],
    ['E4', 329.63],
    ['F4', 349.23],
    ['F#4', 369.99],
    ['G4', 392.0],
    ['G#4', 415.3],
    ['A#4', 466.16],
    ['B4', 493.88],
    ['C5', 523.25],
    ['C8', 4186.01],
  ])('%s has %f Hz in the handbooks', (name, hertz) => {
    expect(frequencyOfKey(keyOfNoteName(name) as number)).toBeCloseTo(hertz, 2);
  });

  // Equal temperament: twelve equal steps in an octave, each of 100 cents (Alexander Ellis, 1885).
  it('double over an octave, in steps of 100 cents', () => {
    for (let key = 0; key <= 115; key++) {
      expect(frequencyOfKey(key + 12) / frequencyOfKey(key)).toBeCloseTo(2, 12);
      expect(1200 * Math.log2(frequencyOfKey(key + 1) / frequencyOfKey(key))).toBeCloseTo(100, 9);
    }
    expect(1200 * Math.log2(frequencyOfKey(60.25) / frequencyOfKey(60))).toBeCloseTo(25, 9);
  });
});

describe('key numbers', () => {
  // MIDI 1.0 Detailed Specification: note numbers run from 0 to 127, and middle C is 60. Its octave in note names is
  // not part of that standard; the SFZ documentation (CC0 1.0) has c4 = 60, c-1 = 0 and g9 = 127.
  it.each([
    ['c-1', 0],
    ['c4', 60],
    ['c#4', 61],
    ['db4', 61],
    ['g9', 127],
  ])('%s is %i', (name, key) => {
    expect(keyOfNoteName(name)).toBe(key);
    const instrument = readSfz(`<region> pitch_keycenter=${name}`, { path: 'a.sfz' });
    expect(effectiveValues(instrument, instrument.regions[0])).toEqual({ pitch_keycenter: key });
  });

  // General MIDI Level 1 (1991), percussion key map: 47 sounds from 35, Acoustic Bass Drum, to 81, Open Triangle.
  it('name the span of the General MIDI percussion map', () => {
    const [first, last] = [noteNameOf(35), noteNameOf(81)];
    expect([first, last]).toEqual(['B1', 'A5']);
    expect((keyOfNoteName(last) as number) - (keyOfNoteName(first) as number) + 1).toBe(47);
  });

  // Common practice: the 88 keys of a piano run from A0 to C8.
  it('name the span of a piano', () => {
    expect([noteNameOf(21), noteNameOf(108)]).toEqual(['A0', 'C8']);
  });
});
