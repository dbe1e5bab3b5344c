import { expect, it } from 'vitest';
import { assumedOnReading, lostOnReading } from '../../../server/model/writing/readingNotes';
import { inferVocabulary } from '../../../server/vocabulary/infer/inferVocabulary';
import { readVocabularyXml } from '../../../server/vocabulary/read/readVocabularyXml';

it('a range written backwards is told once, as assumed, with what to do', () => {
  const text =
    '<set><zone file="a.wav" lo="66" hi="60"/><zone file="b.wav" lo="67" hi="72"/><zone file="c.wav" lo="73" hi="80"/></set>';
  const { vocabulary } = inferVocabulary(text, { path: 'a.xml' }) ?? {};
  if (!vocabulary) throw new Error('no vocabulary');
  const instrument = readVocabularyXml(vocabulary)(text, { path: 'a.xml' });
  expect(lostOnReading(instrument)).toEqual([]);
  const assumed = [...assumedOnReading(instrument).values()].flat().map(({ message }) => message);
  expect(assumed).toEqual([
    'The key range 66 to 60 is written backwards. It is read as 60 to 66. Swap the two values.',
  ]);
});
