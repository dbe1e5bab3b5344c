import { describe, expect, it } from 'vitest';
import { numbersOf } from '../../../../server/trade/scales/numbers';
import type { PanScale } from '../../../../server/trade/scales/panScale';
import { panOf, panScale, sidedPanScale } from '../../../../server/trade/scales/panScale';

const judged = (numbers: number[], inPercent = false) => panScale(numbersOf(numbers), inPercent);

/** What practitioners take such columns for (common practice); where several may be, our choice, told as open. */
describe('pan positions', () => {
  it.each<[PanScale, number[], boolean]>([
    [[-100, 0, 100], [-100, 0, 40], false],
    [[-100, 0, 100], [-65, 0, 40], false],
    [[-100, 0, 100], [-30, 0, 40], false],
    [[-100, 0, 100], [-200, 0, 40], true],
    [[-100, 0, 100], [], true],
    [[-100, 0, 100], [0, 0], true],
    [[-100, 0, 100], [30, 30], true],
    [[-100, 0, 100], [0, 30], true],
    [[-100, 0, 100], [10, 30], true],
    [[-127, 0, 127], [-101, 0, 40], true],
    [[-127, 0, 127], [-127, 127], true],
    [[-1, 0, 1], [-0.5, 0, 1], true],
    [[-1, 0, 1], [-1, 0, 1], true],
    [[-64, 0, 63], [-64, -32, 0, 63], true],
    [[-64, 0, 63], [-64, -32, 0], true],
    [[-64, 0, 63], [-30, 63], true],
    [[-64, 0, 64], [-64, 64], true],
    [[-100, 0, 100], [-65, 63], false],
    [[-100, 0, 100], [-64, 65], false],
    [[-50, 0, 50], [-50, 0, 20], true],
    [[-50, 0, 50], [-20, 0, 50], true],
    [[0, 64, 127], [0, 64, 127], true],
    [[0, 64, 127], [64, 64], true],
    [[0, 64, 127], [20, 64, 100], true],
    [[0, 64, 127], [64, 90], true],
    [[0, 64, 127], [0, 101], true],
    [[0, 64, 127], [10, 65], true],
    [[0, 64, 128], [0, 64, 128], true],
    [[0, 0.5, 1], [0, 0.5, 0.9], true],
    [[0, 0.5, 1], [0.2, 0.9], true],
    [[0, 0.5, 1], [0.5, 0.5], true],
    [[0, 0.5, 1], [0, 1], true],
    [[0, 50, 100], [20, 50, 80], true],
    [[0, 50, 100], [50, 50], true],
    [[0, 50, 100], [50, 80], true],
    [[-100, 0, 100], [50, 64, 0], true],
  ])('lie on %j in %j', (scale, numbers, isOpen) => {
    expect(judged(numbers)).toMatchObject({ scale, isOpen });
  });

  it('followed by a percent sign lie on both sides of 0 or of 50', () => {
    expect(judged([-100, 100], true)).toMatchObject({ scale: [-100, 0, 100], isOpen: false });
    expect(judged([-1, 1], true).scale).toEqual([-100, 0, 100]);
    expect(judged([0, 50, 100], true)).toMatchObject({ scale: [0, 50, 100], confidence: 0.8 });
    for (const numbers of [
      [0, 100],
      [50, 100],
      [0, 50],
      [10, 20],
    ]) {
      const { scale, confidence } = judged(numbers, true);
      expect(scale).toEqual([0, 50, 100]);
      expect(confidence).toBeLessThan(0.75);
    }
  });

  // A person need only be asked where it is not plain: the surer reading has the number that marks its centre or its end.
  it.each([
    [
      [-0.5, 1],
      [-1, 0],
    ],
    [
      [-1, 0, 1],
      [-1, 0],
    ],
    [
      [-100, 20],
      [-65, 20],
    ],
    [
      [-65, 20],
      [-32, 10],
    ],
    [
      [0, 0.5],
      [0, 1],
    ],
    [
      [0.2, 0.9],
      [0.6, 0.9],
    ],
    [
      [0, 64, 127],
      [0, 127],
    ],
    [
      [0, 64, 90],
      [64, 90],
    ],
    [
      [0, 64, 90],
      [0, 64],
    ],
    [
      [0, 50, 90],
      [50, 90],
    ],
    [
      [0, 50, 90],
      [0, 50],
    ],
    [
      [50, 100],
      [50, 90],
    ],
    [
      [0, 20],
      [10, 20],
    ],
    [
      [64, 64],
      [30, 30],
    ],
  ])('are surer in %j than in %j', (surer, other) => {
    expect(judged(surer).confidence).toBeGreaterThan(judged(other).confidence);
  });

  it('could lie on any other scale that reaches as far', () => {
    expect(judged([-100, 100]).others).toEqual([[-127, 0, 127]]);
    expect(judged([-64, 64]).others).toEqual([
      [-100, 0, 100],
      [-127, 0, 127],
    ]);
    expect(judged([0, 127]).others).toEqual([[-127, 0, 127]]);
    expect(judged([-1, 1]).others).toEqual([
      [-100, 0, 100],
      [-50, 0, 50],
      [-64, 0, 63],
      [-64, 0, 64],
      [-127, 0, 127],
    ]);
    expect(judged([0, 0.5]).others).toHaveLength(8);
  });

  it.each<[RegExp, number[]]>([
    [/no numbers/, []],
    [/Only 30 occurs/, [30]],
    [/from -1 to 0.5\./, [-1, 0.5]],
    [/from -64 to 0, and -64 is the left end of a number of seven bits/, [-64, 0]],
    [/from -30 to 63, and 63 is the right end of a number of seven bits/, [-30, 63]],
    [/from -50 to 0, as far to the left as to the right/, [-50, 0]],
    [/from -110 to 0\./, [-110, 0]],
    [/from -90 to 0\./, [-90, 0]],
    [/from 0 to 0.5\./, [0, 0.5]],
    [/from 0 to 127, with 64 for the centre\./, [0, 64, 127]],
    [/from 0 to 127\./, [0, 127]],
    [/from 0 to 128\./, [0, 128]],
    [/from 0 to 90, with 64 for the centre/, [0, 64, 90]],
    [/from 0 to 90, with 50 for the centre/, [0, 50, 90]],
    [/from 0 to 30, and none is below 0/, [0, 30]],
    [/from 10 to 30\./, [10, 30]],
  ])('say why: %s', (reason, numbers) => {
    expect(judged(numbers).reason).toMatch(reason);
  });

  it('say why in percent', () => {
    expect(judged([-10, 10], true).reason).toMatch(/percent sign/);
    expect(judged([0, 50, 90], true).reason).toMatch(/from 0 to 90 percent, with 50 for the centre/);
    expect(judged([0, 90], true).reason).toMatch(/from 0 to 90 percent\./);
  });
});

