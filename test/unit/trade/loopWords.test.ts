import { describe, expect, it } from 'vitest';
import { namesLoop } from '../../../server/trade/loopWords';
import { loopModeInWords } from '../../../server/trade/readings/loopPhrases';
import { loopsToEndIn } from '../../../server/trade/statements/playing/loopsToEnd';
import { endsIn } from '../../../server/trade/statements/playing/statedEnds';

// Words from dictionaries of each language (from memory); that all places know them alike is our choice.
describe('words for loops', () => {
  it.each([
    'looped',
    'Endlosschleife',
    'bouclé',
    'smyčky',
    'SMYCKA',
    'pętli',
    'sløyfe',
    'döngüsü',
    'ループ',
    '루프',
    'laço',
  ])('are known: %s', (word) => {
    expect(namesLoop(word)).toBe(true);
  });

  it.each(['lusteloos', 'lob', 'slender', 'gallop', ''])('are no others: %s', (word) => {
    expect(namesLoop(word)).toBe(false);
  });

  it('are known to all who read of loops', () => {
    expect(endsIn('Döngü (exclusive)')?.are).toBe('behind');
    expect(endsIn('Slutet är första ramen efter sløyfen')?.are).toBe('behind');
    expect(loopModeInWords('χωρίς λούπα')?.mode).toBe('no_loop');
    expect(loopsToEndIn(['Sløyfene går til slutten av filen'])).toBeDefined();
  });
});
