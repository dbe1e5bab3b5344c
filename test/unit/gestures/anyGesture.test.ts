import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrangeText } from '../../../server/features/arrange/arrangeText';
import type { Arrangement } from '../../../server/gestures/arrangement';
import { isNothing } from '../../../server/gestures/arrangement';
import type { Gesture } from '../../../server/gestures/gesture';
import { arranged } from '../../../server/gestures/gesture';
import { buildMapScene } from '../../../server/map/scene';
import { editedText } from '../../../server/model/editing/changedInstrument';
import type { Instrument } from '../../../server/model/instrument';
import { noteNameOf } from '../../../server/model/keys';
import type { Notation } from '../../../server/model/notation';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';
import { notations } from '../../../server/workspace/notations/notationOf';
import { anyTexts } from '../edits/anyTexts';
import { expectSoundEdits } from '../edits/concerned';
import { effective, readText } from '../features/anyInstrument';
import { examples } from '../vocabulary/examples';

const side = fc.constantFrom('low', 'high', 'both', undefined);
const by = fc.integer({ min: -30, max: 30 });

/** A gesture on a scene; shapes are chosen by numbers that are taken as far as there are shapes. */
const anyGesture = fc
  .tuple(fc.array(fc.nat(), { minLength: 1, maxLength: 4 }), fc.boolean())
  .chain(([picked, isNeighbours]) => {
    const of = (count: number) => [
      ...new Set(picked.map((one, at) => (isNeighbours ? picked[0] + at : one) % count)),
    ];
    const shapes = { shapes: [] };
    return fc
      .oneof(
        fc.record({
          kind: fc.constant('drag' as const),
          grip: fc.record({ keys: side, velocities: side }),
          keys: by,
          velocities: by,
          isParted: fc.boolean(),
          takesRoots: fc.constantFrom(true, false, undefined),
        }),
        fc.record({ kind: fc.constant('root' as const), keys: by }),
        fc.record({
          kind: fc.constant('split' as const),
          axis: fc.constantFrom('keys' as const, 'velocities' as const),
          at: fc.integer({ min: 1, max: 127 }),
        }),
        fc.record({ kind: fc.constantFrom('join' as const, 'spread' as const, 'layers' as const) }),
        // By loudness: levels of regions, by their header, some without one.
        fc.record({
          kind: fc.constant('layers' as const),
          levels: fc
            .array(fc.tuple(fc.nat(40), fc.double({ min: -60, max: 0, noNaN: true })))
            .map((levels) => new Map(levels)),
        }),
      )
      .map((made) => (count: number): Gesture => {
        const { grip, ...given } = { grip: undefined, ...made };
        const rest = Object.fromEntries(Object.entries(given).filter(([, one]) => one !== undefined));
        const held = grip && Object.fromEntries(Object.entries(grip).filter(([, one]) => one));
        return { ...shapes, ...rest, ...(held && { grip: held }), shapes: of(count) } as object as Gesture;
      });
  });

/** What is seen of each region, and all else that is in force in it. */
function regionsOf(instrument: Instrument, scene = buildMapScene(instrument)) {
  const cells = new Map(
    scene.shapes.flatMap(({ lowKey, highKey, lowVelocity, highVelocity, regions }) =>
      regions.map(({ header, rootKey }) => [header, [lowKey, highKey, lowVelocity, highVelocity, rootKey]]),
    ),
  );
  return effective(instrument).map(({ lokey: _, hikey, lovel, hivel, pitch_keycenter, ...others }, at) => ({
    cell: cells.get(instrument.regions[at]) ?? 'no place',
    others,
  }));
}

/** What is to be seen by what the gesture shows, worked out from the scene alone. */
function expected(instrument: Instrument, { values, copies, removed }: Arrangement) {
  const before = regionsOf(instrument);
  return [...instrument.regions].flatMap((header, at) => {
    const { cell, others } = before[at];
    const as = (one: Arrangement['values'][number] | undefined) => {
      if (!one) return { cell, others };
      const [low, high, lowVelocity, highVelocity, root] = cell as number[];
      const shown = [
        one.lokey ?? low,
        one.hikey ?? high,
        one.lovel ?? lowVelocity,
        one.hivel ?? highVelocity,
      ];
      return { cell: [...shown, one.pitch_keycenter ?? root], others };
    };
    const copy = copies.find((one) => one.header === header);
    return [
      ...(removed.includes(header) ? [] : [as(values.find((one) => one.header === header))]),
      ...(copy ? [as(copy)] : []),
    ];
  });
}

