import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseVocabulary, writeVocabulary } from '../../../server/vocabulary/parseVocabulary';
import type { ValueSurroundings } from '../../../server/vocabulary/valueForms';
import { readValue, writeValue } from '../../../server/vocabulary/valueForms';
import type { ValueForm } from '../../../server/vocabulary/vocabulary';

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
