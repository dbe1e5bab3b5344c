import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../../server/model/effectiveValues';
import { notations } from '../../../../server/workspace/notations/notationOf';
import { putInto } from './putInto';

/** Values that a region or group of a source may have; each can be said in SFZ and in instrument XML. */
const number = (least: number, most: number) => fc.integer({ min: least, max: most }).map(String);
const value = fc.oneof(
  fc.tuple(fc.constant('volume'), number(-20, 6)),
  fc.tuple(fc.constant('tune'), number(-50, 50)),
  fc.tuple(fc.constant('ampeg_release'), fc.constantFrom('0.25', '3')),
  fc.tuple(fc.constant('trigger'), fc.constantFrom('attack', 'release', 'legato')),
  fc.tuple(fc.constant('seq_length'), number(1, 4)),
  fc.tuple(fc.constant('lovel'), number(1, 60)),
  fc.tuple(fc.constant('hivel'), number(61, 127)),
  fc.tuple(fc.constant('sw_last'), number(20, 30)),
  fc.tuple(fc.constant('loop_mode'), fc.constantFrom('no_loop', 'loop_continuous')),
  fc.tuple(fc.constant('cutoff'), fc.constantFrom('500', '8000.5')),
);
const values = fc.uniqueArray(value, { maxLength: 4, selector: ([name]) => name });
const keys = fc.oneof(
  number(0, 127).map((key) => `key=${key}`),
  fc.tuple(number(0, 60), number(61, 127)).map(([low, high]) => `lokey=${low} hikey=${high}`),
);
const group = fc.record({
  label: fc.option(fc.constantFrom('Soft', 'Release', 'rr1', 'pizzicato', 'Other one')),
  values,
  regions: fc.array(fc.record({ keys, values }), { minLength: 1, maxLength: 4 }),
});
const text = (some: readonly (readonly [string, string])[]) =>
  some.map(([name, one]) => ` ${name}=${one}`).join('');

const source = fc.array(group, { minLength: 1, maxLength: 4 }).map((groups) => {
  let count = 0;
  return groups
    .map(({ label, values, regions }) => {
      const inner = regions.map(
        (one) => `<region> sample=take ${++count}.wav ${one.keys}${text(one.values)}\n`,
      );
      return `<group>${label === null ? '' : ` group_label=${label}`}${text(values)}\n${inner.join('')}`;
    })
    .join('');
});

const lines = fc
  .array(
    fc.constantFrom('// a remark', '', '<control> set_cc7=100 label_cc7=Level', '<curve> v000=0 v127=1'),
    {
      maxLength: 4,
    },
  )
  .map((all) => all.map((line) => `${line}\n`).join(''));

const exampleGroup = fc
  .record({
    label: fc.option(fc.constantFrom('Soft', 'Release', 'rr1', 'pizzicato')),
    values,
    examples: fc.integer({ min: 1, max: 2 }),
    isLong: fc.boolean(),
    own: values,
  })
  .map(({ label, values, examples, isLong, own }) => {
    const region = isLong
      ? `<region>\nsample=x.wav\nkey=60${text(own).replaceAll(' ', '\n')}\n\n`
      : `<region> sample=x.wav lokey=c4 hikey=c4 pitch_keycenter=c4${text(own)}\n`;
    return `<group>${label === null ? '' : ` group_label=${label}`}${text(values)}\n${region.repeat(examples)}`;
  });

const template = fc.record({
  before: lines,
  global: fc.boolean(),
  groups: fc.array(exampleGroup, { minLength: 1, maxLength: 3 }),
  between: fc.constantFrom('', '// between\n', '\n/* of two\nlines */\n'),
  after: lines.map((all) => `<effect> type=reverb\n${all}`),
});

describe('any source in any template', () => {
  it('comes out whole, and all around the examples stays byte for byte', async () => {
    await fc.assert(
      fc.asyncProperty(template, source, async ({ before, global, groups, between, after }, source) => {
        const top = `${before}${global ? '<global> ampeg_attack=0.1 hivel=90\n' : ''}${between}`;
        const { text, result, notes, kept } = await putInto(top + groups.join(between) + after, source);
        expect(text.startsWith(top)).toBe(true);
        expect(text.endsWith(after)).toBe(true);
        expect(text.split('// between')).toHaveLength(between.startsWith('//') ? groups.length + 1 : 1);
        const given = notations.sfz.read(source, { path: 'source' });
        const there = new Map(
          [...result.regions].map((region) => [result.samplePath(region), region] as const),
        );
        expect(there.size).toBe(given.regions.length);
        for (const region of given.regions) {
          const written = there.get(given.samplePath(region)) ?? -1;
          expect(effectiveValues(result, written)).toMatchObject(effectiveValues(given, region));
          // Where velocities or keys are said, the template narrows neither.
          // Levels, tunings and conditions of example regions are theirs alone.
          const own = effectiveValues(given, region);
          const ofGroups = groups.map((one) => one.split('\n')[0]).join(' ');
          for (const name of ['volume', 'tune', 'trigger', 'seq_length', 'sw_last', 'lovel'])
            if (!(name in own) && !ofGroups.includes(` ${name}=`))
              expect(effectiveValues(result, written)).not.toHaveProperty(name);
          const { lovel, hivel } = effectiveValues(given, region);
          expect([result.lowKey[written], result.highKey[written]]).toEqual([
            given.lowKey[region],
            given.highKey[region],
          ]);
          if (lovel === undefined && hivel === undefined) continue;
          expect(result.highVelocity[written]).toBe(given.highVelocity[region]);
        }
        const lost = notes.filter(({ kind }) => kind === 'dropped' || kind === 'ignored');
        expect(kept + lost.length).toBe(given.parameters.count);
      }),
      { numRuns: 100 },
    );
  });
});
