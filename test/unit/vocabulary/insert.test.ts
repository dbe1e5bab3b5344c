import fc from 'fast-check';
import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Instrument } from '../../../server/model/instrument';
import { readSfz } from '../../../server/sfz/read';
import { editInVocabulary } from '../../../server/vocabulary/editVocabularyXml';
import { readVocabularyXml } from '../../../server/vocabulary/readVocabularyXml';
import { editedText } from './editedText';
import { examples } from './examples';
import { anyFacts, anyInstrument } from './writeAnyInstrument';

function regionsOf(instrument: Instrument) {
  return [...instrument.regions].map((region) => effectiveValues(instrument, region));
}

describe.each(Object.entries(examples))('%s', (_name, { vocabulary, text, samples }) => {
  const sampleFacts = (path: string) => samples.get(path) ?? anyFacts;
  const read = (xml: string) => readVocabularyXml(vocabulary)(xml, { path: 'a.xml', sampleFacts });
  const edit = editInVocabulary(vocabulary, () => sampleFacts);
  const instrument = read(text);
  const before = regionsOf(instrument);

  it('pastes regions anywhere, with all their values, and leaves the rest as it is', () => {
    fc.assert(
      fc.property(anyInstrument(vocabulary), fc.nat(text.length), (sfz, offset) => {
        const inserted = readSfz(sfz, { path: 'a.sfz' });
        const { edits, notes } = edit(instrument, { kind: 'insert', offset, instrument: inserted });
        const [change, ...more] = edits;
        if (inserted.regions.length === 0) {
          expect(edits).toEqual([]);
          return;
        }
        expect(more).toEqual([]);
        expect(text.slice(change?.start, change?.end).trim()).toBe('');
        const changed = editedText(text, edits);
        expect(XMLValidator.validate(changed)).toBe(true);
        const after = regionsOf(read(changed));
        const added = regionsOf(inserted);
        const first = after.findIndex((values, at) => JSON.stringify(values) !== JSON.stringify(before[at]));
        expect(after.length).toBe(before.length + added.length);
        const place = first < 0 ? before.length : first;
        expect(after.slice(place + added.length)).toEqual(before.slice(place));
        expect(notes.filter(({ kind }) => kind === 'dropped')).toEqual([]);
        added.forEach((values, at) => {
          const now = after[place + at] ?? {};
          for (const [name, value] of Object.entries(values)) {
            if (typeof value === 'number')
              expect(Math.abs(Number(now[name]) - value), name).toBeLessThanOrEqual(0.5);
            else expect(now[name]).toBe(value);
          }
        });
      }),
      { numRuns: 60 },
    );
  });

  it('writes them like their neighbours', () => {
    const [one] = regionsOf(instrument);
    const sfz = `<region> ${Object.entries(one ?? {})
      .map(([name, value]) => `${name}=${value}`)
      .join('\n')}`;
    const header = instrument.regions[0] as number;
    const { start, end } = instrument.bodySpan(header);
    const { edits } = edit(instrument, {
      kind: 'insert',
      offset: end,
      instrument: readSfz(sfz, { path: 'a.sfz' }),
    });
    console.log(editedText(text, edits).slice(0, end + 700));
    expect(start).toBeGreaterThan(0);
  });
});
