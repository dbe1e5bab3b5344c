import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { SampleSurvey } from '../../../server/model/samples';
import { applyFix, checkText } from './markedText';
import { measuredSamples, survey } from './measuredStub';

const level = fc.double({ min: 0, max: 1, noNaN: true });
const loudness = fc.option(fc.double({ min: -70, max: 0, noNaN: true }));

const anySurvey: fc.Arbitrary<SampleSurvey> = fc
  .record({
    peak: level,
    dcOffset: fc.tuple(fc.double({ min: -1, max: 1, noNaN: true })),
    leadingSilenceFrames: fc.integer({ min: 0, max: 44100 }),
    endLevelDb: fc.oneof(fc.double({ min: -90, max: 0, noNaN: true }), fc.constant(Number.NEGATIVE_INFINITY)),
    endStep: level,
    greatestEndStep: level,
    clipping: fc.option(
      fc.record({
        runs: fc.integer({ min: 1, max: 100 }),
        frames: fc.integer({ min: 3, max: 44100 }),
        firstFrame: fc.integer({ min: 0, max: 44000 }),
      }),
    ),
    channelCorrelation: fc.option(fc.double({ min: -1, max: 1, noNaN: true })),
    isWhole: fc.boolean(),
    hasEqualChannels: fc.boolean(),
    momentaryLoudness: loudness,
  })
  .map((found) => survey({ ...found, loudness: found.momentaryLoudness }));

const names = ['a.wav', 'b.wav', 'c.wav'];

const anyRegion = fc
  .record({
    sample: fc.constantFrom(...names),
    lokey: fc.integer({ min: 0, max: 127 }),
    width: fc.integer({ min: 0, max: 20 }),
    velocities: fc.constantFrom('', 'hivel=63', 'lovel=64', 'lovel=40 hivel=80'),
    more: fc.constantFrom(
      '',
      'offset=1000',
      'volume=-12',
      'amplitude=0',
      'amplitude=x',
      'amp_veltrack=0',
      'end=-1',
      'end=100',
      'loop_mode=one_shot',
      'trigger=release',
      'seq_length=2',
    ),
  })
  .map(
    ({ sample, lokey, width, velocities, more }) =>
      `<region> sample=${sample} lokey=${lokey} hikey=${Math.min(127, lokey + width)} ${velocities} ${more}`,
  );

const whole = fc.record({
  surveys: fc.tuple(...names.map(() => fc.option(anySurvey, { nil: null }))),
  regions: fc.array(anyRegion, { minLength: 1, maxLength: 12 }),
});

it('whatever is measured, a file has at most one finding of a kind, without numbers that are none', () => {
  const ofFiles = ['silence-before', 'tail-cut', 'end-click', 'dc-offset', 'clipped', 'opposite-phase'];
  fc.assert(
    fc.property(whole, ({ surveys, regions }) => {
      const samples = measuredSamples(
        Object.fromEntries(names.map((name, at) => [name, { survey: surveys[at] ?? null }])),
      );
      const { findings } = checkText(regions.join('\n'), { samples });
      for (const { message } of findings) expect(message).not.toMatch(/NaN|Infinity|undefined/);
      const told = findings
        .filter(({ code }) => ofFiles.includes(code))
        .map(({ code, message }) => `${code} ${/"(.\.wav)"/.exec(message)?.[1]}`);
      expect(new Set(told).size).toBe(told.length);
    }),
  );
});

it('skipping the silence settles the finding for all regions of the file and leaves the sound alone', () => {
  fc.assert(
    fc.property(whole, ({ surveys, regions }) => {
      const samples = measuredSamples(
        Object.fromEntries(names.map((name, at) => [name, { survey: surveys[at] ?? null }])),
      );
      const { text, findings } = checkText(regions.join('\n'), { samples });
      for (const finding of findings.filter(({ code }) => code === 'silence-before')) {
        const name = /"(.\.wav)"/.exec(finding.message)?.[1] ?? '';
        const fixed = applyFix(text, finding.fixes?.()[0]);
        const again = checkText(fixed, { samples }).findings;
        expect(again.filter(({ code, message }) => code === finding.code && message.includes(name))).toEqual(
          [],
        );
        const silence = surveys[names.indexOf(name)]?.leadingSilenceFrames ?? 0;
        for (const line of fixed.split('\n').filter((one) => one.includes(name))) {
          const offset = Number(/offset=(\d+)/.exec(line)?.[1] ?? 0);
          expect(offset).toBeLessThanOrEqual(Math.max(1000, silence));
        }
      }
    }),
  );
});
