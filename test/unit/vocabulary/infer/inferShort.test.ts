import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../../server/model/effectiveValues';
import { doubtfulBelow } from '../../../../server/vocabulary/infer/inferredVocabulary';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { readVocabularyXml } from '../../../../server/vocabulary/read/readVocabularyXml';
import { short } from '../heldOut/short/all';
import { valuesIn } from './inferred';

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

describe('a short name of root keys whose values are ranges', () => {
  it('holds key ranges beside a root key and velocity ranges', () => {
    const text = `<b><z kr="C3-E3" rt="D3" vr="1..80" f="a.wav"/><z kr="F3-A3" rt="G3" vr="1..80" f="b.wav"/>
      <z kr="A#3-D4" rt="C4" vr="81..127" f="c.wav"/></b>`;
    expect(valuesIn(text, 'lokey', 'hikey', 'pitch_keycenter', 'lovel', 'hivel')).toEqual([
      '48 52 50 1 80',
      '53 57 55 1 80',
      '58 62 60 81 127',
    ]);
  });

  it('holds root keys where they are single keys', () => {
    const text = '<b><z kr="50" lk="48" hk="52" f="a.wav"/><z kr="55" lk="53" hk="57" f="b.wav"/></b>';
    expect(valuesIn(text, 'lokey', 'pitch_keycenter')).toEqual(['48 50', '53 55']);
  });
});
