import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Instrument } from '../../../server/model/instrument';
import { finish } from '../../../server/model/steps';
import { changedLines } from '../../../server/sfz/changedLines';
import { readSfz } from '../../../server/sfz/read';
import { readSfzAgain } from '../../../server/sfz/readAgain';

const path = 'a.sfz';
const read = (text: string) => readSfz(text, { path });

/** All that an instrument holds, for comparison. */
function contentOf(instrument: Instrument) {
  const headers = Array.from({ length: instrument.headers.count }, (_, header) => [
    instrument.kind(header),
    instrument.headerSpan(header),
    instrument.bodySpan(header),
    instrument.parent(header),
    instrument.firstParameter(header),
    [instrument.lowKey[header], instrument.highKey[header], instrument.sampleParameter[header]],
    instrument.control(header),
  ]);
  const parameters = Array.from({ length: instrument.parameters.count }, (_, parameter) => [
    instrument.names.text(instrument.name(parameter)),
    instrument.parameterSpan(parameter),
    instrument.valueText(parameter),
    instrument.number(parameter),
    instrument.parameterSource(parameter),
  ]);
  const { regions, directives, findings } = instrument;
  return { headers, parameters, regions: [...regions], directives, findings };
}

const line = fc.constantFrom(
  '<region> sample=a b.wav lokey=60 hikey=61',
  '<region>',
  '<group> group_label=soft // with a remark',
  '<global> volume=-3',
  '<master>',
  '<control> default_path=x/ note_offset=2',
  'sample=c.wav',
  'lovel=1 hivel=63',
  'key=c4 <region> key=61',
  '// only a remark',
  '  ',
  '',
  'stray words',
  '<region sample=x.wav',
  'é=1 ü.wav',
  '/* block',
  'end */ <region> key=3',
  '#define $A 60',
  'key=$A',
  '<unknown> key=1',
);
const end = fc.constantFrom('\n', '\r\n', '\r');
const text = fc.array(fc.tuple(line, end), { maxLength: 14 }).map((lines) => lines.flat().join(''));
const piece = fc.oneof(
  line,
  end,
  fc.constantFrom('1', '=', ' ', '<', 'x', '*/', '/', '*', '$'),
  fc.string({ maxLength: 3 }),
);

describe('a text that differs in a few lines', () => {
  it('is read again with the same outcome as the whole', () => {
    let taken = 0;
    fc.assert(
      fc.property(text, fc.nat(), fc.nat(12), piece, (before, place, length, inserted) => {
        const at = before.length === 0 ? 0 : place % before.length;
        const after = before.slice(0, at) + inserted + before.slice(at + length);
        const again = finish(readSfzAgain(read(before), after, path, read));
        if (!again) return;
        taken++;
        expect(contentOf(again)).toEqual(contentOf(read(after)));
      }),
      { numRuns: 4000 },
    );
    // Most edits are small and harmless, so the short way has to be the usual one.
    expect(taken).toBeGreaterThan(400);
  });

  it('can be read again after having been read again', () => {
    fc.assert(
      fc.property(text, fc.array(fc.tuple(fc.nat(), fc.nat(6), piece), { maxLength: 8 }), (first, edits) => {
        let current = first;
        let instrument = read(first);
        for (const [place, length, inserted] of edits) {
          const at = current.length === 0 ? 0 : place % current.length;
          current = current.slice(0, at) + inserted + current.slice(at + length);
          instrument = readSfz(current, { path, previous: instrument });
        }
        expect(contentOf(instrument)).toEqual(contentOf(read(current)));
      }),
      { numRuns: 1000 },
    );
  });
});

describe('the lines that differ', () => {
  it('are whole lines in both texts, and what is around them is the same', () => {
    fc.assert(
      fc.property(text, fc.nat(), fc.nat(12), piece, (before, place, length, inserted) => {
        const at = before.length === 0 ? 0 : place % before.length;
        const after = before.slice(0, at) + inserted + before.slice(at + length);
        const { start, oldEnd, newEnd } = changedLines(before, after);
        expect(before.slice(0, start)).toBe(after.slice(0, start));
        expect(before.slice(oldEnd)).toBe(after.slice(newEnd));
        expect(start).toBeLessThanOrEqual(Math.min(oldEnd, newEnd));
        const starts = (one: string, offset: number) =>
          offset === 0 || (/[\r\n]/.test(one[offset - 1]) && one.slice(offset - 1, offset + 1) !== '\r\n');
        expect(starts(before, start) && starts(after, start)).toBe(true);
        for (const [one, offset] of [
          [before, oldEnd],
          [after, newEnd],
        ] as const) {
          expect(offset === one.length || starts(one, offset)).toBe(true);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
