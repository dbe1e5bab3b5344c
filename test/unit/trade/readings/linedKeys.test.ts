import { describe, expect, it } from 'vitest';
import { lacksLines, readLinedKey, writeLinedKey } from '../../../../server/trade/readings/linedKeys';

/**
 * H. von Helmholtz, Die Lehre von den Tonempfindungen (1863): c' (one line) is middle C, key 60 of MIDI 1.0; small c an octave
 * below, great C two, contra C' (here C1) three. German names from Riemann Musiklexikon, "Tonbezeichnung" (from memory).
 */
describe('keys by lines', () => {
  it.each([
    ['c1', 60],
    ["c'", 60],
    ['c′', 60],
    ["c''", 72],
    ['c4', 96],
    ['c', 48],
    ['C', 36],
    ['C1', 24],
    ['C,', 24],
    ['C,,', 12],
    ['C3', 0],
    ['a1', 69],
    ['d1', 62],
    ['e1', 64],
    ['f1', 65],
    ['g1', 67],
    ['c#1', 61],
    ['c♯1', 61],
    ['d♭1', 61],
    ['cis1', 61],
    ['cisis1', 62],
    ['des1', 61],
    ['deses1', 60],
    [' c1 ', 60],
    ['c7', undefined],
    ['g6', 127],
    ['gis6', undefined],
    ['Ces3', undefined],
  ])('%s is %s in any use', (text, key) => {
    expect(readLinedKey(text, 'english')).toBe(key);
    expect(readLinedKey(text, 'german')).toBe(key);
  });

  it.each([
    ['h1', 71],
    ['H', 47],
    ['b1', 70],
    ['B', 46],
    ['as1', 68],
    ['es1', 63],
    ['Es', 39],
    ['heses1', 69],
    ['ases1', 67],
    ['eses1', 62],
    ['bes1', 70],
  ])('%s is %d in German use', (text, key) => {
    expect(readLinedKey(text, 'german')).toBe(key);
  });

  it('has B as the note below C outside Germany, and no H', () => {
    expect(readLinedKey('b1', 'english')).toBe(71);
    expect(readLinedKey('h1', 'english')).toBeUndefined();
    expect(readLinedKey('as1', 'english')).toBeUndefined();
    expect(readLinedKey('es1', 'english')).toBeUndefined();
  });

  it.each(['', 'i1', 'c8', 'c0', 'xc1', 'c1x', 'ds1', 'hs1', "C'", 'c,', "c'''''''", 'C,,,,', 'c-1', 'c 1'])(
    'is none in "%s"',
    (text) => expect(readLinedKey(text, 'german')).toBeUndefined(),
  );
});

describe('note names without lines', () => {
  it.each(['c', 'C', ' fis ', 'es', 'as', 'd#', 'B', 'd♭', 'd♯'])('%s', (text) => {
    expect(lacksLines(text)).toBe(true);
  });

  it.each(['c1', "c'", 'ds', 'i', '', 'xc', 'cx', 'c is'])('"%s" is none', (text) => {
    expect(lacksLines(text)).toBe(false);
  });
});

describe('a key written by lines', () => {
  it.each([
    [60, 'c1', 'c1'],
    [48, 'c', 'c'],
    [36, 'C', 'C'],
    [24, 'C1', 'C1'],
    [0, 'C3', 'C3'],
    [61, 'cis1', 'c#1'],
    [37, 'Cis', 'C#'],
    [71, 'h1', 'b1'],
    [70, 'b1', 'a#1'],
    [127, 'g6', 'g6'],
  ])('%d', (key, german, plain) => {
    expect(writeLinedKey(key, true)).toBe(german);
    expect(writeLinedKey(key, false)).toBe(plain);
  });

  it('is read as the same key, of all 128', () => {
    for (let key = 0; key < 128; key++) {
      expect(readLinedKey(writeLinedKey(key, true), 'german')).toBe(key);
      expect(readLinedKey(writeLinedKey(key, false), 'english')).toBe(key);
    }
  });
});
