import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  frequencyOfKey,
  isRaisedKey,
  keyOfFrequency,
  keyOfNoteName,
  noteNameOf,
} from '../../../server/model/keys';

describe('the key of a note name', () => {
  it.each([
    ['c4', 60],
    ['C4', 60],
    ['c#4', 61],
    ['C♯4', 61],
    ['db4', 61],
    ['D♭4', 61],
    ['dB4', 61],
    ['b3', 59],
    ['bb3', 58],
    ['Bb3', 58],
    ['cb4', 59],
    ['b#3', 60],
    ['e#4', 65],
    ['fb4', 64],
    ['f##4', 67],
    ['ebb4', 62],
    ['a-1', 9],
    ['c-1', 0],
    ['cb0', 11],
    ['b9', undefined],
    ['g9', 127],
    ['g#9', undefined],
    ['cb-1', undefined],
  ])('%s is %s', (name, key) => {
    expect(keyOfNoteName(name)).toBe(key);
  });

  it.each([
    '',
    'c',
    'h4',
    '4',
    '60',
    'c 4',
    ' c4',
    'c4 ',
    'c4#',
    '#c4',
    'c10',
    'c-2',
    'c+4',
    'c###4',
    'c--1',
    'c4.5',
    'sample',
    'b',
    'bb',
    'é4',
    'C🎵4',
  ])('is not given for "%s"', (name) => {
    expect(keyOfNoteName(name)).toBeUndefined();
  });

  it('is given back for the name of every key', () => {
    for (let key = 0; key <= 127; key++) expect(keyOfNoteName(noteNameOf(key))).toBe(key);
  });

  it('is a key or nothing for any text', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ maxLength: 5 }), fc.stringMatching(/^[a-hA-H][#b♯♭]{0,3}-?\d{1,2}$/)),
        (text) => {
          const key = keyOfNoteName(text);
          if (key !== undefined) expect(Number.isInteger(key) && key >= 0 && key <= 127).toBe(true);
        },
      ),
    );
  });
});

describe('the name of a key', () => {
  // Twelve semitones an octave, on both sides of the keys that MIDI has: our choice, for what counts past them.
  it('goes on past the keys of a keyboard', () => {
    expect(noteNameOf(128)).toBe('G#9');
    expect(noteNameOf(-1)).toBe('B-2');
  });
});

describe('the frequency of a key', () => {
  // ISO 16:1975: A4 is 440 Hz; equal temperament: an octave doubles.
  it.each([
    [69, 440],
    [57, 220],
    [81, 880],
    [21, 27.5],
  ])('%i is %d Hz, and back', (key, hertz) => {
    expect(frequencyOfKey(key)).toBeCloseTo(hertz, 9);
    expect(keyOfFrequency(hertz)).toBeCloseTo(key, 9);
  });
});

describe('raised keys', () => {
  it('are those named with a sharp', () => {
    for (let key = 0; key <= 127; key++) expect(isRaisedKey(key)).toBe(noteNameOf(key).includes('#'));
  });
});
