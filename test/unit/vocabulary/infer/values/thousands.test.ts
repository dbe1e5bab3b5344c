import { describe, expect, it } from 'vitest';
import { fitsMark, thousandsIn, withoutMarks } from '../../../../../server/vocabulary/infer/values/thousands';

/** Marks between groups of three digits: ISO 80000-1, 7.3.1 (thin spaces), and commas, points and raised commas in common practice. */
describe('what stands between thousands', () => {
  it.each<[string | undefined, (string | undefined)[]]>([
    [' ', ['44 100']],
    [' ', ['44\u00a0100']],
    [' ', ['44\u202f100']],
    [' ', ['44\u2009100']],
    ["'", ["44'100"]],
    ["'", ['44\u2019100']],
    [',', ['1,050,000', '44,100']],
    ['.', ['1.050.000']],
    ['.', ['1.050.000', '0', '12']],
    // A single group may be three decimals; small numbers without any say that it is none.
    [',', ['44,100', '512']],
    ['.', ['44.100', '512']],
    ['.', [undefined, ' 44.100 ', '512']],
    [undefined, ['44,100', '51,200']],
    [undefined, ['44,100', '0']],
    [undefined, ['44.100']],
    [undefined, ['512', '12']],
    [undefined, []],
    [undefined, [undefined]],
    [undefined, ['44,100', '44.100', '512']],
    [undefined, ['44 100', '44100']],
    [undefined, ['44 100', '4.5']],
    [undefined, ['0,100', '512']],
    [undefined, ['0.100.000']],
    [undefined, ['1.050,000', '512']],
    [undefined, ['1.05', '512']],
    [undefined, ['1234.567', '512']],
    [undefined, ['x44.100', '512']],
    [undefined, ['44.100x', '512']],
    [undefined, ['44.1000', '512']],
  ])('is %j in %j', (mark, texts) => {
    expect(thousandsIn(texts)).toBe(mark);
  });
});

describe('a mark that others have', () => {
  it('fits small numbers, and those with the same mark', () => {
    expect(fitsMark(['512', undefined, '44.100', ' 7 '], '.')).toBe(true);
    expect(fitsMark(['1.050.000'], '.')).toBe(true);
    expect(fitsMark([], '.')).toBe(true);
  });

  it('fits no other one, nor decimals', () => {
    expect(fitsMark(['512', '44,100'], '.')).toBe(false);
    expect(fitsMark(['44 100'], '.')).toBe(false);
    expect(fitsMark(['44.100'], ' ')).toBe(false);
    expect(fitsMark(['0.100'], '.')).toBe(false);
    expect(fitsMark(['44.1'], '.')).toBe(false);
    expect(fitsMark(['44100'], '.')).toBe(false);
    expect(fitsMark(['x'], '.')).toBe(false);
    expect(fitsMark(['5127'], '.')).toBe(false);
  });

  it('fits any blank or raised comma where it is one', () => {
    expect(fitsMark(['44\u202f100', '44 100'], ' ')).toBe(true);
    expect(fitsMark(['44\u2019100'], "'")).toBe(true);
  });
});

describe('a number without marks', () => {
  it('is its digits', () => {
    for (const text of ['1,050,000', '1.050.000', "1'050'000", '1\u2019050\u2019000', '1 050\u202f000'])
      expect(withoutMarks(text)).toBe('1050000');
  });
});
