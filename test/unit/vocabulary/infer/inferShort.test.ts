import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../../server/model/effectiveValues';
import { doubtfulBelow } from '../../../../server/vocabulary/infer/inferredVocabulary';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { readVocabularyXml } from '../../../../server/vocabulary/read/readVocabularyXml';
import { short } from '../heldOut/short/all';

// What is true of each region was written down by hand from the text; levels, ratios and centibels by the formulas of
// IEC 60027-3, A. J. Ellis (1885) and SoundFont 2.04.
describe.each(Object.entries(short))(
  'the short text of %s',
  (name, { text, samples = {}, regions, open }) => {
    const sampleFacts = (path: string) => samples[path];
    const inferred = inferVocabulary(text, { path: `${name}.xml`, sampleFacts });

    it('gives every region its true values', () => {
      if (!inferred) throw new Error('taken for no instrument');
      const instrument = readVocabularyXml(inferred.vocabulary)(text, { path: `${name}.xml`, sampleFacts });
      expect(instrument.findings.filter(({ message }) => !message.includes('document type'))).toEqual([]);
      const nearly = (value: string | number) =>
        typeof value === 'number' && !Number.isInteger(value) ? expect.closeTo(value, 5) : value;
      expect([...instrument.regions].map((region) => effectiveValues(instrument, region))).toEqual(
        regions.map((region) =>
          Object.fromEntries(Object.entries(region).map(([one, value]) => [one, nearly(value)])),
        ),
      );
    });

    it('leaves in doubt what the text leaves open, and nothing else', () => {
      const doubtful = inferred?.decisions.filter(({ confidence }) => confidence < doubtfulBelow);
      expect(doubtful?.map(({ id }) => id).sort()).toEqual([...open].sort());
    });
  },
);
