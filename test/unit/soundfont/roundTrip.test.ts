import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tone } from './fontBytes';
import { brokenRules } from './publishedRules';
import { regionsOf } from './readFonts';
import { wav, writeFont } from './writtenFonts';

// What the format can hold comes back from it: model to SoundFont to model.

const samples = {
  'mono.wav': wav([tone(400, 20)]),
  'stereo.wav': wav([tone(400, 20), tone(400, 25)], { rate: 32000 }),
  // 20 frames a period: the frames around both points of this loop are the same.
  'looped.wav': wav([tone(400, 20)], { loop: [40, 339] }),
};

/** Seconds that a whole number of timecents stands for (SoundFont Technical Specification 2.04, section 9.3). */
const seconds = fc.integer({ min: -8000, max: 5000 }).map((timecents) => 2 ** (timecents / 1200));
const inTenths = (low: number, high: number) =>
  fc.integer({ min: low * 10, max: high * 10 }).map((value) => value / 10);
const pair = (low: number, high: number) =>
  fc
    .tuple(fc.integer({ min: low, max: high }), fc.integer({ min: low, max: high }))
    .map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);

const region = fc.record(
  {
    sample: fc.constantFrom('mono.wav', 'stereo.wav', 'looped.wav'),
    keys: pair(0, 127),
    velocities: pair(1, 127),
    pitch_keycenter: fc.integer({ min: 0, max: 127 }),
    tune: fc.integer({ min: -100, max: 100 }),
    transpose: fc.integer({ min: -48, max: 48 }),
    pitch_keytrack: fc.integer({ min: 0, max: 1200 }),
    // Low enough for what a resonance is made up for by.
    volume: inTenths(-60, -24),
    offset: fc.integer({ min: 1, max: 30 }),
    group: fc.integer({ min: 1, max: 100 }),
    effect1: inTenths(0, 100),
    effect2: inTenths(0, 100),
    cutoff: fc.integer({ min: 1500, max: 13499 }).map((cents) => 440 * 2 ** ((cents - 6900) / 1200)),
    resonance: inTenths(0, 40),
    ampeg_delay: seconds,
    ampeg_attack: seconds,
    ampeg_hold: seconds,
    ampeg_decay: seconds.map((time) => time * 0.9),
    ampeg_release: seconds.map((time) => time * 0.9),
    ampeg_sustain: fc.integer({ min: 1, max: 999 }).map((centibels) => 100 * 10 ** (-centibels / 200)),
    amp_veltrack: fc.constantFrom(0, 100),
    amp_keytrack: fc.constantFrom(-1, -0.5, 0.25),
    fil_veltrack: fc.integer({ min: -94, max: 94 }).map((step) => step * 127),
    pitch_veltrack: fc.integer({ min: -94, max: 94 }).map((step) => step * 127),
    fileg_depth: fc.integer({ min: -12000, max: 12000 }),
    fileg_attack: seconds,
    fileg_sustain: inTenths(1, 100),
    pitchlfo_depth: fc.integer({ min: -1200, max: 1200 }),
    pitchlfo_freq: fc.integer({ min: -7000, max: 1500 }).map((cents) => 440 * 2 ** ((cents - 6900) / 1200)),
    locc20: fc.constant(64),
  },
  { requiredKeys: ['sample', 'keys', 'velocities', 'pitch_keycenter', 'volume'] },
);

type Region = { [Name in keyof typeof region extends never ? never : string]?: unknown };

/** A region as text; values that need one another come together. */
function textOf(one: Region): string {
  const { keys, velocities, group, ...rest } = one as Record<string, unknown> & {
    keys: readonly number[];
    velocities: readonly number[];
  };
  const opcodes: [string, unknown][] = [
    ['lokey', keys[0]],
    ['hikey', keys[1]],
    ['lovel', velocities[0]],
    ['hivel', velocities[1]],
    ...Object.entries(rest),
  ];
  if (group !== undefined) opcodes.push(['group', group], ['off_by', group]);
  return `<region> ${opcodes.map(([name, value]) => `${name}=${value}`).join(' ')}`;
}

