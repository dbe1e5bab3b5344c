import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import { readValue, writeValue } from '../../../server/vocabulary/forms/valueForms';
import type { ValueSurroundings } from '../../../server/vocabulary/forms/valueSurroundings';
import { parseVocabulary } from '../../../server/vocabulary/parseVocabulary';
import { readVocabularyXml } from '../../../server/vocabulary/read/readVocabularyXml';
import type { ValueForm } from '../../../server/vocabulary/vocabulary';
import { writeVocabulary } from '../../../server/vocabulary/writeVocabulary';

const around = (parameter: string): ValueSurroundings => ({
  parameter,
  sampleRate: undefined,
  frames: undefined,
  frameOf: () => 0,
});

// SoundFont 2.04, 8.1.3, generator 48: an attenuation in centibels, 60 of which are 6 dB.
describe('a level in centibels', () => {
  const form: ValueForm = { kind: 'level', unit: 'centibels', attenuation: true };

  it.each([
    ['60', -6],
    ['0', 0],
    ['144', -14.4],
    ['60 cB', -6],
    ['6 dB', -6],
  ])('%s is %d dB', (text, decibels) => {
    expect(readValue(form, text, around('volume'))?.number).toBe(decibels);
  });

  it('is written with the fewest digits', () => {
    expect(writeValue(form, '-6.25', around('volume'))).toEqual({ text: '62.5' });
  });

  it('reads back what it wrote', () => {
    fc.assert(
      fc.property(fc.integer({ min: -14_400, max: 600 }), (hundredths) => {
        const value = hundredths / 100;
        const { text = '' } = writeValue(form, String(value), around('volume')) ?? {};
        expect(readValue(form, text, around('volume'))?.number).toBeCloseTo(value, 9);
      }),
    );
  });
});

// Common practice in zone tables: a letter for the side instead of a sign.
describe('a pan position with letters for the sides', () => {
  const form: ValueForm = {
    kind: 'pan',
    left: -100,
    centre: 0,
    right: 100,
    sides: { left: 'L', centre: 'C', right: 'R' },
  };
  const half: ValueForm = { ...form, left: -50, right: 50, sidesStand: 'before' };

  it.each([
    [form, '50R', 50],
    [form, '20 L', -20],
    [form, 'l20', -20],
    [form, 'C', 0],
    [form, 'R', 100],
    [form, '-30', -30],
    [half, 'L25', -50],
    [form, '20X', undefined],
    [form, '200L', undefined],
  ])('%# reads %s', (one, text, pan) => {
    expect(readValue(one, text, around('pan'))?.number).toBe(pan);
  });

  it.each([
    [form, '50', '50R'],
    [form, '-12.5', '12.5L'],
    [form, '0', 'C'],
    [half, '-50', 'L25'],
  ])('%# writes %s', (one, value, text) => {
    expect(writeValue(one, value, around('pan'))).toEqual({ text });
  });

  it('is kept in a file', () => {
    const vocabulary = {
      name: 'loom',
      levels: [
        {
          element: 'thread',
          is: 'region' as const,
          parameters: [{ parameter: 'pan', at: '@side', form: half }],
        },
      ],
    };
    expect(parseVocabulary(writeVocabulary(vocabulary))).toEqual({ vocabulary, problems: [] });
    const wrong = writeVocabulary(vocabulary).replace('"L"', '"c"');
    expect(parseVocabulary(wrong).problems).toHaveLength(1);
  });
});

describe('a key in hexadecimal', () => {
  const form: ValueForm = { kind: 'key', written: 'hexadecimal' };

  it('is read and written', () => {
    expect(readValue(form, '0x3C', around('lokey'))?.number).toBe(60);
    expect(readValue(form, '0x2d', around('lokey'))?.number).toBe(45);
    expect(readValue(form, '0x80', around('lokey'))).toBeUndefined();
    expect(writeValue(form, '45', around('lokey'))).toEqual({ text: '0x2D' });
    expect(writeValue(form, '9', around('lokey'))).toEqual({ text: '0x09' });
    expect(writeValue(form, '-1', around('lokey'))).toEqual({ text: '-1' });
  });
});

// Common practice: German writes B for the note below H; French, Spanish and Italian name notes by the syllables of solmisation.
describe('a key in the names of other languages', () => {
  const german: ValueForm = { kind: 'key', written: 'name', middleC: 'C4', naming: 'german' };
  const syllables: ValueForm = { kind: 'key', written: 'name', middleC: 'C3', naming: 'syllables' };

  it.each([
    [german, 'H3', 59],
    [german, 'B3', 58],
    [german, 'Cis4', 61],
    [german, 'C4', 60],
    [syllables, 'do3', 60],
    [syllables, 'Sol#2', 56],
    [syllables, '60', 60],
    [syllables, 'do', undefined],
  ])('%# reads %s', (form, text, key) => {
    expect(readValue(form, text, around('lokey'))?.number).toBe(key);
  });

  it('reads back each key that it wrote', () => {
    for (const form of [german, syllables]) {
      for (let key = 0; key <= 127; key++) {
        const { text = '' } = writeValue(form, String(key), around('lokey')) ?? {};
        expect([text, readValue(form, text, around('lokey'))?.number]).toEqual([text, key]);
      }
    }
    expect(writeValue(german, '59', around('lokey'))).toEqual({ text: 'H3' });
  });
});

