import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Instrument } from '../../../server/model/instrument';
import type { Written } from '../../../server/model/notation';
import { notations } from '../../../server/workspace/notations/notationOf';
import type { Format } from '../features/anyInstrument';
import { effective, faultyInstrumentXml, faultySfz, readText } from '../features/anyInstrument';
import { files, plainSfz, plainXml, sfzWithDirectives, xmlWithDirectives } from './anyDirectives';
import { structureOf } from './structure';

const read = (format: Format, text: string) => readText(format, text, files);
const write = (format: Format, instrument: Instrument): Written =>
  notations[format].write(instrument, { directives: 'keep' });

/** There and back again: both texts, and all that was said on the way. */
function roundTrip(from: Format, to: Format, text: string) {
  const first = read(from, text);
  const there = write(to, first);
  const second = read(to, there.text);
  const back = write(from, second);
  return { first, there, second, back, third: read(from, back.text), notes: [...there.notes, ...back.notes] };
}

/** All comments: no comment of XML has dashes in a row, and one among the opcodes of a header comes behind them. */
const commentsOf = (instrument: Instrument) =>
  structureOf(instrument, false)
    .comments.map((one) => one.replace(/^\d+ /, '').replace(/--+/g, (dashes) => '–'.repeat(dashes.length)))
    .sort();

describe.each([
  ['sfz', 'xml', plainSfz],
  ['xml', 'sfz', plainXml],
] as const)('%s to %s and back', (from, to, texts) => {
  it('has the same structure: headers, own values, order, comments, variables and includes', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const { first, there, second, third, notes } = roundTrip(from, to, text);
        fc.pre(notes.length === 0);
        expect(structureOf(second)).toEqual(structureOf(first));
        expect(structureOf(third)).toEqual(structureOf(first));
        expect(effective(second)).toEqual(effective(first));
        expect(effective(third)).toEqual(effective(first));
        expect(there.kept).toBe(first.parameters.count);
      }),
      { numRuns: 160 },
    );
  });
});

describe.each([
  ['sfz', 'xml', sfzWithDirectives],
  ['xml', 'sfz', xmlWithDirectives],
] as const)('%s of any kind to %s and back', (from, to, texts) => {
  it('has the same values in force, but for what the notes say', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const { first, second, third, notes } = roundTrip(from, to, text);
        fc.pre(!notes.some(({ kind }) => kind === 'dropped'));
        expect(effective(second)).toEqual(effective(first));
        expect(effective(third)).toEqual(effective(first));
        expect(commentsOf(third)).toEqual(commentsOf(first));
      }),
      { numRuns: 240 },
    );
  });

  it('settles: what was written once is written the same', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const once = write(to, read(from, text)).text;
        const twice = write(to, read(to, once)).text;
        expect(write(to, read(to, twice)).text).toBe(twice);
      }),
      { numRuns: 80 },
    );
  });
});

describe('broken text', () => {
  it.each([
    ['sfz', 'xml', faultySfz],
    ['xml', 'sfz', faultyInstrumentXml],
  ] as const)('in %s has the same values in force in %s, but for what the notes say', (from, to, texts) => {
    fc.assert(
      fc.property(texts, (text) => {
        const first = read(from, text);
        const { text: there, notes, kept = -1 } = write(to, first);
        expect(kept).toBeGreaterThanOrEqual(0);
        expect(kept).toBeLessThanOrEqual(first.parameters.count);
        for (const { written } of notes) expect(written?.end ?? 0).toBeLessThanOrEqual(there.length);
        fc.pre(!notes.some(({ kind }) => kind === 'dropped'));
        expect(effective(read(to, there))).toEqual(effective(first));
      }),
      { numRuns: 320 },
    );
  });
});
