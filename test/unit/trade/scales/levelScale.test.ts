import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LevelScale } from '../../../../server/trade/scales/levelScale';
import {
  decibelsOf,
  fullLevels,
  guessedLevels,
  levelScale,
} from '../../../../server/trade/scales/levelScale';
import { numbersOf } from '../../../../server/trade/scales/numbers';

const judged = (numbers: number[], isAttenuation = false) => levelScale(numbersOf(numbers), isAttenuation);

/** What practitioners take such columns for (common practice); where both may be, our choice: nothing is raised on a guess. */
describe('levels', () => {
  it.each<[LevelScale, number[], boolean]>([
    ['percent', [100, 75, 60], true],
    ['percent', [85, 40, 70], true],
    ['percent', [5, 3, 12], true],
    ['percent', [24, 1], true],
    ['percent', [2, 3], true],
    ['percent', [300, 99], true],
    ['sevenBits', [127, 90, 64], true],
    ['sevenBits', [118, 97, 101], true],
    ['sevenBits', [83, 97, 61], true],
    ['sevenBits', [25, 1], true],
    ['eightBits', [255, 128, 190], true],
    ['percent', [254, 128, 190], true],
    ['factor', [1, 0.7, 0.35], true],
    ['factor', [0, 1], true],
    ['factor', [1, 1], true],
    ['factor', [1.5, 0.7], true],
    ['factor', [4, 0.5], true],
    ['percent', [4.5, 0.5], true],
    ['dB', [1.5, 0], true],
    ['dB', [0, 24], true],
    ['dB', [0, -3, -12.5], false],
    ['dB', [-3, 2, 1.5], false],
    ['dB', [-3, 24], false],
    ['dB', [-3, 25], true],
    ['dB', [0, 0, 0], false],
    ['dB', [], false],
    ['dB', [Number.NEGATIVE_INFINITY], false],
    ['dB', [-144, 0], false],
    ['centibels', [-200, -30, 0], true],
  ])('are %s in %j', (scale, numbers, isOpen) => {
    expect(judged(numbers)).toMatchObject({ scale, isOpen });
  });

  it.each<[LevelScale, number[], boolean]>([
    ['dB', [0, 3, 6], false],
    ['dB', [0, 1], false],
    ['dB', [0, 144], false],
    ['dB', [0, 0.5], true],
    ['dB', [0, 0], false],
    ['dB', [0, 1.5], false],
    ['centibels', [0, 145], true],
    ['dB', [-6, 0], false],
  ])('named attenuations are %s in %j', (scale, numbers, isOpen) => {
    expect(judged(numbers, true)).toMatchObject({ scale, isOpen });
  });

  it('could be anything else that has such numbers', () => {
    expect(judged([100, 60]).others).toEqual(['dB', 'factor', 'sevenBits']);
    expect(judged([127, 60]).others).toEqual(['dB', 'factor', 'percent']);
    expect(judged([128, 60]).others).toEqual(['dB', 'factor', 'sevenBits', 'eightBits']);
    expect(judged([3, 6], true).others).toEqual(['factor', 'percent', 'sevenBits', 'centibels']);
  });

  it('are surer where the full level of a scale occurs, and where it is told apart', () => {
    const sure = (numbers: number[]) => judged(numbers).confidence;
    expect(sure([100, 60])).toBeGreaterThan(sure([95, 60]));
    expect(sure([127, 61])).toBeGreaterThan(sure([118, 61]));
    expect(sure([118, 61])).toBeGreaterThan(sure([97, 61]));
    // Three round numbers with 100 among them may be percentages above the full level.
    expect(sure([118, 61])).toBeGreaterThan(sure([110, 100, 60]));
    expect(sure([110, 100])).toBe(sure([118, 61]));
    expect(sure([110, 105, 60])).toBe(sure([118, 61]));
    expect(sure([111, 100, 60])).toBe(sure([118, 61]));
    expect(sure([0.5, 1])).toBeGreaterThan(sure([0, 1]));
  });

  it.each<[RegExp, number[], boolean]>([
    [/no numbers/, [], false],
    [/from -200 to 0. No level in dB lies so low/, [-200, 0], false],
    [/from -3 to 25/, [-3, 25], false],
    [/below 0 occur, which only dB have/, [-3, 2], false],
    [/Only 0 occurs, which would be silence/, [0], false],
    [/from 0 to 1\./, [0.5, 1], false],
    [/^Only 1 occurs/, [1, 1], false],
    [/^Only 0 and 1 occur/, [0, 1], false],
    [/around 1, from 0.5 to 1.5/, [0.5, 1.5], false],
    [/from 2 to 12/, [2, 12], false],
    [/Only 12 occurs/, [12], false],
    [/100 is the full level/, [100, 60], false],
    [/127 is the greatest number of seven bits/, [127, 60], false],
    [/255 is the greatest number of eight bits/, [255, 60], false],
    [/from 60 to 300/, [300, 60], false],
    [/from 0 to 145. No level in dB lies so low/, [0, 145], true],
    [/from 0 to 0.5/, [0, 0.5], true],
    [/named an attenuation/, [0, 6], true],
  ])('say why: %s', (reason, numbers, isAttenuation) => {
    expect(judged(numbers, isAttenuation).reason).toMatch(reason);
  });

  it('are the same whatever stands in one row, as long as the ends are kept', () => {
    const inner = fc.integer({ min: 26, max: 99 });
    fc.assert(
      fc.property(fc.array(inner, { maxLength: 20 }), fc.integer({ min: 0, max: 20 }), (rows, at) => {
        const numbers = [...rows.slice(0, at), 100, ...rows.slice(at)];
        expect(judged(numbers).scale).toBe('percent');
      }),
    );
  });

  it('stay at or below 0 dB, with their ratios, where they are shares of a full level', () => {
    const column = fc.array(fc.integer({ min: 1, max: 255 }), { minLength: 2, maxLength: 30 });
    fc.assert(
      fc.property(column, (numbers) => {
        const greatest = Math.max(...numbers);
        fc.pre(greatest > 24 && (greatest <= 127 || greatest === 255));
        const { scale } = judged(numbers);
        const levels = numbers.map((one) => decibelsOf(one, scale));
        expect(Math.max(...levels)).toBeLessThanOrEqual(0);
        for (const [at, level] of levels.entries())
          expect(level - levels[0]).toBeCloseTo(20 * Math.log10(numbers[at] / numbers[0]), 1);
      }),
    );
  });
});

