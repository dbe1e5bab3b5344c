import { describe, expect, it } from 'vitest';
import { areTurns, rangesOf, readRangeText } from '../../../../../server/vocabulary/infer/ranges/rangeText';

/** How ranges are written in names and values (common practice). */
describe('a range in a text', () => {
  it.each([
    ['36-48', '36', '-', '48'],
    ['36 - 48', '36', ' - ', '48'],
    ['36..48', '36', '..', '48'],
    ['36 ... 48', '36', ' ... ', '48'],
    ['36…48', '36', '…', '48'],
    ['36–48', '36', '–', '48'],
    ['36 to 48', '36', ' to ', '48'],
    ['36 bis 48', '36', ' bis ', '48'],
    ['2 of 4', '2', ' of ', '4'],
    ['36->48', '36', '->', '48'],
    ['36→48', '36', '→', '48'],
    ['36=>48', '36', '=>', '48'],
    ['36:48', '36', ':', '48'],
    ['36,48', '36', ',', '48'],
    ['36;48', '36', ';', '48'],
    ['36/48', '36', '/', '48'],
    ['36|48', '36', '|', '48'],
    ['36~48', '36', '~', '48'],
    ['36_48', '36', '_', '48'],
    ['36 48', '36', ' ', '48'],
    ['C2 .. B2', 'C2', ' .. ', 'B2'],
    ['C-1-C3', 'C-1', '-', 'C3'],
    ['c#2-d♭3', 'c#2', '-', 'd♭3'],
    ['do2-sol3', 'do2', '-', 'sol3'],
    ['Ré2-La3', 'Ré2', '-', 'La3'],
    ['-12-12', '-12', '-', '12'],
    ['+1..+2.5', '+1', '..', '+2.5'],
    ['10 ms-20 ms', '10 ms', '-', '20 ms'],
    ['10%-20%', '10%', '-', '20%'],
    ['0,127', '0', ',', '127'],
    [' 36-48 ', '36', '-', '48'],
  ])('"%s"', (text, first, between, second) => {
    expect(readRangeText(text)).toEqual({ first, between, second });
  });

  it.each([
    '',
    '36',
    '36-',
    '-48',
    '36-48-60',
    'x36-48',
    '36-48x',
    'H2-H3',
    '36 x 48',
    '10 msx-20',
    'C2-',
    // One number with a comma and a unit.
    '-4,5 dB',
    '4,5 ms',
    '0,5 s',
    '12,5%',
    '−4,5 ct',
  ])('is none in "%s"', (text) => {
    expect(readRangeText(text)).toBeUndefined();
  });

  it('is not looked for in a long text', () => {
    expect(readRangeText(`36-48${' '.repeat(55)}`)).toBeDefined();
    expect(readRangeText(`36-48${' '.repeat(56)}`)).toBeUndefined();
  });
});

describe('the ranges of a place', () => {
  it('are taken apart where most of its texts are ranges', () => {
    expect(rangesOf(['36-48', undefined, '60'])).toEqual({
      first: ['36', undefined, '60'],
      second: ['48', undefined, '60'],
      between: '-',
    });
    expect(rangesOf(['36-48', '60', '61'])).toBeUndefined();
    expect(rangesOf(['60', '61'])).toBeUndefined();
    expect(rangesOf([])).toBeUndefined();
    expect(rangesOf([undefined])).toBeUndefined();
  });

  it('are parted by what most of them are parted by', () => {
    expect(rangesOf(['1-2', '3..4', '5..6'])?.between).toBe('..');
    expect(rangesOf(['1..2', '3..4', '5-6'])?.between).toBe('..');
  });
});

describe('turns', () => {
  it.each([
    [['1/2', '2/2']],
    [['2 of 2', '1 of 2']],
    [['1/2', undefined, ' 2/2 ']],
    [['1/2', '2/2', '1/3', '2/3', '3/3']],
    [['1/1', '1/2', '2/2']],
  ])('are positions that all occur: %j', (texts) => {
    expect(areTurns(texts)).toBe(true);
  });

  it.each([
    [['1/2']],
    [['2/2', '2/2']],
    [['1/1']],
    [[]],
    [[undefined]],
    [['0/2', '1/2', '2/2']],
    [['1/2', '2/2', '3/2']],
    [['1/2', '2/2', 'x']],
    [['1/2', '2/2', '1/3']],
    [['1-2', '2-2']],
    [['x1/2', '2/2']],
    [['1/2x', '2/2']],
    [['1/2', '2/123']],
  ])('are none in %j', (texts) => {
    expect(areTurns(texts)).toBe(false);
  });

  it('are as many as somebody records', () => {
    const turns = (most: number) => Array.from({ length: most }, (_, at) => `${at + 1}/${most}`);
    expect(areTurns(turns(64))).toBe(true);
    expect(areTurns(turns(65))).toBe(false);
  });
});
