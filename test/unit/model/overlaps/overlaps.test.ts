import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Instrument } from '../../../../server/model/instrument';
import type { Conditions } from '../../../../server/model/overlaps/conditions';
import { conditionsOf } from '../../../../server/model/overlaps/conditions';
import { findGroupOverlaps } from '../../../../server/model/overlaps/groupOverlaps';
import { findOverlaps, sharedBy } from '../../../../server/model/overlaps/overlaps';
import type { Rectangle } from '../../../../server/model/overlaps/rectangles';
import { rectangleOf } from '../../../../server/model/overlaps/rectangles';
import { finish } from '../../../../server/model/steps';
import { readSfz } from '../../../../server/sfz/read';

function read(text: string): { instrument: Instrument; conditions: Conditions } {
  const instrument = readSfz(text, { path: 'test.sfz' });
  return { instrument, conditions: conditionsOf(instrument) };
}

/** Pairs of positions among the regions, the earlier first. */
function pairs(text: string, find: typeof findOverlaps): string[] {
  const { instrument, conditions } = read(text);
  return finish(find(instrument, conditions)).map(
    ({ region, other }) => `${instrument.regionNumber(other)}-${instrument.regionNumber(region)}`,
  );
}

interface Zone {
  group: number;
  low: number;
  width: number;
  velocity: number;
  height: number;
  turn: number;
  choke: number;
}

const zone: fc.Arbitrary<Zone> = fc.record({
  group: fc.integer({ min: 0, max: 2 }),
  low: fc.integer({ min: 0, max: 12 }),
  width: fc.integer({ min: -1, max: 4 }),
  velocity: fc.integer({ min: 1, max: 6 }),
  height: fc.integer({ min: 0, max: 3 }),
  turn: fc.integer({ min: 1, max: 3 }),
  choke: fc.integer({ min: 0, max: 1 }),
});

/** A text in which zones stand under their groups; the regions in the order of the text. */
function textOf(zones: readonly Zone[]): { text: string; ordered: Zone[] } {
  const ordered = [0, 1, 2].flatMap((group) => zones.filter((one) => one.group === group));
  let text = '';
  let group = -1;
  for (const one of ordered) {
    if (one.group !== group) text += '<group> seq_length=3\n';
    group = one.group;
    text += `<region> lokey=${one.low} hikey=${one.low + one.width} lovel=${one.velocity} hivel=${one.velocity + one.height} seq_position=${one.turn} group=${one.choke}\n`;
  }
  return { text, ordered };
}

function meet(a: Zone, b: Zone): boolean {
  return (
    a.width >= 0 &&
    b.width >= 0 &&
    a.low <= b.low + b.width &&
    b.low <= a.low + a.width &&
    a.velocity <= b.velocity + b.height &&
    b.velocity <= a.velocity + a.height
  );
}

/** The definition of an overlap, pair by pair: for each different rectangle of a layer the first earlier one that it overlaps. */
function slowly(zones: readonly Zone[]): Set<string> {
  const sameArea = (a: Zone, b: Zone) =>
    a.low === b.low && a.width === b.width && a.velocity === b.velocity && a.height === b.height;
  const sameLayer = (a: Zone, b: Zone) => a.group === b.group && a.choke === b.choke;
  const areas = zones.filter(
    (one, at) => !zones.slice(0, at).some((before) => sameLayer(one, before) && sameArea(one, before)),
  );
  const key = (one: Zone) => zones.indexOf(one);
  const found = new Set<string>();
  for (const [at, later] of areas.entries()) {
    const earlier = areas.slice(0, at).find((before) => {
      if (!sameLayer(later, before) || !meet(later, before)) return false;
      return zones.some(
        (a) =>
          sameLayer(a, later) &&
          sameArea(a, later) &&
          zones.some((b) => sameLayer(b, before) && sameArea(b, before) && a.turn === b.turn),
      );
    });
    if (earlier) found.add(`${key(earlier)}-${key(later)}`);
  }
  return found;
}