describe('a level in dB', () => {
  it('is 20 times the logarithm of the amplitude (IEC 60027-3)', () => {
    expect(decibelsOf(50, 'percent')).toBe(-6.02);
    expect(decibelsOf(2, 'factor')).toBe(6.02);
    expect(decibelsOf(0, 'factor')).toBe(Number.NEGATIVE_INFINITY);
    expect(decibelsOf(-1, 'percent')).toBeNaN();
  });

  it('is 0 for the full level of each scale (seven bits: MIDI 1.0; eight bits: 2^8 - 1)', () => {
    expect(fullLevels).toEqual({ factor: 1, percent: 100, sevenBits: 2 ** 7 - 1, eightBits: 2 ** 8 - 1 });
    for (const [scale, full] of [
      ['factor', 1],
      ['percent', 100],
      ['sevenBits', 127],
      ['eightBits', 255],
    ] as const)
      expect(decibelsOf(full, scale)).toBe(0);
  });

  it('is ten times a bel, and ten centibels', () => {
    expect(decibelsOf(-60, 'centibels')).toBe(-6);
    expect(decibelsOf(60, 'centibels', true)).toBe(-6);
    expect(decibelsOf(-6, 'dB')).toBe(-6);
    expect(decibelsOf(6, 'dB', true)).toBe(-6);
  });

  it('counts an attenuation from the full amplitude down', () => {
    // A tenth less than the full amplitude: 20 log10(0.9) = -0.915.
    expect(decibelsOf(10, 'percent', true)).toBe(-0.92);
    expect(decibelsOf(100, 'percent', true)).toBe(Number.NEGATIVE_INFINITY);
    expect(decibelsOf(101, 'percent', true)).toBeNaN();
    expect(decibelsOf(0, 'percent', true)).toBe(0);
    expect(decibelsOf(101, 'percent')).toBe(0.09);
  });
});

describe('levels whose scale nothing says', () => {
  it.each([
    [[1.4, 1, 0.6], true],
    [[180, 320], true],
    [[2, 7], true],
    [[0.4, 0.9], false],
    [[30, 100], false],
    [[-3, 2], false],
  ])('%s are left where they could raise: %s', (levels, isLeft) => {
    expect(guessedLevels(numbersOf(levels)).isLeft).toBe(isLeft);
  });
});
