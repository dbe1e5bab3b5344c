import { describe, expect, it } from 'vitest';
import { readWord, writeWord } from '../../../../server/vocabulary/forms/words';

const form = (words: Record<string, string>) => ({ kind: 'words' as const, words });
const loops = form({
  round: 'loop_continuous',
  circling: 'loop_continuous',
  never: 'no_loop',
  Never: 'one_shot',
});

describe('a word', () => {
  it('is read in its own letter case first, then in any', () => {
    expect(readWord(loops, 'round')).toBe('loop_continuous');
    expect(readWord(loops, ' round ')).toBe('loop_continuous');
    expect(readWord(loops, 'CIRCLING')).toBe('loop_continuous');
    expect(readWord(loops, 'never')).toBe('no_loop');
    expect(readWord(loops, 'Never')).toBe('one_shot');
    // The first of those that differ in letter case alone counts.
    expect(readWord(loops, 'NEVER')).toBe('no_loop');
    expect(readWord(loops, 'NEVER')).toBe('no_loop');
    expect(readWord(loops, 'x')).toBeUndefined();
  });

  it('is none of what every object has', () => {
    expect(readWord(loops, 'toString')).toBeUndefined();
    expect(readWord(form({ Constructor: 'a' }), 'constructor')).toBe('a');
  });

  it('that is written is the first of its value', () => {
    expect(writeWord(loops, 'loop_continuous')).toBe('round');
    expect(writeWord(loops, ' no_loop ')).toBe('never');
    expect(writeWord(loops, 'LOOP_CONTINUOUS')).toBe('round');
    expect(writeWord(loops, 'loop_sustain')).toBeUndefined();
    expect(writeWord(form({ soft: 'Low', Loud: 'low' }), 'low')).toBe('Loud');
    expect(writeWord(form({ soft: 'Low', loud: 'HIGH' }), 'high')).toBe('loud');
  });

  it('stands for a number in any spelling of it', () => {
    const numbers = form({ oui: '1', non: '0', neither: 'x' });
    expect(writeWord(numbers, '1.0')).toBe('oui');
    expect(writeWord(numbers, '+0')).toBe('non');
    expect(writeWord(numbers, '2')).toBeUndefined();
    // Two texts that are no numbers are not alike.
    expect(writeWord(form({ neither: 'x' }), 'y')).toBeUndefined();
  });
});
