import { describe, expect, it } from 'vitest';
import { musicalKeyIn } from '../../../../server/trade/readings/musicalKey';
import { spokenKeyIn } from '../../../../server/trade/readings/spokenOctaves';
import { keyOrderIn } from '../../../../server/trade/statements/keys/keyOrder';
import { outermostKeysIn } from '../../../../server/trade/statements/keys/keySpread';
import { middleCIn } from '../../../../server/trade/statements/keys/statedOctave';

// Names of notes as in dictionaries of music (from memory); that each place takes all of them is our choice.
describe('notes in sentences', () => {
  it.each([
    ['One key each, in the given order, from Disz2 on', 39],
    ['Una tecla cada una, en orden, desde do2', 36],
    ['One key each, in order, from Deses2 on', 36],
  ])('reads the first key of %s', (text, key) => {
    expect(keyOrderIn([text])?.first?.named).toBe(key);
  });

  it('reads the key that the outermost zone reaches to', () => {
    const { lowest, highest } = outermostKeysIn([
      'The lowest zone goes down to Ases1, and the highest one goes up to fa6.',
    ]);
    expect([lowest?.named, highest?.named]).toEqual([31, 89]);
  });

  it('takes no part of a longer word for a key', () => {
    expect(outermostKeysIn(['The lowest zone goes down to plan24.']).lowest).toBeUndefined();
  });

  it.each([
    ['ド3 = 60', 'C3'],
    ['レコード3 = 60', undefined],
    ['The octave of middle C is written as 4', undefined],
  ])('reads where %s puts middle C', (text, middleC) => {
    expect(middleCIn(text)).toBe(middleC);
  });

  it.each([
    ['kleines heses', 57],
    ['großes As', 44],
    ['small C bmol', 47],
    ['one-lined Cisis', 62],
  ])('reads %s', (text, key) => {
    expect(spokenKeyIn(text)?.key).toBe(key);
  });

  it.each([
    ['Asas', 'tonic'],
    ['Ces-Dur', 'mode'],
    ['si bémol majeur', 'mode'],
  ])('reads what music in %s names', (text, said) => {
    expect(musicalKeyIn(text)).toBe(said);
  });
});
