import { describe, expect, it } from 'vitest';
import { readNumberText, toBillionths, toMillionths } from '../../../../server/vocabulary/forms/numberText';

/** How programs and people write numbers in XML (common practice). */
describe('a number in a text', () => {
  it.each<[string, number, string]>([
    ['5', 5, ''],
    [' 5 ', 5, ''],
    ['+5', 5, ''],
    ['-5', -5, ''],
    ['\u22125', -5, ''],
    ['12.75', 12.75, ''],
    ['12,75', 12.75, ''],
    ['12.', 12, ''],
    ['.5', 0.5, ''],
    ['-,25', -0.25, ''],
    ['1e3', 1000, ''],
    ['1.5E+2', 150, ''],
    ['15e-1', 1.5, ''],
    ['-6 dB', -6, 'dB'],
    ['-6dB ', -6, 'dB'],
    ['50%', 50, '%'],
    ['20 \u00b5 s', 20, '\u00b5 s'],
    ['0x3C', 60, ''],
    ['0x', 0, 'x'],
    ['0xg', 0, 'xg'],
    [' 0X7f ', 127, ''],
  ])('"%s"', (text, number, unit) => {
    expect(readNumberText(text)).toEqual({ number, unit });
  });

  it.each(['', 'x', 'x5', '--5', '- 5', '5 x 5', '5-6', '1.2.3', '.', '-', '0x123456789', '1e400', 'e5'])(
    'is none in "%s"',
    (text) => expect(readNumberText(text)).toBeUndefined(),
  );

  it('is not looked for in a long text', () => {
    expect(readNumberText(`5${' '.repeat(99)}`)?.number).toBe(5);
    expect(readNumberText(`5${' '.repeat(100)}`)).toBeUndefined();
  });
});

describe('a rounded number', () => {
  it('has six decimals', () => {
    expect(toMillionths(1.234_567_89)).toBe(1.234_568);
    expect(toMillionths(-6.020_599_913)).toBe(-6.0206);
  });

  it('has nine decimals as long as a double has them', () => {
    expect(toBillionths(0.1 + 0.2)).toBe(0.3);
    expect(toBillionths(-(0.1 + 0.2))).toBe(-0.3);
    // Beyond it a double has no ninth decimal to spare, and stays as it is.
    for (const size of [1e6, 2e6]) {
      expect(toBillionths(size + 2 ** -31)).toBe(size + 2 ** -31);
      expect(toBillionths(-size - 2 ** -31)).toBe(-size - 2 ** -31);
    }
  });
});
