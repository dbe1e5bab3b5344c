import { describe, expect, it } from 'vitest';
import { endsFromLimits, limitsOfLayers } from '../../../server/trade/layerLimits';

// Velocities of sounding notes run from 1 to 127 (MIDI 1.0).
describe('one end of each velocity layer', () => {
  it.each([
    [[[45, 92, 127], [70, 127], [127]], 'upper'],
    [
      [
        [0, 64],
        [1, 50, 100],
      ],
      'lower',
    ],
    [[[1, 127]], undefined],
    [[[1, 2, 3]], undefined],
    [[[64, 64, 127]], undefined],
    [
      [
        [45, 92],
        [70, 127],
      ],
      undefined,
    ],
  ] as const)('%j are %s ends', (sets, are) => {
    expect(limitsOfLayers(sets)).toBe(are);
  });

  it('gives the other ends', () => {
    const [low, high] = [
      { low: 1, high: 60 },
      { low: 61, high: 127 },
    ];
    expect(endsFromLimits([127, Number.NaN, 60], 'upper')).toEqual([high, undefined, low]);
    expect(endsFromLimits([61, 0], 'lower')).toEqual([high, low]);
  });
});
