import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../server/table/looksLikeZoneTable';
import { readZoneTable } from '../../../server/table/readTable';
import { table } from './tableRegions';

const problem = (...lines: string[]) => readZoneTable(table(...lines)).problem;

describe('a list of ordinary life', () => {
  it.each([
    ['stock', ['Tool | Bin | Price', 'Hook | C4 | 2.40', 'Peg | C5 | 0.12', 'Strap | D2 | 7.90']],
    ['seats', ['Name | Seat', 'Ann Lee | C4', 'Bo Dahl | D2', 'Cy Moe | C5', 'Di Roe | E1']],
    ['seats without headings', ['Ann Lee | C4 | fish', 'Bo Dahl | D2 | meat', 'Cy Moe | C5 | fish']],
    ['books', ['Title | Shelf | Place', 'Rain | B4 | G2', 'Stone | C1 | A5', 'Wind | C2 | D1']],
    ['pulses', ['Person | Low | High', 'Ann | 70 | 120', 'Bo | 80 | 125', 'Cy | 65 | 110', 'Di | 85 | 127']],
  ])('such as one of %s gives no keys', (_, lines) => {
    expect(problem(...lines)).toMatch(
      /^This is no zone table: it gives no keys: .*are not names of audio files/,
    );
  });

  it('is a zone table where its headings speak of samples or keys, or its notes go up', () => {
    expect(problem('Sample | Place', 'kick | C2', 'snare | D2', 'hat | F#2')).toBeUndefined();
    expect(problem('Drum | Root', 'kick | C2', 'snare | D2', 'hat | A1')).toBeUndefined();
    expect(problem('Name | Place', 'kick | C2', 'snare | D2', 'hat | F#2')).toBeUndefined();
  });
});

// Common practice: `3:42` is three minutes and 42 seconds, `0:2` the result of a game.
describe('numbers with a colon between them', () => {
  it.each([
    ['lengths', ['3:42', '4:05', '2:58', '5:20']],
    ['lengths over one another', ['24:42', '34:45', '28:58', '45:52']],
    ['times of the day', ['10:12', '10:25', '11:03', '14:40']],
    ['results', ['88:92', '70:66', '81:79', '64:90']],
  ])('that are %s are no keys', (_, times) => {
    const text = table(...times.map((time, at) => `tune_${'abcd'[at]}.mp3 | ${time}`));
    expect(looksLikeZoneTable(text)).toBe(false);
    expect(readZoneTable(text).problem).toMatch(/^This is no zone table/);
  });

  it('are keys where they lie beside one another as zones do', () => {
    const text = table('a.wav | 24:35', 'b.wav | 36:47', 'c.wav | 48:59');
    expect(looksLikeZoneTable(text)).toBe(true);
    const { instrument } = readZoneTable(text);
    expect(Array.from(instrument.regions, (region) => instrument.lowKey[region])).toEqual([24, 36, 48]);
  });
});
