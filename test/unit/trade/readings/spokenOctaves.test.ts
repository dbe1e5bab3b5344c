import { describe, expect, it } from 'vitest';
import { readKeyRange } from '../../../../server/trade/readings/keyReading';

// The names of octaves after Helmholtz, "Die Lehre von den Tonempfindungen" (1863), §1: middle C is c' of the one-line octave (from memory).
describe('keys whose octave is named in words', () => {
  it.each([
    ['great C', 36],
    ['small f sharp', 54],
    ['one-line a', 69],
    ['Two-line E flat', 75],
    ['contra A', 33],
    ['großes C', 36],
    ['kleines h', 59],
    ['eingestrichenes fis', 66],
    ['zweigestrichenes c', 72],
    ['Kontra-A', 33],
    ['C der großen Oktave', 36],
    ['kleines b', 58],
    ['фа большой октавы', 41],
    ['до малой октавы', 48],
    ['фа-диез малой октавы', 54],
    ['до первой октавы', 60],
    ['ля-бемоль первой октавы', 68],
    ['ми второй октавы', 76],
    ['соль контроктавы', 31],
    ['до 1-й октавы', 60],
    ['c razkreślne', 60],
    ['wielkie C', 36],
    ['a malé', 57],
    ['lilla c', 48],
    ['ettstruket a', 69],
    ['klein c', 48],
    ['eengestreept a', 69],
    ['do della ottava grande', 36],
    ['do grande ottava', 36],
    ['la de la petite octave', 57],
  ])('%s', (text, key) => {
    expect(readKeyRange(text)?.low.number).toBe(key);
  });

  it('stand in ranges too', () => {
    const range = readKeyRange('großes C bis kleines h');
    expect([range?.low.number, range?.high.number]).toEqual([36, 59]);
  });

  it.each([
    'small',
    'great',
    'small cymbal',
    'great abbey',
    'Mallet a',
    'store',
    'first',
    'kleine Flöte',
    'petite flûte',
    'a small room',
  ])('and "%s" is none', (text) => {
    expect(readKeyRange(text)).toBeUndefined();
  });
});
