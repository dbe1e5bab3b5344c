import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import { readSfz } from '../../../server/sfz/read';
import { inferVocabulary } from '../../../server/vocabulary/infer/inferVocabulary';
import { readVocabularyXml } from '../../../server/vocabulary/read/readVocabularyXml';
import { writeInVocabulary } from '../../../server/vocabulary/write/writeVocabularyXml';

const folder = join(import.meta.dirname, '../../corpus/xml');
const texts = readdirSync(folder).filter((name) => name.endsWith('.xml'));

interface AnyRegion {
  sample: string;
  low: number;
  high: number;
  soft: number;
  loud: number;
  tune: number;
  transpose: number;
}

const keys = fc.tuple(fc.integer({ min: 12, max: 110 }), fc.integer({ min: 0, max: 17 }));
const region: fc.Arbitrary<AnyRegion> = fc
  .record({
    sample: fc.constantFrom('a.wav', 'deep/b.wav', 'c & d.wav', 'é.wav'),
    keys,
    layer: fc.constantFrom([1, 127], [1, 63], [64, 127]),
    tune: fc.integer({ min: -99, max: 99 }),
    transpose: fc.integer({ min: -12, max: 12 }),
  })
  .map(({ sample, keys: [low, more], layer: [soft, loud], tune, transpose }) => {
    return { sample, low, high: low + more, soft, loud, tune, transpose };
  });

function sfzOf(regions: readonly AnyRegion[]): string {
  return regions
    .map(
      ({ sample, low, high, soft, loud, tune, transpose }) =>
        `<region> lokey=${low} hikey=${high} lovel=${soft} hivel=${loud} tune=${tune} transpose=${transpose} sample=${sample}`,
    )
    .join('\n');
}

/** What an instrument in any vocabulary has to come back as: the files, the keys, and where there is a place for it, the tuning. */
describe.each(texts)('what is written in the vocabulary of %s', (name) => {
  const text = readFileSync(join(folder, name), 'utf8');
  const vocabulary = inferVocabulary(text, { path: name })?.vocabulary;
  const parameters = vocabulary?.levels.at(-1)?.parameters ?? [];
  const has = (one: string) => parameters.some(({ parameter }) => parameter === one);
  // Some have no place for a range, only for one key.
  const isRanged = vocabulary?.levels.some((level) =>
    level.parameters.some(({ parameter }) => parameter === 'hikey'),
  );

  it.runIf(isRanged)('is read again as it was', () => {
    if (!vocabulary) throw new Error('taken for no instrument');
    fc.assert(
      fc.property(fc.array(region, { minLength: 1, maxLength: 5 }), (regions) => {
        const { text: written } = writeInVocabulary(vocabulary)(readSfz(sfzOf(regions), { path: 'a.sfz' }));
        const again = readVocabularyXml(vocabulary)(written, { path: 'a.xml' });
        const read = [...again.regions].map((one) => {
          const values = effectiveValues(again, one);
          const tuning = Number(values.tune ?? 0) + 100 * Number(values.transpose ?? 0);
          return {
            sample: values.sample,
            low: again.lowKey[one],
            high: again.highKey[one],
            ...(has('tune') && { tuning }),
          };
        });
        expect(read).toEqual(
          regions.map(({ sample, low, high, tune, transpose }) => ({
            sample,
            low,
            high,
            ...(has('tune') && { tuning: tune + 100 * transpose }),
          })),
        );
      }),
      { numRuns: 40 },
    );
  });
});
