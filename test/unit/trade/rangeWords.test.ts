import { describe, expect, it } from 'vitest';
import { instrumentName } from '../../../server/library/pairing/instrumentNames';
import { withoutInlineMarks } from '../../../server/table/cells/markup/inlineMarks';
import { scaleIn } from '../../../server/trade/headings/statedScale';
import { languages } from '../../../server/trade/languages/languages';
import { bareWord } from '../../../server/trade/languages/spelling';
import { readKeyRange } from '../../../server/trade/readings/keyReading';
import { readLoop } from '../../../server/trade/readings/loopReading';
import { readSequence } from '../../../server/trade/readings/numberReading';
import { readVelocities } from '../../../server/trade/readings/velocityReading';
import { readRangeText } from '../../../server/vocabulary/infer/ranges/rangeText';
import { conceptsOf } from '../../../server/vocabulary/infer/words/tradeWords';

const between = [...new Set(languages.flatMap((language) => language.between))];
const outOf = [...new Set(languages.flatMap((language) => language.outOf))];
const files = [...new Set(languages.flatMap((language) => language.files))];
/** Single words before the least and the greatest of a range, without those that are articles elsewhere. */
const endWords = (['from', 'upTo'] as const).flatMap((end) =>
  languages.flatMap(({ ends }) => (ends[end] ?? []).map((word) => [bareWord(word), end] as const)),
);
const small = new Set(languages.flatMap(({ fillers }) => fillers.map(bareWord)));
const alone = endWords.filter(([word]) => /^\p{L}+$/u.test(word) && !small.has(word));

describe('the words of languages', () => {
  it.each(between)('part the ends of a range wherever one can stand: %s', (word) => {
    expect(readKeyRange(`36 ${word} 47`)).toMatchObject({ low: { number: 36 }, high: { number: 47 } });
    expect(readKeyRange(`C2 ${word.toUpperCase()} B2`)).toMatchObject({
      low: { named: 36 },
      high: { named: 47 },
    });
    expect(readVelocities(`1 ${word} 63`)).toMatchObject({ low: 1, high: 63 });
    expect(readLoop(`1000 ${word} 2000`)).toMatchObject({
      start: { number: 1000 },
      second: { number: 2000 },
      secondIs: 'end',
    });
    expect(scaleIn(`Pan (0 ${word} 100)`)).toEqual({ low: 0, high: 100 });
    expect(readRangeText(`36 ${word} 47`)).toEqual({ first: '36', between: ` ${word} `, second: '47' });
  });

  it.each(outOf)('part a position from how many there are: %s', (word) => {
    expect(readSequence(`2 ${word} 4`)).toEqual({ position: 2, length: 4 });
  });

  it.each(files)('name a file, in a link and in the name of a folder: %s', (word) => {
    expect(withoutInlineMarks(`[[${word}:a b.wav|shown]]`)).toBe('a b.wav');
    expect(instrumentName(`Kettle ${word}`, false)).toBe('Kettle');
  });

  it.each(alone)('name an end of a range in XML too: %s', (word, end) => {
    expect(conceptsOf(word)?.concepts).toEqual([end === 'from' ? 'lo' : 'hi']);
  });

  it('leave other words alone', () => {
    expect(readKeyRange('36 or 47')).toBeUndefined();
    expect(readVelocities('1 or 63')).toBeUndefined();
    expect(readSequence('2 or 4')).toBeUndefined();
  });
});
