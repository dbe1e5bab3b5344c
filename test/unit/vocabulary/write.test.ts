import fc from 'fast-check';
import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Instrument } from '../../../server/model/instrument';
import { readSfz } from '../../../server/sfz/read';
import { readVocabularyXml } from '../../../server/vocabulary/read/readVocabularyXml';
import { writeInVocabulary } from '../../../server/vocabulary/write/writeVocabularyXml';
import type { Example } from './examples';
import { examples } from './examples';
import { anyFacts, anyInstrument } from './writeAnyInstrument';

function regionsOf(instrument: Instrument) {
  return [...instrument.regions].map((region) => effectiveValues(instrument, region));
}

/** What holds where nothing is said, by the documentation of the open SFZ format. */
const defaults: Record<string, number> = {
  lokey: 0,
  hikey: 127,
  lovel: 1,
  hivel: 127,
  loop_start: 0,
  offset: 0,
};

describe.each(Object.entries(examples))('%s', (_name, { vocabulary, text, samples, regions }: Example) => {
  const write = writeInVocabulary(vocabulary);

  it('writes what it reads', () => {
    const sampleFacts = (path: string) => samples.get(path);
    const read = (xml: string) => readVocabularyXml(vocabulary)(xml, { path: 'a.xml', sampleFacts });
    const instrument = read(text);
    const first = regionsOf(instrument);
    expect(first.length).toBe(regions.length);
    const written = write(instrument, { sampleFacts });
    expect(XMLValidator.validate(written.text)).toBe(true);
    expect(written.notes).toEqual([]);
    expect(written.kept).toBe(instrument.parameters.count);
    expect(regionsOf(read(written.text))).toEqual(first);
  });

  it('keeps the values in force of any instrument that it has places for', () => {
    const sampleFacts = () => anyFacts;
    fc.assert(
      fc.property(anyInstrument(vocabulary), (sfz) => {
        const instrument = readSfz(sfz, { path: 'a.sfz' });
        const written = write(instrument, { sampleFacts });
        expect(XMLValidator.validate(written.text)).toBe(true);
        const again = regionsOf(readVocabularyXml(vocabulary)(written.text, { path: 'a.xml', sampleFacts }));
        const before = regionsOf(instrument);
        expect(again.length).toBe(before.length);
        expect(written.notes.filter(({ kind }) => kind === 'dropped')).toEqual([]);
        for (const { message, written: place } of written.notes) {
          const shown = written.text.slice(place?.start, place?.end);
          const [, text] = / is written as (.*?)\. [A-Z]/.exec(message) ?? [];
          expect(shown).toMatch(/^<[^\s<>]+$|^[^\s="<]+="[^"]*"$|^[^<"]*$/);
          if (text !== undefined) expect(shown).toContain(text);
        }
        const rounded = written.notes.filter(({ kind }) => kind === 'approximated');
        before.forEach((values, at) => {
          const now = again[at] ?? {};
          for (const [name, value] of Object.entries(values)) {
            const near = rounded.some(({ message }) => message.startsWith(`${name} `));
            if (typeof value === 'number') {
              expect(
                Math.abs(Number(now[name]) - value),
                `${name} ${value} ${now[name]}`,
              ).toBeLessThanOrEqual(near ? 0.5 : 0.00001);
            } else expect(now[name]).toBe(value);
          }
          for (const [name, value] of Object.entries(now)) {
            if (!(name in values)) expect(value, name).toBe(defaults[name]);
          }
        });
      }),
    );
  });
});
