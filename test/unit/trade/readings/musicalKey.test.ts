import { describe, expect, it } from 'vitest';
import { musicalKeyIn } from '../../../../server/trade/readings/musicalKey';

// How keys of pieces of music are written is common practice.

describe('the key that a piece of music is in', () => {
  it.each([
    'Em',
    'F#m',
    'B♭ minor',
    'G major',
    'Cmaj',
    'G-Dur',
    'fis-Moll',
    'Es-Dur',
    'ré mineur',
    'la menor',
    'Do maggiore',
    'fá menor',
    'ля минор',
    'a-molli',
    'D dorian',
    'ハ長調',
    '嬰ヘ短調',
    'D大调',
    '다장조',
  ])('%s', (text) => {
    expect(musicalKeyIn(text)).toBe('mode');
  });

  it.each(['G', 'F#', 'Bb', 'ré'])('may be %s, which leaves it open', (text) => {
    expect(musicalKeyIn(text)).toBe('tonic');
  });

  it.each(['C4', 'Em3', '60', '', 'mf', 'Emma', 'G 7', 'do4', 'fade out', 'c-1'])('is not %s', (text) => {
    expect(musicalKeyIn(text)).toBeUndefined();
  });
});
