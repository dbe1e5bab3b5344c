import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LevelScale } from '../../../server/trade/scales/levelScale';
import { decibelsOf, levelScale } from '../../../server/trade/scales/levelScale';
import { numbersOf } from '../../../server/trade/scales/numbers';
import { panOf, panScale, sidedPanScale } from '../../../server/trade/scales/panScale';
import { centsOf, tuningScale } from '../../../server/trade/scales/tuningScale';
import { velocityScale } from '../../../server/trade/scales/velocityScale';

/** What practitioners take such columns for (common practice). */
describe('levels', () => {
  it.each<[LevelScale, number[], boolean]>([
    ['percent', [100, 75, 60], true],
    ['percent', [85, 40, 70], true],
    ['sevenBits', [127, 90, 64], true],
    ['sevenBits', [118, 97, 101], true],
    ['sevenBits', [83, 97, 61], true],
    ['eightBits', [255, 128, 190], true],
    ['factor', [1, 0.7, 0.35], true],
    ['dB', [0, -3, -12.5], false],
    ['dB', [-3, 2, 1.5], false],
    ['dB', [0, 0, 0], false],
    ['centibels', [-200, -30, 0], true],
  ])('are %s in %j', (scale, numbers, isOpen) => {
    expect(levelScale(numbersOf(numbers))).toMatchObject({ scale, isOpen });
  });

  it('counts an attenuation in dB, or in tenths of them where it is too great', () => {
    expect(levelScale(numbersOf([0, 3, 6]), true).scale).toBe('dB');
    expect(levelScale(numbersOf([0, 960, 200]), true).scale).toBe('centibels');
  });

  it('are the same whatever stands in one row, as long as the ends are kept', () => {
    const inner = fc.integer({ min: 26, max: 99 });
    fc.assert(
      fc.property(fc.array(inner, { maxLength: 20 }), fc.integer({ min: 0, max: 20 }), (rows, at) => {
        const numbers = [...rows.slice(0, at), 100, ...rows.slice(at)];
        expect(levelScale(numbersOf(numbers)).scale).toBe('percent');
      }),
    );
  });

  it('stay at or below 0 dB, with their ratios, where they are shares of a full level', () => {
    const column = fc.array(fc.integer({ min: 1, max: 255 }), { minLength: 2, maxLength: 30 });
    fc.assert(
      fc.property(column, (numbers) => {
        const greatest = Math.max(...numbers);
        fc.pre(greatest > 24 && (greatest <= 127 || greatest === 255));
        const { scale } = levelScale(numbersOf(numbers));
        const levels = numbers.map((one) => decibelsOf(one, scale));
        expect(Math.max(...levels)).toBeLessThanOrEqual(0);
        for (const [at, level] of levels.entries())
          expect(level - levels[0]).toBeCloseTo(20 * Math.log10(numbers[at] / numbers[0]), 1);
      }),
    );
  });

  it('are logarithms of the amplitude (IEC 60027-3)', () => {
    expect(decibelsOf(50, 'percent')).toBe(-6.02);
    expect(decibelsOf(0, 'factor')).toBe(Number.NEGATIVE_INFINITY);
    expect(decibelsOf(127, 'sevenBits')).toBe(0);
    expect(decibelsOf(-60, 'centibels')).toBe(-6);
    // A tenth less than the full amplitude.
    expect(decibelsOf(10, 'percent', true)).toBe(-0.92);
    expect(decibelsOf(6, 'dB', true)).toBe(-6);
    expect(decibelsOf(-1, 'percent')).toBeNaN();
  });
});

describe('tunings', () => {
  it.each([
    ['semitones', [0.25, -0.1, 0, 0.07], true],
    ['semitones', [-12, 0, 12], true],
    ['cents', [25, -10, 0], false],
    ['cents', [3, -4, 0], true],
    ['cents', [0, 0], false],
    ['ratio', [0.9971, 1, 1.0034], true],
  ])('are %s in %j', (scale, numbers, isOpen) => {
    expect(tuningScale(numbersOf(numbers))).toMatchObject({ scale, isOpen });
  });

  it('are cents where the name says fine, semitones where it says coarse and they are small', () => {
    expect(tuningScale(numbersOf([3, -4, 0]), 'fine')).toMatchObject({ scale: 'cents', isOpen: false });
    expect(tuningScale(numbersOf([3, -4, 0]), 'coarse')).toMatchObject({ scale: 'semitones', isOpen: false });
    expect(tuningScale(numbersOf([300, -400, 0]), 'coarse')).toMatchObject({ scale: 'cents', isOpen: true });
  });

  it('are 1200 cents to the octave (ISO 80000-8)', () => {
    expect(centsOf(2, 'ratio')).toBe(1200);
    expect(centsOf(0.25, 'semitones')).toBe(25);
    expect(centsOf(-7, 'cents')).toBe(-7);
  });
});

describe('pan positions', () => {
  it.each([
    [
      [-100, 0, 100],
      [-100, 0, 40],
    ],
    [
      [-1, 0, 1],
      [-0.5, 0, 1],
    ],
    [
      [-64, 0, 63],
      [-64, -32, 0, 63],
    ],
    [
      [0, 64, 127],
      [0, 64, 127],
    ],
    [
      [0, 0.5, 1],
      [0, 0.5, 0.9],
    ],
    [
      [0, 50, 100],
      [20, 50, 80],
    ],
  ])('lie on %j in %j', (scale, numbers) => {
    expect(panScale(numbersOf(numbers)).scale).toEqual(scale);
  });

  it('go from the centre to both sides, which may differ in length', () => {
    expect(panOf(63, [-64, 0, 63])).toBe(100);
    expect(panOf(-32, [-64, 0, 63])).toBe(-50);
    expect(panOf(0, [0, 64, 127])).toBe(-100);
  });

  it('beside letters go as far as the usual ends allow', () => {
    expect(sidedPanScale(100)).toMatchObject({ scale: 100, isOpen: false });
    expect(sidedPanScale(30)).toMatchObject({ scale: 100, isOpen: true });
    expect(sidedPanScale(64)).toMatchObject({ scale: 64, isOpen: true });
  });
});

describe('velocities', () => {
  it.each([
    [127, [1, 63, 64, 127], false],
    [1, [0, 0.5, 1], true],
    [128, [1, 64, 65, 128], true],
    [255, [0, 127, 128, 255], true],
    [100, [0, 49.5, 100], true],
  ])('count to %d in %j', (scale, numbers, isOpen) => {
    const ends = { all: numbersOf(numbers), areLayered: true, inPercent: false };
    expect(velocityScale(ends)).toMatchObject({ scale, isOpen });
  });

  it('count to 100 where layers run from 0 to 100', () => {
    const ends = { all: numbersOf([0, 40, 41, 100]), areLayered: true, inPercent: false };
    expect(velocityScale(ends)).toMatchObject({ scale: 100, isOpen: true });
  });
});