const usual: Record<string, number> = {
  lokey: 0,
  hikey: 127,
  lovel: 1,
  hivel: 127,
  tune: 0,
  pitch_keytrack: 100,
  offset: 0,
  effect1: 0,
  effect2: 0,
  resonance: 0,
  ampeg_delay: 0,
  ampeg_attack: 0,
  ampeg_hold: 0,
  ampeg_decay: 0,
  ampeg_release: 0,
  ampeg_sustain: 100,
  amp_veltrack: 100,
  amp_keytrack: 0,
  fil_veltrack: 0,
  pitch_veltrack: 0,
  fileg_depth: 0,
  fileg_attack: 0,
  fileg_sustain: 0,
  pitchlfo_depth: 0,
  pitchlfo_freq: 0,
  locc20: 0,
  volume: 0,
  cutoff: 0,
};

/** The values of a region that can be heard, in one form whichever way they are written. */
function heard(values: Record<string, unknown>): Record<string, number> {
  const number = (name: string) => Number(values[name] ?? usual[name]);
  const all = Object.fromEntries(Object.keys(usual).map((name) => [name, number(name)]));
  all.tune = 100 * Number(values.transpose ?? 0) + number('tune');
  all.pitch_keycenter = Number(values.pitch_keycenter);
  if (all.cutoff === 0) for (const name of ['resonance', 'fil_veltrack', 'fileg_depth']) all[name] = 0;
  if (all.fileg_depth === 0) for (const name of ['fileg_attack', 'fileg_sustain']) all[name] = 0;
  if (all.pitchlfo_depth === 0 || all.pitchlfo_freq === 0) all.pitchlfo_freq = all.pitchlfo_depth = 0;
  // Nothing decays to where it is.
  if (all.ampeg_sustain === 100) all.ampeg_decay = 0;
  return all as Record<string, number>;
}

describe('model to SoundFont to model', () => {
  it('keeps what the format can hold', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(region, { minLength: 1, maxLength: 6 }), async (regions) => {
        const text = regions.map((one) => textOf(one as Region)).join('\n');
        const { bytes, messages } = await writeFont({ Any: text }, samples);
        // What all lose where a region could be louder than its sample is noted, to a tenth.
        const loss = Number(/all of it is ([\d.]+) dB softer/.exec(messages.join())?.[1] ?? 0);
        expect(brokenRules(bytes)).toEqual([]);
        const back = await regionsOf(bytes);
        expect(back.regions).toHaveLength(regions.length);
        const classes = new Map<unknown, unknown>();
        for (const [at, one] of regions.entries()) {
          const { keys, velocities, ...rest } = one;
          const before = heard({
            ...rest,
            lokey: keys[0],
            hikey: keys[1],
            lovel: velocities[0],
            hivel: velocities[1],
          });
          before.volume = before.volume! - loss;
          const after = heard(back.regions[at]!);
          expect(Object.keys(after)).toEqual(Object.keys(before));
          for (const [name, value] of Object.entries(before)) {
            // Half a timecent or cent, half a centibel, and the seventh digit of what is written.
            const tolerance = Math.max(
              Math.abs(value) * 4e-4,
              /volume/.test(name) ? 0.11 : /keytrack/.test(name) ? 0.001 : 1e-6,
            );
            expect(
              Math.abs(after[name]! - value),
              `${name} ${value} ${after[name]} of ${text}`,
            ).toBeLessThanOrEqual(tolerance);
          }
          const group = back.regions[at]!.group;
          expect(group === undefined).toBe(one.group === undefined);
          if (classes.has(one.group)) expect(group).toBe(classes.get(one.group));
          classes.set(one.group, group);
          expect(back.regions[at]!.sample).toBe(one.sample);
          if (one.sample === 'looped.wav')
            expect(back.regions[at]).toMatchObject({
              loop_mode: 'loop_continuous',
              loop_start: 40,
              loop_end: 339,
            });
        }
      }),
      { numRuns: 60 },
    );
  });
});
