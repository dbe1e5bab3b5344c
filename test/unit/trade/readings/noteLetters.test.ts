import { describe, expect, it } from 'vitest';
import { lettersIn, readKey } from '../../../../server/trade/readings/keyReading';
import type { LetterNaming } from '../../../../server/trade/readings/noteLetters';

/** The keys of names with the octave number 4, where C4 is 60. */
const named = (name: string, naming: LetterNaming) => readKey(`${name}4`, naming)?.named;

/**
 * Common practice, from memory: German, Nordic, Polish, Czech and Hungarian use has H below C and B a semitone below H; Dutch has B
 * below C and Bes a semitone below. In all, `is` raises and `es` lowers; As and Es leave out the vowel. Nordic spelling doubles the s,
 * Hungarian writes sz.
 */
describe('notes by letters with endings', () => {
  it.each([
    ['Ces', 59],
    ['Cis', 61],
    ['Ciss', 61],
    ['Cisz', 61],
    ['Cisis', 62],
    ['Des', 61],
    ['Desz', 61],
    ['Dess', 61],
    ['Deses', 60],
    ['Dis', 63],
    ['Es', 63],
    ['Ess', 63],
    ['Esz', 63],
    ['Eses', 62],
    ['Eis', 65],
    ['Fes', 64],
    ['Fis', 66],
    ['Fisz', 66],
    ['Fisis', 67],
    ['Ges', 66],
    ['Gesz', 66],
    ['Gis', 68],
    ['As', 68],
    ['Ass', 68],
    ['Asz', 68],
    ['Ases', 67],
    ['Asas', 67],
    ['Ais', 70],
    ['Bes', 70],
    ['bes', 70],
    ['BES', 70],
    ['Bess', 70],
    ['Beses', 69],
    ['Bis', 72],
    ['Hes', 70],
    ['Heses', 69],
    ['His', 72],
    ['H', 71],
    ['Bb', 70],
    ['B♭', 70],
    ['B flat', 70],
  ])('%s is %d in German and in Dutch use', (name, key) => {
    expect(named(name, 'german')).toBe(key);
    expect(named(name, 'dutch')).toBe(key);
  });

  it.each([
    ['german', 70],
    ['dutch', 71],
    ['english', 71],
  ] as const)('B in %s use is %d', (naming, key) => {
    expect(named('B', naming)).toBe(key);
  });

  it('has s as a sharp in English use alone', () => {
    expect(named('As', 'english')).toBe(70);
    expect(named('Cs', 'english')).toBe(61);
  });

  it.each([
    ['C4 Cis4 H4', 'german'],
    ['Bes3 Cis4 B4', 'dutch'],
    ['Cis4 Bb3', 'dutch'],
    ['Cisz4 B3', 'german'],
    ['Es4 B3', 'german'],
    ['Es4 Cs4', 'english'],
    ['C#4 B3 As4', 'english'],
  ])('%s is %s use', (texts, naming) => {
    expect(lettersIn(texts.split(' ')).naming()).toBe(naming);
  });
});
