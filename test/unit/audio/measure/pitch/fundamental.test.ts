import { describe, expect, it } from 'vitest';
import { explainedShare, fundamentalOf } from '../../../../../server/audio/measure/pitch/fundamental';

// f(n) = n·f0·√(1 + B·n²): Fletcher, Journal of the Acoustical Society of America 36(1), 1964.
const stretched = (f0: number, b: number) => (number: number) => ({
  number,
  hertz: number * f0 * Math.sqrt(1 + b * number * number),
  power: 1 / number ** 2,
});
const numbers = [1, 2, 3, 4, 5, 6, 7, 8];

describe('the fundamental of partials', () => {
  it.each([
    [55, 0],
    [110, 0.0004],
    [440, 0.001],
  ])('of %f Hz is the first of them with its stretch %f', (f0, b) => {
    const partials = numbers.map(stretched(f0, b));
    const found = fundamentalOf(partials, f0 * 1.01);
    expect(Math.abs(1200 * Math.log2((found?.hertz ?? 0) / (f0 * Math.sqrt(1 + b))))).toBeLessThan(0.3);
    // √(1 + B·n²) is nearly 1 + B·n²/2, so the stretch comes out a little small.
    expect(Math.abs((found?.inharmonicity ?? 1) - b)).toBeLessThan(0.05 * b + 1e-9);
    expect(explainedShare(partials, found ?? { hertz: 1, inharmonicity: 0 })).toBeCloseTo(1, 9);
  });

  it('explains no partial that is a quarter of a semitone off its place', () => {
    const partials = [
      { number: 1, hertz: 200, power: 3 },
      { number: 2, hertz: 400 * 2 ** (25 / 1200), power: 1 },
    ];
    expect(explainedShare(partials, { hertz: 200, inharmonicity: 0 })).toBeCloseTo(0.75, 9);
  });

  it('is not found far from where it is expected', () => {
    expect(fundamentalOf([{ number: 1, hertz: 200, power: 1 }], 220)).toBeUndefined();
  });
});
