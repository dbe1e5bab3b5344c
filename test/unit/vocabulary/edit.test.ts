import fc from 'fast-check';
import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { editedText } from '../../../server/model/editing/changedInstrument';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Instrument } from '../../../server/model/instrument';
import { editInVocabulary } from '../../../server/vocabulary/edit/editVocabularyXml';
import { readVocabularyXml } from '../../../server/vocabulary/read/readVocabularyXml';
import { canonicalNameOf } from '../../../server/vocabulary/write/writePlaces';
import { examples } from './examples';
import { anyValue } from './writeAnyInstrument';

function regionsOf(instrument: Instrument) {
  return [...instrument.regions].map((region) => effectiveValues(instrument, region));
}

describe.each(Object.entries(examples))('%s', (_name, { vocabulary, text, samples }) => {
  const sampleFacts = (path: string) => samples.get(path);
  const read = (xml: string) => readVocabularyXml(vocabulary)(xml, { path: 'a.xml', sampleFacts });
  const edit = editInVocabulary(vocabulary, () => sampleFacts);
  const instrument = read(text);
  const before = regionsOf(instrument);
  const places = vocabulary.levels[vocabulary.levels.length - 1]?.parameters ?? [];
  const anyRegion = fc.nat(before.length - 1);
  // Another sample has another length and rate, on which places in it depend.
  const notSample = places.filter(({ parameter }) => parameter !== 'sample');

  it('sets a value of a region and nothing else', () => {
    const anySetting = fc
      .constantFrom(...notSample)
      .chain((place) => anyValue(place).map((value) => ({ name: place.parameter, value, form: place.form })));
    fc.assert(
      fc.property(anyRegion, anySetting, (at, { name, value }) => {
        const header = instrument.regions[at];
        const { edits, notes } = edit(instrument, { kind: 'set', header, name, value });
        if (notes.some(({ kind }) => kind === 'dropped')) {
          expect(edits).toEqual([]);
          return;
        }
        const body = instrument.bodySpan(header);
        for (const { start, end } of edits) {
          expect(start).toBeGreaterThan(body.start);
          expect(end).toBeLessThan(body.end);
        }
        const changed = editedText(text, edits);
        expect(XMLValidator.validate(changed)).toBe(true);
        const after = regionsOf(read(changed));
        const { [canonicalNameOf(name)]: now, ...others } = after[at] ?? {};
        const { [canonicalNameOf(name)]: _, ...othersBefore } = before[at] ?? {};
        if (typeof now === 'number') {
          expect(Math.abs(now - Number(value))).toBeLessThanOrEqual(notes.length > 0 ? 0.5 : 0.00001);
        } else expect(now).toBe(value);
        expect(others).toEqual(othersBefore);
        expect(after.filter((_region, place) => place !== at)).toEqual(
          before.filter((_region, place) => place !== at),
        );
      }),
      { numRuns: 25 },
    );
  });

  it('takes a value of a region out and puts it back', () => {
    fc.assert(
      fc.property(anyRegion, fc.constantFrom(...notSample), (at, { parameter: name, part }) => {
        const header = instrument.regions[at];
        const id = canonicalNameOf(name);
        const own = instrument.own(header, instrument.names.idOf(id));
        fc.pre(own >= 0);
        const removed = editedText(text, edit(instrument, { kind: 'remove', parameter: own }).edits);
        expect(XMLValidator.validate(removed)).toBe(true);
        const without = read(removed);
        const { [id]: now, ...others } = regionsOf(without)[at] ?? {};
        const { [id]: _, ...othersBefore } = before[at] ?? {};
        expect(others).toEqual(othersBefore);
        if (part === undefined) expect(without.own(without.regions[at], instrument.names.idOf(id))).toBe(-1);
        else expect(now).toBe({ lokey: 0, hikey: 127, lovel: 1, hivel: 127 }[id]);
        const value = instrument.valueText(own);
        const again = edit(without, { kind: 'set', header: without.regions[at], name, value });
        expect(again.notes).toEqual([]);
        // The numbers may have been written with more digits than they need.
        expect(regionsOf(read(editedText(removed, again.edits)))).toEqual(before);
        const number = /\d+(?:[.,]\d+)*/g;
        expect(editedText(removed, again.edits).replace(number, '0')).toBe(text.replace(number, '0'));
      }),
      { numRuns: 25 },
    );
  });

  it('takes a region out with its lines', () => {
    const header = instrument.regions[3];
    const changed = editedText(text, edit(instrument, { kind: 'removeHeader', header }).edits);
    expect(regionsOf(read(changed))).toEqual(before.filter((_region, at) => at !== 3));
    expect(changed).not.toMatch(/\n\s*\n/);
  });

  it('changes nothing for what it has no place for', () => {
    const header = instrument.regions[0];
    for (const change of [
      { kind: 'set', header, name: 'cutoff', value: '500' },
      { kind: 'define', name: '$A', value: '1' },
      { kind: 'moveOut', first: header, last: header, path: 'x.xml' },
    ] as const) {
      const { edits, notes } = edit(instrument, change);
      expect(edits).toEqual([]);
      expect(notes.map(({ kind }) => kind)).toEqual(['dropped']);
    }
  });
});
