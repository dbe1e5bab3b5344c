import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findAgain, nearestShape, readingOrder } from '../../../client/keyboardMap/page/shown/navigation';
import type { MapShape } from '../../../server/map/mapScene';

const shape = (
  lowKey: number,
  highKey: number,
  lowVelocity: number,
  highVelocity: number,
  layer = 0,
): MapShape => ({
  lowKey,
  highKey,
  lowVelocity,
  highVelocity,
  layer,
  shortLabel: '',
  label: '',
  rootKeys: [],
  regions: [],
});

// Two rows of three: 0 1 2 below, 3 4 5 above; 6 lies over 1 in another layer.
const shapes = [
  shape(48, 51, 1, 63),
  shape(52, 55, 1, 63),
  shape(56, 59, 1, 63),
  shape(48, 51, 64, 127),
  shape(52, 55, 64, 127),
  shape(56, 59, 64, 127),
  shape(52, 55, 1, 63, 1),
];
const all = readingOrder(shapes, new Set());

describe('moving over the map', () => {
  it('steps through shapes by key, velocity and layer', () => {
    expect(all).toEqual([0, 3, 1, 6, 4, 2, 5]);
    expect(readingOrder(shapes, new Set([0]))).toEqual([6]);
  });

  it.each([
    [0, 'right', 1],
    [0, 'up', 3],
    [0, 'left', undefined],
    [0, 'down', undefined],
    [4, 'left', 3],
    [4, 'right', 5],
    [4, 'down', 1],
    [5, 'down', 2],
  ] as const)('moves from %i %s to %s', (from, direction, to) => {
    expect(nearestShape(shapes, all, from, direction)).toBe(to);
  });

  it('comes to a shape that lies in that direction, or stays', () => {
    const any = fc
      .tuple(
        fc.integer({ min: 0, max: 127 }),
        fc.integer({ min: 0, max: 127 }),
        fc.integer({ min: 1, max: 127 }),
        fc.integer({ min: 1, max: 127 }),
      )
      .map(([key, otherKey, velocity, otherVelocity]) =>
        shape(
          Math.min(key, otherKey),
          Math.max(key, otherKey),
          Math.min(velocity, otherVelocity),
          Math.max(velocity, otherVelocity),
        ),
      );
    fc.assert(
      fc.property(fc.array(any, { minLength: 1, maxLength: 20 }), (many) => {
        const next = nearestShape(many, readingOrder(many, new Set()), 0, 'right');
        const middle = (index: number) => many[index].lowKey + many[index].highKey;
        const furthest = Math.max(...many.map((_, index) => middle(index)));
        if (next === undefined) expect(furthest).toBe(middle(0));
        else expect(middle(next)).toBeGreaterThan(middle(0));
      }),
    );
  });

  it('finds a shape again after an edit, its own layer first', () => {
    expect(findAgain(shapes, ['a', 'b'], shapes[6], 'b')).toBe(6);
    expect(findAgain(shapes, ['a', 'b'], shapes[6], 'a')).toBe(1);
    expect(findAgain(shapes, ['a', 'b'], shape(53, 55, 1, 63), 'a')).toBe(1);
    expect(findAgain([], [], shapes[0], 'a')).toBeUndefined();
  });
});
