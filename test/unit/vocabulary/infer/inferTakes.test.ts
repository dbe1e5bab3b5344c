import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

/** Two sets of takes and a single one, each set in an element that is written so. */
function pluck(open: string, close: string, around = ''): string {
  return `<saz ${around}>
    <fret keys="48-52" root="50">${open}<take wav="s1.wav"/><take wav="s2.wav"/>${close}</fret>
    <fret keys="53-57" root="55">${open}<take wav="s3.wav"/><take wav="s4.wav"/><take wav="s5.wav"/><take wav="s6.wav"/>${close}</fret>
    <fret keys="58-62" root="60"><take wav="s7.wav"/></fret></saz>`;
}

const shares = ['- 0.5', '0.5 -', '- 0.25', '0.25 0.5', '0.5 0.75', '0.75 -', '- -'];

describe('regions of the same keys of which one is chosen', () => {
  it.each([
    ['a word', '<alt mode="random">', '</alt>'],
    ['a word of a place that nobody knows', '<set fkd="random">', '</set>'],
    ['a word in German', '<satz wahl="zufällig">', '</satz>'],
    ['a word in Spanish', '<juego modo="al azar">', '</juego>'],
    ['a switch', '<set random="yes">', '</set>'],
    ['the name of their element', '<random>', '</random>'],
    ['the text of an element', '<set><mode>random</mode>', '</set>'],
  ])('share the chance out evenly by %s', (_, open, close) => {
    const text = pluck(open, close);
    expect(valuesIn(text, 'lorand', 'hirand')).toEqual(shares);
    const { decisions, unread } = readInferred(text);
    expect(decisions.some(({ message, isGuess }) => isGuess && /chosen at random/.test(message))).toBe(true);
    expect(unread.join()).not.toMatch(/random|wahl|modo/);
  });

  it('also where the outermost element says it of all', () => {
    expect(valuesIn(pluck('', '', 'take-mode="random"'), 'lorand', 'hirand')).toEqual(shares);
  });

  it('take turns by a word, and in thirds by chance', () => {
    expect(valuesIn(pluck('<set how="cycle">', '</set>'), 'seq_position', 'seq_length', 'hirand')).toEqual([
      '1 2 -',
      '2 2 -',
      '1 4 -',
      '2 4 -',
      '3 4 -',
      '4 4 -',
      '- - -',
    ]);
    const three = pluck('<set how="random">', '</set>').replace('<take wav="s6.wav"/>', '');
    expect(valuesIn(three, 'lorand', 'hirand').slice(2, 5)).toEqual([
      '- 0.333333',
      '0.333333 0.666667',
      '0.666667 -',
    ]);
  });

  it('sound together where another word stands there', () => {
    const text = pluck('<set how="random">', '</set>').replace('<set how="random">', '<set how="layer">');
    expect(valuesIn(text, 'lorand', 'hirand').slice(0, 3)).toEqual(['- -', '- -', '- 0.25']);
  });

  it.each(['name="Random"', 'lfo-shape="random"', 'title="Cycle"'])('are not told by %s', (around) => {
    expect(valuesIn(pluck('<set>', '</set>', around), 'lorand', 'hirand', 'seq_position')[0]).toBe('- - -');
  });
});