describe('a pan position of 100', () => {
  it('goes from the centre to both sides, which may differ in length', () => {
    expect(panOf(63, [-64, 0, 63])).toBe(100);
    expect(panOf(-32, [-64, 0, 63])).toBe(-50);
    expect(panOf(0, [0, 64, 127])).toBe(-100);
    expect(panOf(64, [0, 64, 127])).toBe(0);
    // Two decimals: 1 of 63.
    expect(panOf(65, [0, 64, 127])).toBe(1.59);
  });
});

describe('numbers beside letters for sides', () => {
  it.each([
    [100, 100, false, [127]],
    [30, 100, true, [50, 63, 64, 127]],
    [50, 50, true, [63, 64, 100, 127]],
    [63, 63, true, [64, 100, 127]],
    [64, 64, true, [100, 127]],
    [65, 100, false, [127]],
    [101, 127, false, []],
  ])('up to %d go to %d', (greatest, scale, isOpen, others) => {
    expect(sidedPanScale(greatest)).toMatchObject({ scale, isOpen, others });
    expect(sidedPanScale(greatest).reason).toMatch(new RegExp(`Letters name the sides.* ${greatest}\\.`));
  });

  it('go to 100 in percent, and that is sure', () => {
    expect(sidedPanScale(50, true)).toMatchObject({ scale: 100, isOpen: false });
    expect(sidedPanScale(100).confidence).toBeGreaterThan(sidedPanScale(90).confidence);
  });
});
