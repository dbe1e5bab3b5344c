import { describe, expect, it } from 'vitest';
import { numbersOf } from '../../../../server/trade/scales/numbers';
import { velocityScale } from '../../../../server/trade/scales/velocityScale';
import { velocityShares } from '../../../../server/trade/scales/velocityShares';

type Layers = [number, number][];
const shares = (layers: Layers) =>
  velocityShares(new Set(layers.map(([low]) => low)), new Set(layers.map(([, high]) => high)));
const scaleOf = (layers: Layers) =>
  velocityScale({
    all: numbersOf(layers.flat()),
    areLayered: true,
    inPercent: false,
    shares: shares(layers),
  });

/** How people count velocities is common practice; the rest is our choice, told as open. */
describe('layers', () => {
  it.each<[Layers, string | undefined]>([
    [
      [
        [1, 4],
        [5, 8],
      ],
      'evenly',
    ],
    [
      [
        [0, 2],
        [3, 5],
        [6, 8],
      ],
      'evenly',
    ],
    [
      [
        [0, 30],
        [30, 60],
      ],
      'evenly',
    ],
    [
      [
        [1, 20],
        [21, 70],
      ],
      'unevenly',
    ],
    [[[1, 70]], undefined],
    [
      [
        [1, 20],
        [31, 70],
      ],
      undefined,
    ],
    [
      [
        [20, 40],
        [41, 70],
      ],
      undefined,
    ],
    [
      [
        [1, 1],
        [2, 2],
        [3, 3],
      ],
      undefined,
    ],
  ])('%j share out velocities: %s', (layers, expected) => {
    expect(shares(layers)).toBe(expected);
  });

  it.each<[Layers, number]>([
    [
      [
        [1, 4],
        [5, 8],
      ],
      8,
    ],
    [
      [
        [0, 3],
        [4, 12],
      ],
      12,
    ],
    [
      [
        [1, 40],
        [41, 80],
      ],
      80,
    ],
    [
      [
        [1, 60],
        [61, 99],
      ],
      99,
    ],
    [
      [
        [1, 50],
        [51, 100],
      ],
      100,
    ],
    // The lower half of those of MIDI, or layers of which the loud ones are missing.
    [
      [
        [0, 31],
        [32, 63],
      ],
      127,
    ],
    [
      [
        [1, 20],
        [21, 70],
      ],
      127,
    ],
    [
      [
        [1, 40],
        [41, 80],
        [81, 127],
      ],
      127,
    ],
    [[[1, 90]], 127],
  ])('%j count to %d', (layers, scale) => {
    expect(scaleOf(layers).scale).toBe(scale);
  });

  it('are told as open, with the other scale', () => {
    expect(
      scaleOf([
        [1, 4],
        [5, 8],
      ]),
    ).toMatchObject({ isOpen: true, others: [127] });
    expect(
      scaleOf([
        [1, 20],
        [21, 70],
      ]),
    ).toMatchObject({ isOpen: true, others: [70] });
  });
});
