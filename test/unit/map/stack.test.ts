import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Box } from '../../../server/map/layout';
import { cellBox, layOut, shapeBox } from '../../../server/map/layout';
import type { MapScene } from '../../../server/map/mapScene';
import { buildMapScene } from '../../../server/map/scene';
import { stackShapes } from '../../../server/map/stack';
import { readSfz } from '../../../server/sfz/read';

const scene = (text: string): MapScene =>
  buildMapScene(readSfz(text, { path: 'bells.sfz', include: () => ({ kind: 'missing' }) }));

const layoutOf = (made: MapScene) => layOut(made, { keyWidth: 20, plotHeight: 381, keyboardHeight: 50 });

function boxes(made: MapScene): Box[] {
  const stack = stackShapes(made);
  return made.shapes.map((shape, index) => shapeBox(layoutOf(made), stack, shape, index));
}

describe('shapes one over the other', () => {
  it('stand where they are, whatever their group, where they only meet', () => {
    const made = scene(`<group> group_label=soft hivel=63 <region> sample=a.wav lokey=48 hikey=53
<group> group_label=loud lovel=64 <region> sample=b.wav lokey=48 hikey=53
<group> group_label=high <region> sample=c.wav lokey=54 hikey=59`);
    const [soft, loud, high] = boxes(made);
    // By hand: keys of 20 pixels from key 36 on, three octaves being shown at least, 3 pixels a velocity, from 127 at the top; outlines of 1.2 pixels stand side by side.
    expect(soft.y - (loud.y + loud.height)).toBeCloseTo(1.2, 9);
    expect(high.x - (soft.x + soft.width)).toBeCloseTo(1.2, 9);
    expect(high.x).toBeCloseTo((54 - 36) * 20 + 0.6, 9);
    expect(soft.y).toBeCloseTo((127 - 63) * 3 + 0.6, 9);
    expect(high.width).toBeCloseTo(6 * 20 - 1.2, 9);
  });

  it('are drawn in on those sides alone that they share with one below', () => {
    const made = scene(`<group> group_label=all <region> sample=a.wav lokey=48 hikey=59
<group> group_label=soft <region> sample=b.wav lokey=48 hikey=59 hivel=63
<group> group_label=loud <region> sample=c.wav lokey=48 hikey=59 lovel=64`);
    const [all, soft, loud] = boxes(made);
    expect([all.x, all.y, all.width, all.height].map((pixels) => pixels.toFixed(6))).toEqual(
      [240.6, 0.6, 240 - 1.2, 381 - 1.2].map((pixels) => pixels.toFixed(6)),
    );
    expect(soft.x).toBeGreaterThan(all.x + 1);
    expect(soft.x + soft.width).toBeLessThan(all.x + all.width - 1);
    expect(soft.y + soft.height).toBeLessThan(all.y + all.height - 1);
    expect(loud.y).toBeGreaterThan(all.y + 1);
    expect(soft.y - (loud.y + loud.height)).toBeCloseTo(1.2, 9);
  });

  const range = (least: number, most: number) =>
    fc
      .tuple(fc.integer({ min: least, max: most }), fc.integer({ min: least, max: most }))
      .map((pair) => pair.sort((a, b) => a - b));
  const someRegions = fc.array(fc.tuple(range(40, 60), range(1, 127), fc.integer({ min: 0, max: 3 })), {
    maxLength: 12,
  });
  const made = (regions: readonly (readonly [number[], number[], number])[]): MapScene =>
    scene(
      regions
        .map(
          ([[lowKey, highKey], [low, high], layer], at) =>
            `<group> group_label=${layer} <region> sample=${at}.wav lokey=${lowKey} hikey=${highKey} lovel=${low} hivel=${high}`,
        )
        .join('\n'),
    );

  it('have the smallest uppermost, as a search through all of them says', () => {
    fc.assert(
      fc.property(someRegions, fc.integer({ min: 0, max: 3 }), (regions, hidden) => {
        const one = made(regions);
        const hiddenLayers = new Set(
          one.layers.flatMap(({ name }, layer) => (name === String(hidden) ? [layer] : [])),
        );
        const { top, order, isSeen } = stackShapes(one, hiddenLayers);
        const seen = new Set<number>();
        // One expectation for all places, as each takes longer than what it looks at.
        const wrong: number[][] = [];
        for (let key = 39; key < 62; key++) {
          for (let velocity = 1; velocity < 128; velocity++) {
            const here = order.filter((index) => {
              const shape = one.shapes[index];
              return (
                shape.lowKey <= key &&
                key <= shape.highKey &&
                shape.lowVelocity <= velocity &&
                velocity <= shape.highVelocity
              );
            });
            if (top[key * 128 + velocity] !== (here.at(-1) ?? -1)) wrong.push([key, velocity]);
            if (here.length > 0) seen.add(here.at(-1) as number);
          }
        }
        expect(wrong).toEqual([]);
        expect(order.every((index) => !hiddenLayers.has(one.shapes[index].layer))).toBe(true);
        const area = (index: number) => {
          const { lowKey, highKey, lowVelocity, highVelocity } = one.shapes[index];
          return (highKey - lowKey + 1) * (highVelocity - lowVelocity + 1);
        };
        for (let at = 1; at < order.length; at++)
          expect(area(order[at])).toBeLessThanOrEqual(area(order[at - 1]));
        expect([...isSeen].flatMap((is, index) => (is ? [index] : []))).toEqual(
          [...seen].sort((a, b) => a - b),
        );
      }),
      { numRuns: 30 },
    );
  });

  it('never reach over their extents, nor vanish', () => {
    fc.assert(
      fc.property(someRegions, (regions) => {
        const one = made(regions);
        const layout = layoutOf(one);
        boxes(one).forEach((box, index) => {
          const shape = one.shapes[index];
          expect(box.width).toBeGreaterThan(2);
          expect(box.height).toBeGreaterThan(0.5);
          const whole = cellBox(layout, shape);
          expect(box.x).toBeGreaterThan(whole.x);
          expect(box.y).toBeGreaterThan(whole.y);
          expect(box.x + box.width).toBeLessThan(whole.x + whole.width);
          expect(box.y + box.height).toBeLessThan(whole.y + whole.height);
        });
      }),
    );
  });
});
