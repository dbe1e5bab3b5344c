import { describe, expect, it } from 'vitest';
import { readNumber, readSequence } from '../../../../server/trade/readings/numberReading';

/** How people write numbers in tables (common practice). */
describe('a number', () => {
  it.each<[string, number, string | undefined]>([
    ['5', 5, undefined],
    ['-3.5', -3.5, undefined],
    [' 5 ', 5, undefined],
    ['+5', 5, undefined],
    ['- 5', -5, undefined],
    ['−3,5', -3.5, undefined],
    ['–3', -3, undefined],
    ['3,5', 3.5, undefined],
    ['.5', 0.5, undefined],
    [',5', 0.5, undefined],
    ['-.5', -0.5, undefined],
    ['5.', 5, undefined],
    ['-3.5 dB', -3.5, 'dB'],
    ['-3.5dB', -3.5, 'dB'],
    ['12 ct', 12, 'cents'],
    ['50%', 50, 'percent'],
    ['%50', 50, 'percent'],
    ['-% 12,5', -12.5, 'percent'],
    ['1.5 s', 1.5, 's'],
    ['inf', Number.POSITIVE_INFINITY, undefined],
    ['-inf', Number.NEGATIVE_INFINITY, undefined],
    ['-∞ dB', Number.NEGATIVE_INFINITY, 'dB'],
    ['Infinity', Number.POSITIVE_INFINITY, undefined],
    // Marks between groups of three, and a decimal mark of the other kind behind them (ISO 80000-1, 7.3, allows both marks).
    ['1,234.5', 1234.5, undefined],
    ['1.234,5', 1234.5, undefined],
    ["1'234.5", 1234.5, undefined],
    ['1’234', 1234, undefined],
    ['1 234 567', 1_234_567, undefined],
    ['1.234.567', 1_234_567, undefined],
    ['1 234', 1234, undefined],
    // One mark alone is that of decimals.
    ['1,234', 1.234, undefined],
    ['1.234', 1.234, undefined],
    ['1/2', 0.5, undefined],
    ['1⁄4', 0.25, undefined],
    ['-1 1/2', -1.5, undefined],
    ['1-1/2', 1.5, undefined],
    ['3 / 4 s', 0.75, 's'],
    ['0x3C', 60, undefined],
    ['$3c', 60, undefined],
    ['0XfF', 255, undefined],
    ['00:01.250', 1.25, 's'],
    ['1:02,5', 62.5, 's'],
    ['1:00:01.5', 3601.5, 's'],
    ['01:02:03.5', 3723.5, 's'],
    ['+1 st 20 ct', 120, 'cents'],
    ['1st20ct', 120, 'cents'],
    ['-1 st - 20 ct', -120, 'cents'],
    ['1 st -20 ct', 80, 'cents'],
    ['-1 st +20 ct', -80, 'cents'],
    ['−1 st −20 ct', -120, 'cents'],
    ['1 s 250 ms', 1.25, 's'],
    ['1,5 st 2,5 ct', 152.5, 'cents'],
  ])('of "%s"', (text, number, unit) => {
    expect(readNumber(text)).toEqual({ number, unit });
  });

  it.each([
    '',
    ' ',
    'x',
    '5 apples',
    'x5',
    '5x5',
    '--5',
    '1,23,4',
    '1.2.3',
    '0.234.567',
    '1234 567',
    '1 23',
    '1/0',
    '1/2 apples',
    '1/',
    '/2',

    '0xg',
    'x0x3C',
    '0x3Cg',
    '0x123456789',
    '1:20',
    '1:2:3:4.5',
    'a1:20.5',
    '1:20.5x',
    '-1 st 20 ct',
    '1 ct 20 st',
    '1 st 20 s',
    '1 ms 20 s',
    '1 st 20 ct x',
    'x 1 st 20 ct',
  ])('is none in "%s"', (text) => {
    expect(readNumber(text)).toBeUndefined();
  });

  it('is not looked for in a long text', () => {
    expect(readNumber(`5${' '.repeat(63)}`)?.number).toBe(5);
    expect(readNumber(`5${' '.repeat(64)}`)).toBeUndefined();
  });
});

describe('a count of frames', () => {
  it.each<[string, number, string | undefined]>([
    ['44,100', 44_100, undefined],
    ['44.100', 44_100, undefined],
    ['1.234.567', 1_234_567, undefined],
    ['44,1', 44.1, undefined],
    ['0.250', 0.25, undefined],
    ['1:20', 80, 's'],
    ['1.250 s', 1.25, 's'],
    ['1.250 ms', 1.25, 'ms'],
    ['44,100 samples', 44_100, 'frames'],
  ])('of "%s"', (text, number, unit) => {
    expect(readNumber(text, 'frames')).toEqual({ number, unit });
  });

  it('lets marks be those of decimals in a time, where nothing lasts that long', () => {
    expect(readNumber('1,250', 'time')).toEqual({ number: 1.25, unit: undefined });
    expect(readNumber('1.250', 'time')).toEqual({ number: 1.25, unit: undefined });
    expect(readNumber('1:20', 'time')).toEqual({ number: 80, unit: 's' });
  });
});

describe('a place in turn', () => {
  it.each([
    ['2', 2, undefined],
    ['2/4', 2, 4],
    ['2 of 4', 2, 4],
    ['2 von 4', 2, 4],
    ['rr2', 2, undefined],
    ['RR 2', 2, undefined],
    ['rr_2', 2, undefined],
    ['rr-2', 2, undefined],
    ['take #2', undefined, undefined],
    ['#2', 2, undefined],
    ['2.0', 2, undefined],
    ['2.00/4', 2, 4],
    [' 2 ', 2, undefined],
    ['123/456', 123, 456],
  ])('of "%s"', (text, position, length) => {
    expect(readSequence(text)).toEqual(position === undefined ? undefined : { position, length });
  });

  it.each(['', 'x', '1234', '2/', '/4', '2.5', '2 4', '2/4x', '1 rr2', '2/1234'])(
    'is none in "%s"',
    (text) => {
      expect(readSequence(text)).toBeUndefined();
    },
  );
});
