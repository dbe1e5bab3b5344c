import { describe, expect, it } from 'vitest';
import { shortestDecimal } from '../../../../server/vocabulary/forms/shortest';

const within = (least: number, most: number) => (number: number) => number >= least && number <= most;

describe('the shortest decimal', () => {
  it('has as few decimals as are accepted, nearest to the number', () => {
    expect(shortestDecimal(0.501_187, within(0.501, 0.502))).toBe('0.501');
    expect(shortestDecimal(0.501_187, within(0.49, 0.51))).toBe('0.5');
    expect(shortestDecimal(0.501_187, within(0.4, 1))).toBe('1');
    expect(shortestDecimal(-12.34, within(-12.36, -12.32))).toBe('-12.34');
    expect(shortestDecimal(7, within(7, 7))).toBe('7');
  });

  it('tries the other side half way between two', () => {
    expect(shortestDecimal(2.5, within(2, 2))).toBe('2');
    expect(shortestDecimal(2.5, within(3, 3))).toBe('3');
    expect(shortestDecimal(-2.5, within(-3, -3))).toBe('-3');
    expect(shortestDecimal(-2.5, within(-2, -2))).toBe('-2');
    expect(shortestDecimal(0.25, within(0.2, 0.2))).toBe('0.2');
    expect(shortestDecimal(0.25, within(0.3, 0.3))).toBe('0.3');
    // Not half way: the further one is no nearest number.
    expect(shortestDecimal(2.4, within(3, 3))).toBeUndefined();
  });

  it('has no minus before a zero', () => {
    expect(shortestDecimal(-0.2, within(-0.3, 0.3))).toBe('0');
    expect(shortestDecimal(-0.02, (number) => number === -0.02)).toBe('-0.02');
  });

  // 2^53 is the last of the whole numbers that a double has all of (IEEE 754).
  it('keeps large numbers with their fraction', () => {
    const large = 123_456_789_012.345_67;
    expect(shortestDecimal(large, (number) => number === large)).toBe('123456789012.34567');
    // Doubles of this size lie an eighth apart, so that one decimal tells which.
    const beyond = 2 ** 49 + 0.125;
    expect(shortestDecimal(beyond, (number) => number === beyond)).toBe('562949953421312.1');
  });

  it('is none where nothing is accepted, or the number is none to write', () => {
    expect(shortestDecimal(1, () => false)).toBeUndefined();
    expect(shortestDecimal(1e15, () => true)).toBeUndefined();
    expect(shortestDecimal(-1e15, () => true)).toBeUndefined();
    expect(shortestDecimal(Number.NaN, () => true)).toBeUndefined();
    expect(shortestDecimal(9e14, () => true)).toBe('900000000000000');
  });

  it('tries as many decimals as tell doubles apart', () => {
    expect(shortestDecimal(1e-18, (number) => number === 1e-18)).toBe('0.000000000000000001');
    expect(shortestDecimal(1e-19, (number) => number === 1e-19)).toBeUndefined();
  });
});
