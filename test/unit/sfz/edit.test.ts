import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Instrument } from '../../../server/model/instrument';
import type { Change } from '../../../server/model/notation';
import { editSfz } from '../../../server/sfz/edit';
import { readSfz } from '../../../server/sfz/read';

const read = (text: string) => readSfz(text, { path: 'a.sfz' });

function changed(text: string, change: (instrument: Instrument) => Change): string {
  const instrument = read(text);
  let result = text;
  const { edits } = editSfz(instrument, change(instrument));
  for (const { source, start, end, newText } of [...edits].sort((a, b) => b.start - a.start)) {
    expect(source).toBe(0);
    result = result.slice(0, start) + newText + result.slice(end);
  }
  return result;
}

const region = (instrument: Instrument, number: number) => instrument.regions[number];
const set =
  (name: string, value: string) =>
  (instrument: Instrument): Change => ({
    kind: 'set',
    header: region(instrument, 0),
    name,
    value,
  });
/** The parameter whose text stands at `marked`, a piece of the text. */
const parameterOf = (instrument: Instrument, marked: string) =>
  instrument.parameterAt(0, instrument.sources[0].text.indexOf(marked));

describe('setting a value', () => {
  it.each([
    ['replaces it', '<region> key=60 lovel=1', '<region> key=60 lovel=40'],
    ['replaces the last of several', '<region> lovel=1 lovel=2', '<region> lovel=1 lovel=40'],
    ['fills an empty one', '<region> lovel= key=60', '<region> lovel=40 key=60'],
    ['adds it on the same line', '<region> key=60 sample=a b.wav', '<region> key=60 sample=a b.wav lovel=40'],
    ['adds it before a comment', '<region> key=60 // why', '<region> key=60 lovel=40 // why'],
    ['adds it to a bare header', '<region>', '<region> lovel=40'],
    [
      'adds a line of its own',
      '<region>\n  key=60\n  tune=5\n\n<region>',
      '<region>\n  key=60\n  tune=5\n  lovel=40\n\n<region>',
    ],
    ['adds a line with CRLF', '<region>\r\nkey=60\r\n', '<region>\r\nkey=60\r\nlovel=40\r\n'],
    [
      'does not touch what is inherited',
      '<group> lovel=1\n<region> key=60',
      '<group> lovel=1\n<region> key=60 lovel=40',
    ],
  ])('%s', (_what, before, after) => {
    expect(changed(before, set('lovel', '40'))).toBe(after);
  });

  it('replaces the value of another spelling', () => {
    expect(changed('<region> loopstart=5', set('loop_start', '6'))).toBe('<region> loopstart=6');
  });

  it('gives the value back when it is read again, whatever the layout', () => {
    const piece = fc.constantFrom(
      '<region>',
      '<group>',
      ' ',
      '\n',
      '\r\n',
      '  ',
      'key=60',
      ' tune=5',
      'sample=a b.wav',
      '\nlovel=3',
      ' // c\n',
      '/* d */',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 15 }), (pieces) => {
        const text = `${pieces.join('')}\n<region>${pieces.join('')}`;
        const after = read(changed(text, set('lovel', '41')));
        expect(effectiveValues(after, after.regions[0]).lovel).toBe(41);
        expect(after.regions.length).toBe(read(text).regions.length);
      }),
      { numRuns: 500 },
    );
  });
});

describe('removing a parameter', () => {
  it.each([
    ['from the middle of a line', '<region> key=60 lovel=1 tune=5', '<region> key=60 tune=5'],
    ['from the end of a line', '<region> key=60 lovel=1\n<region>', '<region> key=60\n<region>'],
    [
      'from the end of a line with CRLF',
      '<region> key=60 lovel=1\r\n<region>',
      '<region> key=60\r\n<region>',
    ],
    ['from the start of a line', '<region>\nlovel=1 key=60', '<region>\nkey=60'],
    ['right behind a header', '<region>lovel=1 key=60', '<region>key=60'],
    ['with its line', '<region>\n  key=60\n  lovel=1\n  tune=5\n', '<region>\n  key=60\n  tune=5\n'],
    ['with its line and CRLF', '<region>\r\nlovel=1\r\ntune=5\r\n', '<region>\r\ntune=5\r\n'],
    ['before a comment', '<region> key=60 lovel=1 // why', '<region> key=60 // why'],
  ])('%s', (_where, before, after) => {
    expect(
      changed(before, (instrument) => ({ kind: 'remove', parameter: parameterOf(instrument, 'lovel=1') })),
    ).toBe(after);
  });
});

describe('renaming a parameter', () => {
  it('changes its name alone', () => {
    const text = '<region> loopstart=5 key=60';
    expect(
      changed(text, (instrument) => ({
        kind: 'rename',
        parameter: parameterOf(instrument, 'loopstart'),
        name: 'loop_start',
      })),
    ).toBe('<region> loop_start=5 key=60');
  });
});

describe('removing a header', () => {
  it.each([
    ['with its line', '<region> key=60\n<region> key=61\n', '<region> key=61\n'],
    ['with its line and CRLF', '<region> key=60\r\n<region> key=61\r\n', '<region> key=61\r\n'],
    ['with all its lines', '<region>\nkey=60\ntune=5\n<region> key=61', '<region> key=61'],
    [
      'from a line with others',
      '<group> tune=1 <region> key=60 <region> key=61',
      '<group> tune=1 <region> key=61',
    ],
  ])('%s', (_what, before, after) => {
    expect(changed(before, (instrument) => ({ kind: 'removeHeader', header: region(instrument, 0) }))).toBe(
      after,
    );
  });
});

describe('inserting headers', () => {
  const inserted = read('<region> key=70 sample=n.wav');
  const insertedAt = (marked: string) =>
    changed(marked.replace('$0', ''), () => ({
      kind: 'insert',
      offset: marked.indexOf('$0'),
      instrument: inserted,
    }));

  it.each([
    ['in an empty text', '$0', '<region> key=70 sample=n.wav\n'],
    [
      'on an empty line',
      '<region> key=60\n$0\n<region> key=61',
      '<region> key=60\n<region> key=70 sample=n.wav\n<region> key=61',
    ],
    [
      'behind a line',
      '<region> key=60$0\n<region> key=61',
      '<region> key=60\n<region> key=70 sample=n.wav\n<region> key=61',
    ],
    ['before a line', '$0<region> key=61', '<region> key=70 sample=n.wav\n<region> key=61'],
    ['at the end', '<region> key=60\n$0', '<region> key=60\n<region> key=70 sample=n.wav\n'],
    ['with CRLF', '<region> key=60\r\n$0', '<region> key=60\r\n<region> key=70 sample=n.wav\r\n'],
  ])('%s', (_where, marked, after) => {
    expect(insertedAt(marked)).toBe(after);
  });
});
