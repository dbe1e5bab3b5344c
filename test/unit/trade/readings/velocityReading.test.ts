import { describe, expect, it } from 'vitest';
import { arePortions, readVelocities } from '../../../../server/trade/readings/velocityReading';

/** How people write velocities in tables (common practice). */
describe('velocities of a cell', () => {
  it.each<[string, number | undefined, number | undefined, string | undefined]>([
    ['64', 64, 64, undefined],
    [' 0 ', 0, 0, undefined],
    ['0.5', 0.5, 0.5, undefined],
    ['50 %', 50, 50, 'percent'],
    ['1-63', 1, 63, undefined],
    ['1 - 63', 1, 63, undefined],
    ['0-0', 0, 0, undefined],
    ['1–63', 1, 63, undefined],
    ['1..63', 1, 63, undefined],
    ['1...63', 1, 63, undefined],
    ['1…63', 1, 63, undefined],
    ['1 -> 63', 1, 63, undefined],
    ['1→63', 1, 63, undefined],
    ['1~63', 1, 63, undefined],
    ['1:63', 1, 63, undefined],
    ['1 to 63', 1, 63, undefined],
    ['1 bis 63', 1, 63, undefined],
    ['1 TO 63', 1, 63, undefined],
    ['0-49.5 %', 0, 49.5, 'percent'],
    ['0 % - 49.5', 0, 49.5, 'percent'],
    ['0%-50%', 0, 50, 'percent'],
    ['from 1 to 63', 1, 63, undefined],
    ['von 1 bis 63', 1, 63, undefined],
    ['<64', undefined, 63, undefined],
    ['<=64', undefined, 64, undefined],
    ['≤ 64', undefined, 64, undefined],
    ['>64', 65, undefined, undefined],
    ['>=64', 64, undefined, undefined],
    ['64+', 64, undefined, undefined],
    ['up to 63', undefined, 63, undefined],
    ['ab 64', 64, undefined, undefined],
    ['>0', 1, undefined, undefined],
    ['>=0', 0, undefined, undefined],
    // A step to the next velocity is one of whole numbers only.
    ['<0.5', undefined, 0.5, undefined],
    ['>50 %', 50, undefined, 'percent'],
  ])('%s', (text, low, high, unit) => {
    expect(readVelocities(text)).toEqual({ low, high, unit });
  });

  it.each([
    '',
    ' ',
    '-5',
    'soft',
    '1-',
    '-1-63',
    '1 - loud',
    'x1-63',
    '<loud',
    '< -5',
    'up to loud',
    'up to 1-63',
  ])('are not read from "%s"', (text) => expect(readVelocities(text)).toBeUndefined());

  it('are not looked for in a long text', () => {
    expect(readVelocities(`1${' '.repeat(36)}-63`)).toEqual({ low: 1, high: 63, unit: undefined });
    expect(readVelocities(`1${' '.repeat(37)}-63`)).toBeUndefined();
    expect(readVelocities(`${' '.repeat(50)}64`)).toEqual({ low: 64, high: 64, unit: undefined });
  });
});

/** A portion of the loudest is at most 1, or 100 percent; MIDI 1.0 counts to 127 in whole numbers. */
describe('portions of the loudest', () => {
  it.each(['50%', '0-100 %', '0.5', '0-0.5', '0.25-1', '<0.5', '<50 %'])('are given by %s', (text) => {
    expect(arePortions(text)).toBe(true);
  });

  it.each(['64', '0-1', '1', '0.5-64', '1.5', '50-101 %', '101-50 %', '0.5 dB', 'soft', ''])(
    'are not given by "%s"',
    (text) => expect(arePortions(text)).toBe(false),
  );
});
