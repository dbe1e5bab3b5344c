import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conditionsOf } from '../../../../server/model/overlaps/conditions';
import { findKeyGaps, findVelocityGaps, playedRectangles } from '../../../../server/model/overlaps/gaps';
import { readSfz } from '../../../../server/sfz/read';

function played(text: string) {
  const instrument = readSfz(text, { path: 'test.sfz' });
  return playedRectangles(instrument, conditionsOf(instrument));
}

const range = (most: number) =>
  fc
    .tuple(fc.integer({ min: 0, max: most }), fc.integer({ min: 0, max: most }))
    .map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);

const zones = fc.array(fc.record({ keys: range(127), velocities: range(127) }), { maxLength: 8 });

const textOf = (all: readonly { keys: readonly [number, number]; velocities: readonly [number, number] }[]) =>
  all
    .map(
      ({ keys, velocities }) =>
        `<region> lokey=${keys[0]} hikey=${keys[1]} lovel=${velocities[0]} hivel=${velocities[1]}`,
    )
    .join('\n');

describe('key gaps', () => {
  it('are the keys inside the span that no rectangle holds, where zones are wide', () => {
    const wide = fc.array(
      fc.integer({ min: 0, max: 30 }).map((place) => ({ keys: [place * 4, place * 4 + 3] as const })),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(wide, (all) => {
        const text = textOf(all.map(({ keys }) => ({ keys, velocities: [1, 127] as const })));
        const answered = new Set(all.flatMap(({ keys }) => [0, 1, 2, 3].map((step) => keys[0] + step)));
        const open: number[] = [];
        for (let key = Math.min(...answered); key < Math.max(...answered); key++) {
          if (!answered.has(key)) open.push(key);
        }
        const found = findKeyGaps(played(text), new Set()).flatMap(({ lowKey, highKey }) =>
          Array.from({ length: highKey - lowKey + 1 }, (_, step) => lowKey + step),
        );
        expect(found).toEqual(open);
      }),
    );
  });

  it('name the regions on both sides and leave taken keys out', () => {
    const rectangles = played('<region> lokey=10 hikey=14\n<region> lokey=20 hikey=24');
    expect(findKeyGaps(rectangles, new Set([17]))).toEqual([
      { lowKey: 15, highKey: 16, below: 0, above: 1 },
      { lowKey: 18, highKey: 19, below: 0, above: 1 },
    ]);
  });

  it('are reported for one missing key of many, not for scattered single keys', () => {
    const single = (keys: number[]) => keys.map((key) => `<region> key=${key}`).join('\n');
    expect(findKeyGaps(played(single([60, 61, 62, 64, 65, 66])), new Set())).toHaveLength(1);
    expect(findKeyGaps(played(single([35, 38, 42, 46, 49])), new Set())).toEqual([]);
  });
});

describe('velocity gaps', () => {
  it('are the velocities 1..127 of played keys that no rectangle holds', () => {
    fc.assert(
      fc.property(zones, (all) => {
        const open: string[] = [];
        for (let key = 0; key <= 127; key++) {
          const here = all.filter(({ keys }) => keys[0] <= key && key <= keys[1]);
          // Velocity 0 is a release (MIDI 1.0): a zone that ends there leaves its keys unplayed.
          if (!here.some(({ velocities }) => velocities[1] > 0)) continue;
          for (let velocity = 1; velocity <= 127; velocity++) {
            const isHeld = here.some((one) => one.velocities[0] <= velocity && velocity <= one.velocities[1]);
            if (!isHeld) open.push(`${key}:${velocity}`);
          }
        }
        const found: string[] = [];
        for (const gap of findVelocityGaps(played(textOf(all)))) {
          for (let key = gap.lowKey; key <= gap.highKey; key++) {
            for (let velocity = gap.lowVelocity; velocity <= gap.highVelocity; velocity++) {
              found.push(`${key}:${velocity}`);
            }
          }
        }
        expect(found.sort()).toEqual(open.sort());
      }),
      { numRuns: 60, examples: [[[{ keys: [3, 9], velocities: [0, 0] }]]] },
    );
  });
});