describe('overlaps under one header', () => {
  it('are those that comparing all pairs finds', () => {
    fc.assert(
      fc.property(fc.array(zone, { maxLength: 14 }), (zones) => {
        const { text, ordered } = textOf(zones);
        const { instrument, conditions } = read(text);
        const first = (region: number) => {
          const found = ordered[instrument.regionNumber(region)];
          return ordered.findIndex(
            (one) =>
              one.group === found.group &&
              one.choke === found.choke &&
              one.low === found.low &&
              one.width === found.width &&
              one.velocity === found.velocity &&
              one.height === found.height,
          );
        };
        const found = finish(findOverlaps(instrument, conditions)).map(({ region, other }) => {
          const [a, b] = [first(region), first(other)].sort((x, y) => x - y);
          return `${a}-${b}`;
        });
        expect(new Set(found)).toEqual(slowly(ordered));
        expect(found).toHaveLength(new Set(found).size);
      }),
      { numRuns: 400 },
    );
  });

  it('share what the two rectangles share', () => {
    const { instrument, conditions } = read(
      '<region> lokey=10 hikey=20 hivel=64\n<region> lokey=18 hikey=30 lovel=60',
    );
    const [first] = finish(findOverlaps(instrument, conditions));
    expect(first && sharedBy(instrument, first)).toEqual({
      lowKey: 18,
      highKey: 20,
      lowVelocity: 60,
      highVelocity: 64,
    });
  });

  it('leave out regions that no key triggers and ranges that are inverted', () => {
    const { instrument } = read('<region> lokey=-1\n<region> lokey=9 hikey=8\n<region> lovel=9 hivel=8');
    for (const region of instrument.regions) expect(rectangleOf(instrument, region)).toBeUndefined();
  });

  it('come to an end where a text is made of nothing else', () => {
    const regions = Array.from({ length: 3000 }, (_, at) => {
      const { lowKey, highKey }: Pick<Rectangle, 'lowKey' | 'highKey'> = {
        lowKey: at % 60,
        highKey: 64 + (at % 59),
      };
      return `<region> lokey=${lowKey} hikey=${highKey} locc1=${at % 128} hicc1=${at % 128}`;
    });
    const { instrument, conditions } = read(regions.join('\n'));
    expect(finish(findOverlaps(instrument, conditions)).length).toBeLessThanOrEqual(3000);
  });
});

describe('overlaps between groups', () => {
  const layer = (low: number, high: number) =>
    `<group> lovel=${low} hivel=${high}\n<region> key=60\n<region> key=61\n`;

  it('are found where groups divide velocities or keys as neighbours', () => {
    expect(pairs(layer(1, 64) + layer(64, 127), findGroupOverlaps)).toEqual(['0-2']);
    expect(
      pairs(
        '<group> lokey=60 hikey=63\n<region>\n<group> lokey=63 hikey=66\n<region>\n<group> lokey=67 hikey=69\n<region>',
        findGroupOverlaps,
      ),
    ).toEqual(['0-1']);
  });

  it('are not looked for where groups are stacked, differ in what they set, or stand under other conditions', () => {
    expect(pairs(layer(1, 64) + layer(65, 127) + layer(1, 127), findGroupOverlaps)).toEqual([]);
    expect(pairs(layer(1, 64) + layer(64, 127) + layer(64, 127), findGroupOverlaps)).toEqual([]);
    expect(
      pairs(layer(1, 64) + layer(64, 127).replace('<group>', '<group> pan=20'), findGroupOverlaps),
    ).toEqual([]);
    expect(
      pairs(
        layer(1, 64).replace('<group>', '<group> locc1=0 hicc1=63') +
          layer(64, 127).replace('<group>', '<group> locc1=64 hicc1=127'),
        findGroupOverlaps,
      ),
    ).toEqual([]);
  });
});
