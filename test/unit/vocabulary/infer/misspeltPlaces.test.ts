import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

const told = (text: string) =>
  readInferred(text)
    .decisions.map(({ message }) => message)
    .join('\n');

/** A slip in one name among many of the same kind (our choice: one letter, two in long names). */
describe('a place whose name is that of others with a slip', () => {
  it.each([
    ['rootkey', 'rotokey'],
    ['nuta_bazowa', 'nuta_bazwoa'],
    ['Grundton', 'Grunton'],
    ['fondamentale', 'fondamenatle'],
  ])('is read as they are, and told: %s and %s', (right, wrong) => {
    const zone = (file: string, low: number, name: string) =>
      `<z file="${file}.wav" low="${low}" high="${low + 5}" ${name}="${low + 2}"/>`;
    const text = `<kit>${zone('a', 40, right)}${zone('b', 46, wrong)}${zone('c', 52, right)}</kit>`;
    expect(valuesIn(text, 'sample', 'lokey', 'pitch_keycenter')).toEqual([
      'a.wav 40 42',
      'b.wav 46 48',
      'c.wav 52 54',
    ]);
    expect(told(text)).toContain(`"${wrong}" of 1 region is read as "${right}"`);
  });

  it('may be an element, a range or a value with a unit, or be known by another of its words', () => {
    const part = (file: string, keys: string, level: string, end: string) =>
      `<Teil><Datei>${file}.wav</Datei>${keys}${level}<debut_boucle>100</debut_boucle>${end}</Teil>`;
    const text = `<Satz>${part('a', '<Tasten>40-45</Tasten>', '<Lautstärke>-3 dB</Lautstärke>', '<fin_boucle>900</fin_boucle>')}${part('b', '<Tasten>46-50</Tasten>', '<Lautsärke>-2 dB</Lautsärke>', '<fin_boulce>950</fin_boulce>')}${part('c', '<Tatsen>51-55</Tatsen>', '<Lautstärke>-1 dB</Lautstärke>', '<fin_boucle>990</fin_boucle>')}</Satz>`;
    expect(valuesIn(text, 'lokey', 'hikey', 'volume', 'loop_end', 'end')).toEqual([
      '40 45 -3 900 -',
      '46 50 -2 950 -',
      '51 55 -1 990 -',
    ]);
  });

  it('is none where a region has both, where its values are of another kind or the name has a number', () => {
    for (const [one, other] of [
      ['rootkey="42"', 'rootkey="48" rotokey="49"'],
      ['rootkey="42"', 'rotokey="oak"'],
      ['rootkey="42"', 'rootkey2="49"'],
    ]) {
      const text = `<kit><z file="a.wav" low="40" high="45" ${one}/><z file="b.wav" low="46" high="50" ${other}/><z file="c.wav" low="51" high="55" rootkey="53"/></kit>`;
      expect(told(text)).not.toContain('misspelt');
    }
  });
});
