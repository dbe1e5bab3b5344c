import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MapScene } from '../../../server/map/mapScene';
import { buildMapScene } from '../../../server/map/scene';
import { readSfz } from '../../../server/sfz/read';

const read = (text: string) =>
  readSfz(text, { path: 'folder/bells.sfz', include: () => ({ kind: 'missing' }) });
const scene = (text: string): MapScene => buildMapScene(read(text));

describe('the scene of a keyboard map', () => {
  it('makes one shape of the regions of a layer that answer the same keys and velocities', () => {
    const text = `<group> group_label=soft hivel=63
<region> sample=A/one.wav key=60
<region> sample=A\\two.wav lokey=c4 hikey=c4 pitch_keycenter=62
<region> sample=three.wav key=61
<group> group_label=loud
<region> sample=four.wav key=60 hivel=63`;
    const { shapes, layers, regionCount, name } = scene(text);
    expect(name).toBe('bells.sfz');
    expect(regionCount).toBe(4);
    expect(layers).toEqual([
      { name: 'soft', regionCount: 3 },
      { name: 'loud', regionCount: 1 },
    ]);
    expect(
      shapes.map((shape) => [shape.lowKey, shape.highKey, shape.lowVelocity, shape.highVelocity]),
    ).toEqual([
      [60, 60, 1, 63],
      [61, 61, 1, 63],
      [60, 60, 1, 63],
    ]);
    expect(shapes.map(({ layer }) => layer)).toEqual([0, 0, 1]);
    expect(shapes[0]).toMatchObject({ label: 'one', rootKeys: [60, 62] });
    expect(shapes[0]?.regions.map(({ sample, rootKey }) => [sample, rootKey])).toEqual([
      ['one.wav', 60],
      ['two.wav', 62],
    ]);
    const first = shapes[0]?.regions[0];
    expect(text.slice(first?.start, first?.end)).toBe('<region> sample=A/one.wav key=60');
  });

  it('names layers by group label, master label, what samples share, group number, or not at all', () => {
    const { layers } = scene(`<region> sample=a.wav key=60
<master> master_label=room <group> <region> sample=b.wav key=60
<group> group_label=near <region> sample=c.wav key=60
<master> <group> <region> sample=gong_C4.wav key=60
<group> <region> sample=*sine key=60
<group> group_label=near <region> sample=f.wav key=60`);
    expect(layers).toEqual([
      { name: 'no group', regionCount: 1 },
      { name: 'room', regionCount: 1 },
      { name: 'near', regionCount: 2 },
      { name: 'Gong', regionCount: 1 },
      { name: 'Group 4', regionCount: 1 },
    ]);
  });

  it.each([
    ['', 48, 83],
    ['<region> sample=a.wav key=60', 48, 83],
    ['<region> sample=a.wav lokey=21 hikey=108', 12, 119],
    ['<region> sample=a.wav key=126', 84, 127],
    ['<region> sample=a.wav key=0', 0, 35],
    ['<region> sample=a.wav', 0, 127],
    ['<region> sample=a.wav lokey=60 hikey=71 sw_last=24', 24, 71],
  ])('shows whole octaves, at least three, with all played and switching keys: %s', (text, low, high) => {
    const { lowKey, highKey } = scene(text);
    // Octaves begin with C; MIDI key 60 is middle C and 127 the highest (MIDI 1.0).
    expect([lowKey, highKey]).toEqual([low, high]);
    expect(lowKey % 12).toBe(0);
    expect(highKey === 127 || highKey % 12 === 11).toBe(true);
    expect(highKey - lowKey + 1).toBeGreaterThanOrEqual(36);
  });

  it('lists regions that have no place on the keyboard', () => {
    const { shapes, unplaced, played } = scene(`<region> sample=hum.wav lokey=-1
<region> sample=back.wav lokey=70 hikey=60
<region> sample=none.wav key=60 lovel=90 hivel=80`);
    expect(shapes).toEqual([]);
    expect(played).toBeNull();
    expect(unplaced.map(({ sample, reason }) => [sample, reason])).toEqual([
      ['hum.wav', 'keys-off'],
      ['back.wav', 'empty-range'],
      ['none.wav', 'empty-range'],
    ]);
  });

  it('starts velocities at 1, since 0 is a note-off in MIDI 1.0', () => {
    expect(scene('<region> sample=a.wav lovel=0 hivel=40').shapes[0]).toMatchObject({
      lowVelocity: 1,
      highVelocity: 40,
    });
  });

  it('finds key gaps, velocity gaps and overlaps', () => {
    const { gaps, overlaps } = scene(`<group> group_label=low
<region> sample=a.wav lokey=48 hikey=55 hivel=100
<region> sample=b.wav lokey=54 hikey=59
<group> group_label=high
<region> sample=c.wav lokey=64 hikey=71`);
    expect(gaps).toEqual([
      { kind: 'key', lowKey: 60, highKey: 63, lowVelocity: 1, highVelocity: 127 },
      { kind: 'velocity', lowKey: 48, highKey: 53, lowVelocity: 101, highVelocity: 127 },
    ]);
    expect(overlaps).toEqual([{ layer: 0, lowKey: 54, highKey: 55, lowVelocity: 1, highVelocity: 100 }]);
  });

  it('finds no overlap between round robins, nor a gap on switching keys', () => {
    const { gaps, overlaps, keyswitches } = scene(`<global> sw_lokey=50 sw_hikey=53 seq_length=2
<group> sw_last=50 sw_label=long
<region> sample=a.wav lokey=40 hikey=49 seq_position=1
<region> sample=b.wav lokey=44 hikey=49 seq_position=2
<group> sw_last=51
<region> sample=c.wav lokey=54 hikey=64`);
    expect(overlaps).toEqual([]);
    expect(gaps).toEqual([]);
    expect(keyswitches).toEqual([
      { key: 50, label: 'long' },
      { key: 51, label: '' },
    ]);
  });

  it('reads keys of switches with note and octave offset', () => {
    const { keyswitches, shapes } = scene(
      '<control> note_offset=2 octave_offset=1 <region> key=60 sw_last=c1',
    );
    expect(keyswitches).toEqual([{ key: 24 + 14, label: '' }]);
    expect(shapes[0]).toMatchObject({ lowKey: 74, highKey: 74, label: 'no sample' });
  });

  const value = fc.integer({ min: -2, max: 130 });
  const line = fc.oneof(
    fc.constantFrom(
      '<group>',
      '<group> group_label=a',
      '<master> master_label=b',
      '<global>',
      '<group> sw_last=c2',
    ),
    fc.record({ lokey: value, hikey: value, lovel: value, hivel: value }, { requiredKeys: [] }).map(
      (opcodes) =>
        `<region> ${Object.entries(opcodes)
          .map((pair) => pair.join('='))
          .join(' ')}`,
    ),
  );

  it('has every region in exactly one place, inside the span, and is plain data', () => {
    fc.assert(
      fc.property(fc.array(line, { maxLength: 40 }), (lines) => {
        const instrument = read(lines.join('\n'));
        const made = buildMapScene(instrument);
        const headers = [...made.shapes.flatMap(({ regions }) => regions), ...made.unplaced].map(
          ({ header }) => header,
        );
        expect(headers.sort((one, other) => one - other)).toEqual([...instrument.regions]);
        const counts = made.layers.map(() => 0);
        for (const shape of made.shapes) counts[shape.layer] += shape.regions.length;
        for (const { layer } of made.unplaced) counts[layer] += 1;
        expect(made.layers.map(({ regionCount }) => regionCount)).toEqual(counts);
        for (const cell of [...made.shapes, ...made.gaps, ...made.overlaps]) {
          expect(cell.lowKey).toBeGreaterThanOrEqual(made.lowKey);
          expect(cell.highKey).toBeLessThanOrEqual(made.highKey);
          expect(cell.lowKey).toBeLessThanOrEqual(cell.highKey);
          expect(cell.lowVelocity).toBeGreaterThanOrEqual(1);
          expect(cell.lowVelocity).toBeLessThanOrEqual(cell.highVelocity);
          expect(cell.highVelocity).toBeLessThanOrEqual(127);
        }
        expect(JSON.parse(JSON.stringify(made))).toEqual(made);
      }),
    );
  });

  it('covers no gap by a shape, counted key by key and velocity by velocity', () => {
    fc.assert(
      fc.property(fc.array(line, { maxLength: 12 }), (lines) => {
        const { shapes, gaps } = scene(lines.join('\n'));
        for (const gap of gaps) {
          const shape = shapes.find(
            (one) =>
              one.lowKey <= gap.highKey &&
              gap.lowKey <= one.highKey &&
              one.lowVelocity <= gap.highVelocity &&
              gap.lowVelocity <= one.highVelocity,
          );
          expect(shape).toBeUndefined();
        }
      }),
    );
  });
});
