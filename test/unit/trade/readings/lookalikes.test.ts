import { describe, expect, it } from 'vitest';
import { readKeyRange } from '../../../../server/trade/readings/keyReading';
import { withLatinNotes } from '../../../../server/trade/readings/lookalikes';
import { middleCIn } from '../../../../server/trade/statements/keys/statedOctave';

// The letters by their numbers in Unicode, as they cannot be told apart by sight.
const cyrillic = { A: '\u0410', B: '\u0412', C: '\u0421', E: '\u0415', H: '\u041d' };
const greek = { A: '\u0391', B: '\u0392', E: '\u0395', H: '\u0397' };

describe('note names in letters that look like Latin ones', () => {
  it.each([...Object.entries(cyrillic), ...Object.entries(greek)])(
    '%s is read as the Latin letter',
    (name, typed) => {
      expect(readKeyRange(`${typed}3`)).toEqual(readKeyRange(`${name}3`));
      expect(readKeyRange(`${typed}#3-G5`)).toEqual(readKeyRange(`${name}#3-G5`));
      expect(readKeyRange(`D-1 .. ${typed}b2`)).toEqual(readKeyRange(`D-1 .. ${name}b2`));
    },
  );

  it('are read in small letters with primes, and with German endings', () => {
    expect(readKeyRange("\u0441'")).toEqual(readKeyRange("c'"));
    expect(readKeyRange('\u0421is4')).toEqual(readKeyRange('Cis4'));
  });

  it('tell the octave in a sentence', () => {
    expect(middleCIn('\u04213 = 60')).toBe('C3');
  });

  it.each(['\u0410льт 3', 'Ряд \u0410', 'х\u04213', '\u0421оль3'])('leaves words alone: %s', (text) => {
    expect(withLatinNotes(text)).toBe(text);
  });
});
