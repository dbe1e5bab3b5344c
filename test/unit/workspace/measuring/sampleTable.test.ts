import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LoopSeam, MeasuredPitch, SampleFacts, SampleSurvey } from '../../../../server/model/samples';
import { measureKey, measureVersions } from '../../../../server/workspace/measuring/measureRequest';
import { SampleTable } from '../../../../server/workspace/measuring/sampleTable';

const number = fc.double({ noNaN: true });
const count = fc.nat({ max: 2 ** 40 });
const numberOrNull = fc.option(number);

const facts: fc.Arbitrary<SampleFacts> = fc.record({
  container: fc.constantFrom('wav', 'aiff', 'flac', 'ogg'),
  encoding: fc.oneof(fc.constantFrom('pcm', 'float', 'vorbis'), fc.string({ unit: 'binary' })),
  sampleRate: number,
  channels: count,
  bitsPerSample: count,
  frames: count,
  lengthSeconds: number,
  loops: fc.array(
    fc.record({
      start: count,
      end: count,
      type: fc.constantFrom('forward' as const, 'alternating' as const, 'backward' as const),
    }),
    { maxLength: 3 },
  ),
  rootKey: numberOrNull,
  fineTuneCents: numberOrNull,
  problems: fc.array(
    fc.record({ kind: fc.constantFrom('cut-short' as const, 'chunk-broken' as const), message: fc.string() }),
    { maxLength: 2 },
  ),
});

const pitch: fc.Arbitrary<MeasuredPitch> = fc.record({
  hertz: number,
  key: number,
  cents: number,
  confidence: number,
});

const survey: fc.Arbitrary<SampleSurvey> = fc.record({
  frames: count,
  peak: number,
  dcOffset: fc.array(number, { maxLength: 4 }),
  leadingSilenceFrames: count,
  trailingSilenceFrames: count,
  endLevelDb: number,
  endStep: number,
  greatestEndStep: number,
  clipping: fc.option(fc.record({ runs: count, frames: count, firstFrame: count })),
  channelCorrelation: numberOrNull,
  isWhole: fc.boolean(),
  hasEqualChannels: fc.boolean(),
  loudness: numberOrNull,
  momentaryLoudness: numberOrNull,
});

const seam: fc.Arbitrary<LoopSeam> = fc.record(
  {
    isAudible: fc.boolean(),
    step: number,
    greatestStep: number,
    bend: number,
    greatestBend: number,
    spectrumChange: number,
    greatestSpectrumChange: number,
    better: fc.record({ start: count, end: count }),
    crossfadeFrames: count,
  },
  {
    requiredKeys: [
      'isAudible',
      'step',
      'greatestStep',
      'bend',
      'greatestBend',
      'spectrumChange',
      'greatestSpectrumChange',
    ],
  },
);

const file = fc.record({
  name: fc.string({ unit: 'binary' }),
  size: count,
  modified: fc.double({ min: 0, max: 1e14, noNaN: true }),
  facts: fc.option(facts, { nil: undefined }),
  pitch: fc.option(fc.option(pitch), { nil: undefined }),
  survey: fc.option(fc.option(survey), { nil: undefined }),
  seams: fc.array(fc.tuple(count, count, fc.option(seam)), { maxLength: 2 }),
});

const pitchKey = measureKey({ what: 'pitch' });
const surveyKey = measureKey({ what: 'survey' });