// ISO 80000-1, 7.3.1: digits in groups of three; common practice parts them with a point or comma too.
describe('a place in the sample with marks between thousands', () => {
  it.each([
    ['.', '1.050.000', 1_050_000],
    [',', '44,100', 44_100],
    [' ', '44\u202f100', 44_100],
    ["'", "1'234", 1234],
    ['.', '900', 900],
  ] as const)('with %s reads %s', (thousands, text, frame) => {
    const form: ValueForm = { kind: 'position', unit: 'frames', thousands };
    expect(readValue(form, text, around('loop_start'))?.number).toBe(frame);
    expect(writeValue(form, String(frame), around('loop_start'))).toEqual({ text: String(frame) });
  });
});

describe('a number that sets nothing', () => {
  const form: ValueForm = { kind: 'number', none: 0 };

  it('is read as no value and never written as one', () => {
    expect(readValue(form, '0', around('off_by'))?.text).toBe('');
    expect(readValue(form, '2', around('off_by'))?.text).toBe('2');
    expect(writeValue(form, '0', around('off_by'))).toBeUndefined();
    expect(writeValue(form, '2', around('off_by'))).toEqual({ text: '2' });
  });

  it('gives a region nothing, whichever of its parameters stands there', () => {
    const read = readVocabularyXml({
      name: 'gate',
      levels: [
        { element: 'gates', is: 'instrument', parameters: [] },
        {
          element: 'post',
          is: 'region',
          parameters: [
            { parameter: 'sample', at: '@file', form: { kind: 'path' } },
            { parameter: 'off_by', at: '@hush', form },
          ],
        },
      ],
    });
    const instrument = read('<gates><post file="a.wav" hush="0"/><post file="b.wav" hush="3"/></gates>', {
      path: 'gate.xml',
    });
    expect(instrument.findings).toEqual([]);
    expect([...instrument.regions].map((region) => effectiveValues(instrument, region))).toEqual([
      { sample: 'a.wav' },
      { sample: 'b.wav', off_by: 3 },
    ]);
  });
});

// Common practice: a level of minus infinity is silence; -144 is the least that the open SFZ format documents.
describe('no level at all', () => {
  it.each(['-inf', '-Infinity dB', '\u2212\u221e', '-inf dB'])('%s', (text) => {
    expect(readValue({ kind: 'level', unit: 'dB' }, text, around('volume'))?.number).toBe(-144);
  });
});

describe('words among ranges', () => {
  it('are told of only where neither makes sense of them', () => {
    const read = readVocabularyXml({
      name: 'wheel',
      levels: [
        { element: 'wheel', is: 'instrument', parameters: [] },
        {
          element: 'spoke',
          is: 'region',
          parameters: [
            { parameter: 'loop_start', at: '@loop', part: 1, form: { kind: 'position', unit: 'frames' } },
            { parameter: 'loop_end', at: '@loop', part: 2, form: { kind: 'position', unit: 'frames' } },
            { parameter: 'loop_mode', at: '@loop', form: { kind: 'words', words: { none: 'no_loop' } } },
          ],
        },
      ],
    });
    const text = '<wheel><spoke loop="10-20"/><spoke loop="none"/><spoke loop="wobbly"/></wheel>';
    const instrument = read(text, { path: 'wheel.xml' });
    expect([...instrument.regions].map((region) => effectiveValues(instrument, region))).toEqual([
      { loop_start: 10, loop_end: 20 },
      { loop_mode: 'no_loop' },
      {},
    ]);
    expect(new Set(instrument.findings.map(({ start, end }) => text.slice(start, end)))).toEqual(
      new Set(['wobbly']),
    );
  });
});

// MIDI 1.0 counts velocities to 127; whole percentages are coarser, and layers 0..49 and 50..100 leave none between them.
describe('velocities in steps coarser than their own', () => {
  const form: ValueForm = { kind: 'velocity', most: 100, step: 1 };
  const value = (text: string, parameter: string) => readValue(form, text, around(parameter))?.number;

  it('leave nothing between layers', () => {
    for (let end = 0; end < 100; end++) {
      expect(Number(value(String(end), 'hivel')) + 1).toBe(value(String(end + 1), 'lovel'));
    }
    expect([value('0', 'lovel'), value('100', 'hivel')]).toEqual([0, 127]);
  });

  it('read back what was written', () => {
    for (const parameter of ['lovel', 'hivel']) {
      for (let velocity = 0; velocity <= 127; velocity++) {
        const written = writeValue(form, String(velocity), around(parameter));
        if (written && written.approximated === undefined)
          expect([velocity, value(written.text, parameter)]).toEqual([velocity, velocity]);
        else expect(parameter === 'hivel' && velocity === 0).toBe(true);
      }
    }
  });
});
