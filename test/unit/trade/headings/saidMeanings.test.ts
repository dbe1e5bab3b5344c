import { describe, expect, it } from 'vitest';
import { saidMeanings } from '../../../../server/trade/headings/saidMeanings';

function said(text: string): string[] {
  return [...saidMeanings(text.split(' '))];
}

describe('what the words of a sentence name', () => {
  it('names columns in the order of the words, two words before each alone', () => {
    expect(said('for this one root key is higher')[0]).toBe('pitch_keycenter');
    expect([...new Set(said('the pan and the volume'))]).toEqual(['pan', 'volume']);
  });

  it('takes no word that is only like one of a heading', () => {
    expect(said('the volumme')).toEqual([]);
    expect(said('nothing of the kind')).toEqual([]);
  });

  it('looks at forty words', () => {
    const words = (count: number) => `${Array(count).fill('xyzzy').join(' ')} pan`;
    expect(said(words(39))).toContain('pan');
    expect(said(words(40))).toEqual([]);
  });
});
