import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import { readVocabularyXml } from '../../../server/vocabulary/readVocabularyXml';
import type { Example, TrueValues } from './examples';
import { examples } from './examples';

function read({ vocabulary, text, samples }: Example) {
  return readVocabularyXml(vocabulary)(text, {
    path: 'instrument.xml',
    sampleFacts: (path) => samples.get(path),
  });
}

/** Numbers to half a hundred-thousandth: the texts hold exact decimals, what follows from them by a logarithm is none. */
function nearly(values: TrueValues): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => [
      name,
      typeof value === 'number' && !Number.isInteger(value) ? expect.closeTo(value, 5) : value,
    ]),
  );
}

// What is true of each region was there before the text, which is rendered from it without any reader or writer.
describe.each(Object.entries(examples))('reading %s', (_, example) => {
  it('gives the true values of every region, and nothing to complain of', () => {
    const instrument = read(example);
    expect(instrument.findings).toEqual([]);
    const values = [...instrument.regions].map((region) => effectiveValues(instrument, region));
    expect(values).toEqual(example.regions.map(nearly));
  });

  it('keeps the parameters of each header in the order of their names', () => {
    const instrument = read(example);
    for (let header = 0; header < instrument.headers.count; header++) {
      for (let at = instrument.firstParameter(header) + 1; at < instrument.endParameter(header); at++) {
        expect(instrument.nameSpan(at).start).toBeGreaterThanOrEqual(instrument.nameSpan(at - 1).start);
        expect(instrument.valueSpan(at).start).toBeGreaterThanOrEqual(instrument.nameSpan(at).start);
      }
    }
  });
});
