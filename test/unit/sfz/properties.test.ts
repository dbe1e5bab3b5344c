import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Instrument } from '../../../server/model/instrument';
import { readSfz } from '../../../server/sfz/read';
import { scanSfz } from '../../../server/sfz/scan';
import { writeSfz } from '../../../server/sfz/write';

const include = () => ({ kind: 'missing' }) as const;
const read = (text: string) => readSfz(text, { path: 'a.sfz', include });

const piece = fc.oneof(
  fc.constantFrom(
    '<region>',
    '<group>',
    '<global>',
    '<master>',
    '<control>',
    '<curve>',
    '<x>',
    '<',
    '>',
    '\n',
    '\r',
    '\r\n',
    ' ',
    '\t',
  ),
  fc.constantFrom('//', '/*', '*/', '#define', '#include', '"a.sfz"', '$A', '$', '=', '==', '#'),
  fc.constantFrom(
    'key=60',
    'lokey=c#4',
    'hikey=-1',
    'sample=a b.wav',
    'sample=',
    'volume=-3.5',
    'default_path=x/',
    'tune=99999999999999999999',
  ),
  fc.constantFrom('define', 'word', 'é', '日本', '\u0000', '\ufeff', 'locc74=1', 'lokey=$A', '$A=3'),
  fc.string({ maxLength: 6 }),
);
const anyText = fc.array(piece, { maxLength: 60 }).map((pieces) => pieces.join(''));

function regions(instrument: Instrument) {
  return [...instrument.regions].map((region) => effectiveValues(instrument, region));
}

describe('any text', () => {
  it('can be read, and every span lies inside it and reproduces its text', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const instrument = read(text);
        let last = 0;
        for (let header = 0; header < instrument.headers.count; header++) {
          const { start, end } = instrument.headerSpan(header);
          expect(start).toBeGreaterThanOrEqual(last);
          expect(end).toBeLessThanOrEqual(text.length);
          last = start;
          if (end > start) expect(text[start]).toBe('<');
        }
        for (let parameter = 0; parameter < instrument.parameters.count; parameter++) {
          const name = instrument.nameSpan(parameter);
          const value = instrument.valueSpan(parameter);
          expect(name.start).toBeLessThan(name.end);
          if (text[name.start] === '$' && value.start === name.start) continue;
          expect(name.end).toBeLessThan(value.start + (value.start === value.end ? 1 : 0) + 1);
          expect(value.start).toBeLessThanOrEqual(value.end);
          expect(value.end).toBeLessThanOrEqual(text.length);
          expect(text.slice(name.end, value.start).trimEnd()).toBe('=');
          if (!text.slice(name.start, value.end).includes('$')) {
            expect(text.slice(name.start, name.end)).toBe(instrument.names.text(instrument.name(parameter)));
            expect(text.slice(value.start, value.end)).toBe(instrument.valueText(parameter));
          }
        }
        for (const { start, end, message } of instrument.findings) {
          expect(start).toBeGreaterThanOrEqual(0);
          expect(end).toBeGreaterThanOrEqual(start);
          expect(end).toBeLessThanOrEqual(text.length);
          expect(message).not.toBe('');
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('gives the same effective regions when it is written and read again', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const instrument = read(text);
        const written = writeSfz(instrument);
        const dropped = written.notes.some((note) => note.kind === 'dropped');
        if (!dropped) expect(regions(read(written.text))).toEqual(regions(instrument));
      }),
      { numRuns: 2000 },
    );
  });

  it('gives numbers as JavaScript reads them', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.double({ noNaN: true }), fc.integer(), fc.float({ noNaN: true })),
        fc.nat(20),
        (number, digits) => {
          const text = Math.abs(number) < 1e20 ? number.toFixed(digits) : String(number);
          const seen: number[] = [];
          const ignore = () => {};
          scanSfz(`tune=${text}`, {
            header: ignore,
            define: ignore,
            include: ignore,
            comment: ignore,
            stray: ignore,
            problem: ignore,
            opcode: (_nameStart, _nameEnd, _hash, _valueStart, _valueEnd, value) => seen.push(value),
          });
          expect(seen).toEqual([/^-?[\d.]+$/.test(text) ? Number(text) : Number.NaN]);
        },
      ),
    );
  });
});