/** Rows of regions side by side in velocity layers, with values in the groups or in the regions, in any spelling. */
const anyLayered: fc.Arbitrary<string> = fc
  .record({
    keys: fc.uniqueArray(fc.integer({ min: 1, max: 126 }), { minLength: 1, maxLength: 5 }),
    velocities: fc.uniqueArray(fc.integer({ min: 2, max: 126 }), { maxLength: 3 }),
    style: fc.constantFrom('numbers', 'names', 'key'),
    isInGroup: fc.boolean(),
    hasOffset: fc.boolean(),
  })
  .map(({ keys, velocities, style, isInGroup, hasOffset }) => {
    const starts = [...keys].sort((one, other) => one - other);
    const layers = [1, ...velocities.sort((one, other) => one - other), 128];
    const spell = (key: number) => (style === 'names' ? noteNameOf(key).toLowerCase() : String(key));
    const rows = layers.slice(0, -1).map((low, at) => {
      const range = `lovel=${low} hivel=${layers[at + 1] - 1}`;
      const regions = starts.map((key, place) => {
        const high = (starts[place + 1] ?? 127) - 1;
        const span =
          style === 'key' || high < key
            ? `key=${spell(key)}`
            : `lokey=${spell(key)} hikey=${spell(high)} pitch_keycenter=${spell(key)}`;
        return `<region> sample=s ${place}.wav ${span}${isInGroup ? '' : ` ${range}`} // remark\n`;
      });
      return `<group> group_label=layer ${at}${isInGroup ? ` ${range}` : ''}\n${regions.join('')}`;
    });
    return `${hasOffset ? '<control> note_offset=1\n' : ''}${rows.join('\n')}`;
  });

/** Makes a gesture and sees to it that nothing but what it shows is different; whether it was refused. */
function make(
  notation: Notation,
  instrument: Instrument,
  gesture: Gesture,
  readAgain: (texts: Record<string, string>) => Instrument,
): 'made' | 'refused' | 'nothing' {
  const { shapes } = buildMapScene(instrument);
  const arrangement = arranged(
    shapes,
    shapes.map((_, index) => index),
    gesture,
  );
  if ('refusal' in arrangement || isNothing(arrangement)) return 'nothing';
  const written = arrangeText({ notation, instrument }, arrangement);
  if ('refusal' in written) {
    expect(written.refusal).toMatch(/\.$/);
    return 'refused';
  }
  expectSoundEdits(instrument, written.edits);
  const texts = instrument.sources.map(({ path, text }, source) => {
    const edits = written.edits.filter((edit) => edit.source === source);
    return [path, editedText(text, edits)] as const;
  });
  expect(regionsOf(readAgain(Object.fromEntries(texts)))).toEqual(expected(instrument, arrangement));
  return 'made';
}

describe.each(['sfz', 'xml'] as const)('in %s with includes anywhere', (format) => {
  it('a gesture changes exactly the values that it shows', () => {
    const made = new Set<string>();
    const count = { made: 0, refused: 0, nothing: 0 };
    fc.assert(
      fc.property(anyTexts[format], anyGesture, ({ main, files }, gestureOf) => {
        const instrument = readText(format, main, files);
        const { shapes } = buildMapScene(instrument);
        if (shapes.length === 0) return;
        const gesture = gestureOf(shapes.length);
        const what = make(notations[format], instrument, gesture, (texts) =>
          readText(format, texts[instrument.sources[0].path], { ...files, ...texts }),
        );
        count[what]++;
        if (what === 'made') made.add(gesture.kind);
      }),
      { numRuns: 250 },
    );
    expect([...made]).toEqual(expect.arrayContaining(['drag', 'root', 'split']));
    expect(count.made).toBeGreaterThan(4 * count.refused);
  });
});

describe.each(['sfz', 'xml'] as const)('in %s with velocity layers and neighbours', (format) => {
  it('a gesture changes exactly the values that it shows, and is always written', () => {
    const made = new Set<string>();
    fc.assert(
      fc.property(anyLayered, anyGesture, (text, gestureOf) => {
        const read = readText('sfz', text);
        const instrument = format === 'sfz' ? read : readText('xml', notations.xml.write(read).text);
        const gesture = gestureOf(buildMapScene(instrument).shapes.length);
        const what = make(notations[format], instrument, gesture, (texts) =>
          readText(format, texts[instrument.sources[0].path]),
        );
        // With an offset the lowest key is out of reach.
        if (!text.startsWith('<control>')) expect(what).not.toBe('refused');
        if (what === 'made') made.add(gesture.kind);
      }),
      { numRuns: format === 'sfz' ? 300 : 200 },
    );
    expect([...made].sort()).toEqual(['drag', 'join', 'layers', 'root', 'split', 'spread']);
  });
});

describe.each(Object.entries(examples))('in the vocabulary of %s', (_name, { vocabulary, text }) => {
  it('a gesture changes exactly the values that it shows', () => {
    const notation = vocabularyNotation(vocabulary);
    const instrument = notation.read(text, { path: '/music/main.xml' });
    const { length } = buildMapScene(instrument).shapes;
    const count = { made: 0, refused: 0, nothing: 0 };
    fc.assert(
      fc.property(anyGesture, (gestureOf) => {
        count[
          make(notation, instrument, gestureOf(length), (texts) =>
            notation.read(texts['/music/main.xml'], { path: '/music/main.xml' }),
          )
        ]++;
      }),
      { numRuns: 20 },
    );
    expect(count.made).toBeGreaterThan(count.refused);
  });
});
