import { describe, expect, it } from 'vitest';
import {
  areMultiplesOf,
  different,
  holdsNumber,
  numbersOf,
  withoutOutlier,
} from '../../../../server/trade/scales/numbers';

const none = Number.NaN;

describe('numbers taken together', () => {
  it('count those that are there, whole, and below 0', () => {
    expect(numbersOf([1, none, -2, 0.5, 0, -0.25])).toMatchObject({
      numeric: 5,
      whole: 3,
      negative: 2,
      least: -2,
      greatest: 1,
      decimals: 2,
    });
  });

  it('have infinite ends where there are none', () => {
    expect(numbersOf([none])).toMatchObject({
      numeric: 0,
      whole: 0,
      negative: 0,
      least: Number.POSITIVE_INFINITY,
      greatest: Number.NEGATIVE_INFINITY,
      decimals: 0,
    });
  });

  // Silence is minus infinity decibels: it says nothing of how far a column reaches.
  it('leave what is infinite out of their ends, and take it for whole', () => {
    expect(numbersOf([Number.NEGATIVE_INFINITY, -6, -3, Number.POSITIVE_INFINITY])).toMatchObject({
      numeric: 4,
      whole: 4,
      negative: 3,
      least: -6,
      greatest: -3,
      decimals: 0,
    });
  });

  it('know the most digits behind a point, whatever order they come in', () => {
    expect(numbersOf([0.125, 2.5]).decimals).toBe(3);
    expect(numbersOf([2.5, 10.125]).decimals).toBe(3);
    // ECMAScript writes it as 1e-7, without a point.
    expect(numbersOf([1e-7]).decimals).toBe(0);
  });
});

/** Our choice: twenty times as great as the next one is a slip, once four others agree. */
describe('numbers without a slip', () => {
  const valuesOf = (numbers: number[]): number[] => Array.from(withoutOutlier(numbersOf(numbers)).numbers);

  it.each([
    ['twenty times', [1, 2, 3, 4, 80], [1, 2, 3, 4]],
    ['below 0', [-1, -2, -3, -4, -800], [-1, -2, -3, -4]],
    ['in front', [800, 1, 2, 3, 4], [1, 2, 3, 4]],
    ['between others', [4, 800, 1, 2, 3], [4, 1, 2, 3]],
    ['with zeros that stay', [0, 1, 2, 3, 4, 800], [0, 1, 2, 3, 4]],
    ['among four, itself counted', [1, 2, 3, 400], [1, 2, 3]],
  ])('lose the greatest: %s', (_, numbers, kept) => {
    expect(valuesOf(numbers)).toEqual(kept);
  });

  it.each([
    ['less than twenty times as great', [1, 2, 3, 4, 79]],
    ['too few others', [1, 2, 400]],
    ['no others but zeros', [0, 0, 0, 0, 400]],
    ['zeros do not count as others', [0, 0, 1, 2, 400]],
    ['what is infinite is none', [1, 2, 3, 4, Number.POSITIVE_INFINITY]],
    ['two that are as great', [1, 2, 3, 400, 400]],
  ])('are all of them: %s', (_, numbers) => {
    expect(valuesOf(numbers)).toEqual(numbers);
  });

  it('pass over what is no number', () => {
    expect(valuesOf([none, 1, 2, 3, 4, 800])).toEqual([none, 1, 2, 3, 4]);
  });
});

describe('questions to numbers', () => {
  it('are multiples where all are, empty cells aside', () => {
    expect(areMultiplesOf(numbersOf([0, none, -10, 25]), 5)).toBe(true);
    expect(areMultiplesOf(numbersOf([5, 10, 11]), 5)).toBe(false);
    expect(areMultiplesOf(numbersOf([11, 10, 5]), 5)).toBe(false);
    expect(areMultiplesOf(numbersOf([]), 5)).toBe(true);
  });

  it('hold what is among them, at either end', () => {
    const numbers = numbersOf([1, none, 3]);
    expect(holdsNumber(numbers, 1)).toBe(true);
    expect(holdsNumber(numbers, 3)).toBe(true);
    expect(holdsNumber(numbers, 2)).toBe(false);
  });

  it('are counted once each, up to as many as matter', () => {
    expect(different(numbersOf([1, 1, none, 2]), 9)).toBe(2);
    expect(different(numbersOf([1, 2, 3, 4]), 3)).toBe(3);
    expect(different(numbersOf([]), 3)).toBe(0);
  });
});
