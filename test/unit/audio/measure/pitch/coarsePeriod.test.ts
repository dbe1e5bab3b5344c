import { describe, expect, it } from 'vitest';
import { coarsePeriod } from '../../../../../server/audio/measure/pitch/coarsePeriod';

const at = (values: number[], shortest = 1, longest = 1000) =>
  coarsePeriod(Float64Array.from(values), shortest, longest);

/** A hump between zeros whose top, on a parabola, lies at a place: y = height - (x - top)^2 / 10. */
function humps(length: number, ...tops: [top: number, height: number][]): Float64Array {
  const values = Float64Array.from({ length }, (_, x) =>
    Math.max(-0.5, ...tops.map(([top, height]) => height - (x - top) ** 2 / 10)),
  );
  values[0] = 1;
  return values;
}

/** P. McLeod and G. Wyvill, "A smarter way to find pitch", ICMC 2005: the first peak that comes near the highest of all. */
describe('a period', () => {
  it('is the top of a parabola through three points', () => {
    const found = coarsePeriod(humps(100, [40.3, 0.9]), 1, 90);
    expect(found?.frames).toBeCloseTo(40.3, 9);
    expect(found?.likeness).toBeCloseTo(0.9, 9);
    const other = coarsePeriod(humps(100, [39.8, 0.7]), 1, 90);
    expect(other?.frames).toBeCloseTo(39.8, 9);
    expect(other?.likeness).toBeCloseTo(0.7, 9);
  });

  it('is the first of those that come near the highest', () => {
    expect(coarsePeriod(humps(200, [40, 0.85], [80, 0.9]), 1, 190)?.frames).toBeCloseTo(40, 9);
    expect(coarsePeriod(humps(200, [40, 0.9], [80, 1]), 1, 190)?.frames).toBeCloseTo(40, 6);
    expect(coarsePeriod(humps(200, [40, 0.8], [80, 0.9]), 1, 190)?.frames).toBeCloseTo(80, 9);
    expect(coarsePeriod(humps(200, [40, 0.9], [80, 0.8]), 1, 190)?.frames).toBeCloseTo(40, 9);
  });

  it('is one of the lengths that are looked for', () => {
    expect(coarsePeriod(humps(200, [40, 0.9], [80, 0.9]), 41, 190)?.frames).toBeCloseTo(80, 9);
    expect(coarsePeriod(humps(200, [40, 0.9], [80, 0.9]), 40, 190)?.frames).toBeCloseTo(40, 9);
    expect(coarsePeriod(humps(200, [40, 0.7], [80, 0.9]), 1, 60)?.frames).toBeCloseTo(40, 9);
    expect(coarsePeriod(humps(200, [80, 0.9]), 1, 60)).toBeUndefined();
    // The last one that is looked at.
    expect(coarsePeriod(humps(200, [60, 0.9]), 1, 60.7)?.frames).toBeCloseTo(60, 9);
    expect(coarsePeriod(humps(200, [60, 0.9]), 1, 59.9)).toBeUndefined();
  });

  it('is none where the likeness only falls, or is not there', () => {
    expect(at([1, 0.8, 0.6, 0.4, 0.2, 0.1])).toBeUndefined();
    expect(at([1, 0.5, -0.1, -0.2, -0.1, -0.3])).toBeUndefined();
    expect(at([1])).toBeUndefined();
    expect(at([])).toBeUndefined();
  });

  it('is the highest top of its hump', () => {
    expect(at([1, -1, 0.2, 0.5, 0.3, 0.8, 0.3, -1, -1])?.frames).toBeCloseTo(5, 9);
    expect(at([1, -1, 0.2, 0.8, 0.3, 0.5, 0.3, -1, -1])?.frames).toBeLessThan(4);
  });

  it('does not start before the likeness was once at or below zero', () => {
    expect(at([1, 0.9, 0.95, 0.5, -0.1, 0.6, -0.1, -1])?.frames).toBeCloseTo(5, 9);
    expect(at([1, 0.9, 0.95, 0.5, 0, 0.6, 0, -1])?.frames).toBeCloseTo(5, 9);
  });

  it('is found on a level top', () => {
    const flat = at([1, -1, 0.5, 0.5, 0.5, -1, -1]);
    expect(flat?.likeness).toBeGreaterThanOrEqual(0.5);
    expect(flat?.frames).toBeGreaterThanOrEqual(2);
    expect(flat?.frames).toBeLessThanOrEqual(4);
  });
});
