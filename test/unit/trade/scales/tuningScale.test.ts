import { describe, expect, it } from 'vitest';
import { numbersOf } from '../../../../server/trade/scales/numbers';
import type { TuningName, TuningScale } from '../../../../server/trade/scales/tuningScale';
import { centsOf, tuningScale } from '../../../../server/trade/scales/tuningScale';

const judged = (numbers: number[], name?: TuningName) => tuningScale(numbersOf(numbers), name);

/** What practitioners take such columns for (common practice); where both may be, our choice, told as open. */
describe('tunings', () => {
  it.each<[TuningScale, number[], boolean]>([
    ['semitones', [0.25, -0.1, 0, 0.07], true],
    ['semitones', [-1, 0.5], true],
    ['semitones', [-1.25, 0.5], true],
    ['semitones', [12.25, 0.5], true],
    ['semitones', [13, 0.25], true],
    ['semitones', [-12, 0, 12], true],
    ['cents', [-12, 0, 11], true],
    ['cents', [-11, 0, 12], true],
    ['cents', [-12, 5, 12], true],
    // Octaves to both sides are meant where both occur.
    ['cents', [0, 12], true],
    ['cents', [-12, 0], true],
    ['cents', [25, -10, 0], false],
    ['cents', [25.5, -10, 0], false],
    ['cents', [14, 0], false],
    ['cents', [13, 0], true],
    ['cents', [3.5, -4, 0], true],
    ['cents', [3, -4, 0], true],
    ['cents', [0, 0], false],
    ['cents', [], false],
    ['ratio', [0.9971, 1, 1.0034], true],
    ['ratio', [0.995, 1.003], true],
    ['ratio', [1, 1.5], true],
    ['ratio', [0.5, 1, 2], true],
    // Too far from 1 for a ratio of samples that somebody tunes.
    ['semitones', [0.4, 1], true],
    ['semitones', [1, 2.25], true],
    // Whole numbers are no ratios, and none of these is 1.
    ['cents', [1, 2], true],
    ['semitones', [0.5, 0.75], true],
  ])('are %s in %j', (scale, numbers, isOpen) => {
    const reading = judged(numbers);
    expect(reading).toMatchObject({ scale, isOpen });
    expect([...reading.others, scale].sort()).toEqual(['cents', 'ratio', 'semitones']);
  });

  it('are cents where the name says fine', () => {
    expect(judged([3, -4, 0], 'fine')).toMatchObject({ scale: 'cents', isOpen: false });
    expect(judged([3.25, -4, 0], 'fine')).toMatchObject({ scale: 'cents', isOpen: true });
    expect(judged([-12, 0, 12], 'fine')).toMatchObject({ scale: 'cents', isOpen: false });
  });

  it.each<[TuningScale, number[], boolean]>([
    ['semitones', [3, -4, 0], false],
    ['semitones', [48, -4, 0], false],
    ['semitones', [7, 0.5], false],
    ['cents', [300, -400, 0], true],
    ['cents', [-100, 0], true],
    ['cents', [49, -4, 0], true],
  ])('named coarse are %s in %j', (scale, numbers, isOpen) => {
    expect(judged(numbers, 'coarse')).toMatchObject({ scale, isOpen });
  });

  it('are surer the more digits a ratio has, and the smaller fractions are', () => {
    expect(judged([0.995, 1.003]).confidence).toBeGreaterThan(judged([1, 1.5]).confidence);
    expect(judged([1.5, -0.25]).confidence).toBeGreaterThan(judged([1.75, -0.25]).confidence);
    expect(judged([3, -4], 'fine').confidence).toBeGreaterThan(judged([3, -4]).confidence);
  });

  it.each<[RegExp, number[], TuningName]>([
    [/no numbers/, [], undefined],
    [/near 1, from 0.995 to 1.003/, [0.995, 1.003], undefined],
    [/Only 0/, [0, 0], undefined],
    [/from 100 to 300, too far for semitones/, [100, 300], 'coarse'],
    [/from -1 to 3, and the name speaks of a coarse/, [-1, 3], 'coarse'],
    [/from -0.5 to 0.25, with fractions/, [-0.5, 0.25], undefined],
    [/from -3.25 to 4, with fractions/, [-3.25, 4], undefined],
    [/from -3.5 to 4, with tenths/, [-3.5, 4], undefined],
    [/from -3.5 to 4, and the name speaks of a fine/, [-3.5, 4], 'fine'],
    [/from -3 to 4, and the name speaks of a fine/, [-3, 4], 'fine'],
    [/from -3 to 4\.$/, [-3, 4], undefined],
    [/from -30 to 4\.$/, [-30, 4], undefined],
    [/from -12 to 12, whole octaves/, [-12, 12], undefined],
  ])('say why: %s', (reason, numbers, name) => {
    expect(judged(numbers, name).reason).toMatch(reason);
  });
});

describe('a tuning in cents', () => {
  it('is 1200 times the logarithm of a ratio to base 2 (ISO 80000-8)', () => {
    expect(centsOf(2, 'ratio')).toBe(1200);
    expect(centsOf(0.5, 'ratio')).toBe(-1200);
    // A fifth of 3:2 is 701.955 cents.
    expect(centsOf(1.5, 'ratio')).toBe(701.96);
    expect(centsOf(0, 'ratio')).toBeNaN();
    expect(centsOf(-1, 'ratio')).toBeNaN();
  });

  it('is a hundredth of a semitone', () => {
    expect(centsOf(0.25, 'semitones')).toBe(25);
    expect(centsOf(0.07, 'semitones')).toBe(7);
    expect(centsOf(-7, 'cents')).toBe(-7);
  });
});
