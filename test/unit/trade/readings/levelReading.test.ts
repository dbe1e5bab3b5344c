import { describe, expect, it } from 'vitest';
import { levelScaleOf, readLevel } from '../../../../server/trade/readings/levelReading';

describe('the scale that a unit stands for', () => {
  it.each([
    ['dB', 'dB'],
    ['centibels', 'centibels'],
    ['percent', 'percent'],
    ['linear', 'factor'],
  ] as const)('%s', (unit, scale) => expect(levelScaleOf(unit)).toBe(scale));

  it('is none for units of other things, or without a unit', () => {
    expect(levelScaleOf('s')).toBeUndefined();
    expect(levelScaleOf(undefined)).toBeUndefined();
  });
});

/** Decibels after IEC 60027-3; the bounds are those of `volume` in the open format (sfzformat.com: -144 to 6 dB). */
describe('a level', () => {
  it.each([
    ['-3', -3],
    ['0', 0],
    ['6', 6],
    ['-144', -144],
    ['-3 dB', -3],
  ])('of %s in a column of dB is as it says', (text, decibels) => {
    expect(readLevel(text, 'dB', false)).toEqual({ decibels, how: undefined });
  });

  it('of a unit of its own does not count as its column', () => {
    expect(readLevel('-3 dB', 'percent', false)).toEqual({ decibels: -3, how: undefined });
    expect(readLevel('50 %', 'dB', false)).toEqual({ decibels: -6.02, how: 'is written as -6.02 dB' });
  });

  it('that says its share in another scale tells what is written, but for the full level', () => {
    expect(readLevel('50', 'percent', false)).toEqual({ decibels: -6.02, how: 'is written as -6.02 dB' });
    expect(readLevel('100', 'percent', false)).toEqual({ decibels: 0, how: undefined });
  });

  it('past the bounds is brought to them, and that is told', () => {
    const beyond = 'is beyond the levels that can be written, −144 to 6 dB; it is written as';
    expect(readLevel('7', 'dB', false)).toEqual({ decibels: 6, how: `${beyond} 6 dB` });
    expect(readLevel('-150', 'dB', false)).toEqual({ decibels: -144, how: `${beyond} -144 dB` });
  });

  it('that would be painfully loud is a slip and no level', () => {
    expect(readLevel('60', 'dB', false)).toEqual({
      fault: 'is 60 dB and would be painfully loud, so it is no level that was meant',
    });
  });

  it('of silence is the least that can be written', () => {
    expect(readLevel('0', 'factor', false)).toEqual({ decibels: -144, how: 'is written as -144 dB' });
    expect(readLevel('-inf', 'dB', false)).toEqual({ decibels: -144, how: 'is written as -144 dB' });
  });

  it('that is an attenuation counts down', () => {
    expect(readLevel('6', 'dB', true)).toEqual({ decibels: -6, how: undefined });
    expect(readLevel('60', 'centibels', true)).toEqual({ decibels: -6, how: 'is written as -6 dB' });
  });

  it.each(['loud', '', '3 s', '3 ct'])('is none in "%s"', (text) => {
    expect(readLevel(text, 'dB', false)).toEqual({ fault: 'is not a level in dB' });
  });

  it('below no amplitude is none', () => {
    expect(readLevel('-5', 'percent', false)).toEqual({ fault: 'is not a level in dB' });
  });
});