describe('a table of sample files', () => {
  it('gives back what was put in, also after it was written, whatever the names and numbers', () => {
    fc.assert(
      fc.property(fc.uniqueArray(file, { selector: ({ name }) => name, maxLength: 40 }), (files) => {
        const table = new SampleTable();
        const expected = files.map((one) => {
          const measures: Record<string, unknown> = {};
          const row = table.rowFor(one.name, one);
          if (one.facts) table.setFacts(row, one.facts);
          if (one.pitch !== undefined) measures[pitchKey] = one.pitch;
          if (one.survey !== undefined) measures[surveyKey] = one.survey;
          for (const [start, end, result] of one.seams)
            measures[measureKey({ what: 'loopSeam', start, end })] = result;
          table.setMeasures(row, measures as never);
          return { ...one, measures };
        });
        for (const kept of [table, SampleTable.from(table.bytes())]) {
          expect(kept.count).toBe(files.length);
          for (const { name, size, modified, facts: known, measures } of expected) {
            const row = kept.find(name, { size, modified });
            // A table that was written holds odd values as JSON, which has one zero.
            expect(plain(kept.facts(row))).toEqual(plain(known));
            for (const [key, result] of Object.entries(measures))
              expect(plain(kept.measure(row, key))).toEqual(plain(result));
            for (const key of [pitchKey, surveyKey, 'other'])
              expect(kept.measure(row, key) === undefined).toBe(!(key in measures));
            expect(kept.hasFacts(row)).toBe(known !== undefined);
          }
        }
      }),
    );
  });

  it('keeps no room for measures where nothing was measured, and makes it when something is', () => {
    const table = new SampleTable();
    const rows = Array.from({ length: 100 }, (_, at) => table.rowFor(`${at}.wav`, { size: at, modified: 1 }));
    const unmeasured = table.bytes();
    const found = { hertz: 440, key: 69, cents: 0, confidence: 1 };
    table.setMeasures(rows[70], { [pitchKey]: found });
    for (let at = 100; at < 300; at++) table.rowFor(`${at}.wav`, { size: at, modified: 1 });
    for (const kept of [table, SampleTable.from(table.bytes())]) {
      expect(kept.measure(70, pitchKey)).toEqual(found);
      expect(kept.measure(71, pitchKey)).toBeUndefined();
      expect(kept.find('299.wav', { size: 299, modified: 1 })).toBe(299);
    }
    // A pitch and a survey are twenty numbers.
    const measured = SampleTable.from(unmeasured);
    measured.setMeasures(70, { [pitchKey]: found });
    expect(measured.bytes().length - unmeasured.length).toBeGreaterThan(100 * 20 * 8 - 10);
  });

  it('forgets a file in another state, and takes a later result for an earlier', () => {
    const table = new SampleTable();
    const row = table.rowFor('a.wav', { size: 1, modified: 2 });
    table.setMeasures(row, { [pitchKey]: null });
    expect(table.find('a.wav', { size: 1, modified: 3 })).toBe(-1);
    const again = table.rowFor('a.wav', { size: 1, modified: 3 });
    expect(table.measure(again, pitchKey)).toBeUndefined();
    const found = { hertz: 440, key: 69, cents: 0, confidence: 1 };
    table.setMeasures(again, { [pitchKey]: null });
    table.setMeasures(again, { [pitchKey]: found });
    expect(table.measure(again, pitchKey)).toEqual(found);
    table.setMeasures(again, { [pitchKey]: null, pitch0: found, other: null });
    expect(table.measure(again, pitchKey)).toBeNull();
    expect(table.measure(again, 'pitch0')).toBeUndefined();
    expect(table.measure(again, 'other')).toBeUndefined();
  });

  it('leaves out what was not used for long when it is written', () => {
    const table = new SampleTable();
    for (const [name, day] of [
      ['old', 100],
      ['new', 200],
    ] as const)
      table.use(table.rowFor(name, { size: 1, modified: 1 }), day);
    const kept = SampleTable.from(table.bytes(150));
    expect(kept.find('old', { size: 1, modified: 1 })).toBe(-1);
    expect(kept.find('new', { size: 1, modified: 1 })).toBe(0);
  });

  it('leaves out what measures of another version gave', () => {
    const table = new SampleTable();
    const row = table.rowFor('a.wav', { size: 1, modified: 1 });
    const seamKey = measureKey({ what: 'loopSeam', start: 1, end: 2 });
    table.setMeasures(row, { [pitchKey]: null, [surveyKey]: null, [seamKey]: null });
    const text = Buffer.from(table.bytes()).toString('latin1');
    const other = (what: keyof typeof measureVersions) => {
      const changed = text.replace(
        `"${what}":${measureVersions[what]}`,
        `"${what}":${measureVersions[what] + 1}`,
      );
      expect(changed).not.toBe(text);
      const kept = SampleTable.from(Buffer.from(changed, 'latin1'));
      return [pitchKey, surveyKey, seamKey].filter((key) => kept.measure(0, key) !== undefined);
    };
    expect(other('pitch')).toEqual([surveyKey, seamKey]);
    expect(other('survey')).toEqual([pitchKey, seamKey]);
    expect(other('loopSeam')).toEqual([pitchKey, surveyKey]);
  });

  it('is empty where bytes hold none, and never fails', () => {
    const table = new SampleTable();
    table.setMeasures(table.rowFor('a.wav', { size: 1, modified: 1 }), { [pitchKey]: null });
    const whole = table.bytes();
    fc.assert(
      fc.property(
        fc.oneof(
          fc.uint8Array(),
          fc.nat(whole.length - 1).map((end) => whole.slice(0, end)),
        ),
        (bytes) => {
          expect(SampleTable.from(bytes).count).toBe(0);
        },
      ),
    );
  });
});

/** With one zero, as in JSON. */
function plain(value: unknown): unknown {
  return value === undefined
    ? undefined
    : JSON.parse(
        JSON.stringify(value, (_key, one: unknown) =>
          typeof one === 'number' && !Number.isFinite(one) ? String(one) : one,
        ),
      );
}
