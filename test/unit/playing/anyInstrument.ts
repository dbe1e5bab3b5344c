import fc from 'fast-check';
import type { Action } from './actions';

/** A handful of keys, so that what is played meets what is written. */
export const key = fc.integer({ min: 57, max: 63 });
export const velocity = fc.constantFrom(1, 40, 63, 64, 100, 127);
const span = (name: string, value: fc.Arbitrary<number>) =>
  fc
    .tuple(value, value)
    .map(([a, b]) => name.replace('LOW', String(Math.min(a, b))).replace('HIGH', String(Math.max(a, b))));
const small = fc.constantFrom(0, 1, 63, 64, 127);

const opcode = fc.oneof(
  span('lokey=LOW hikey=HIGH', key),
  span('lovel=LOW hivel=HIGH', velocity),
  fc.constantFrom('sw_lokey=57 sw_hikey=58 sw_last=57', 'sw_lokey=57 sw_hikey=58 sw_last=58 sw_default=58'),
  fc.constantFrom('sw_down=57', 'sw_up=58', 'sw_previous=60', 'sw_previous=61'),
  fc
    .tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 3 }))
    .map(([a, b]) => `seq_length=${a} seq_position=${b}`),
  span('lorand=LOW hirand=HIGH', fc.constantFrom(0, 0.25, 0.5, 0.75)),
  span('locc1=LOW hicc1=HIGH', small),
  span('locc2=LOW hicc2=HIGH', small),
  span('on_locc1=LOW on_hicc1=HIGH', small),
  span('lobend=LOW hibend=HIGH', fc.constantFrom(-8192, -1, 0, 1, 8191)),
  span('lochanaft=LOW hichanaft=HIGH', small),
  fc.constantFrom('attack', 'first', 'legato', 'release', 'release_key').map((word) => `trigger=${word}`),
  fc.constantFrom(
    'rt_dead=on',
    'loop_mode=one_shot',
    'end=-1',
    'sustain_sw=off',
    'delay=1.5',
    'sw_vel=previous',
    'rt_decay=2',
    'lokey=-1',
    'hikey=-1',
    'pitch_keycenter=61',
  ),
  fc
    .tuple(fc.integer({ min: 0, max: 2 }), fc.integer({ min: 0, max: 2 }))
    .map(([a, b]) => `group=${a} off_by=${b}`),
  fc.constantFrom('fast', 'normal', 'time off_time=0.5', 'time').map((mode) => `off_mode=${mode}`),
  fc.integer({ min: 1, max: 3 }).map((count) => `group=1 polyphony=${count}`),
  fc.integer({ min: 1, max: 2 }).map((count) => `note_polyphony=${count}`),
  fc.constantFrom('note_selfmask=off', 'note_selfmask=on'),
);

const header = fc.tuple(
  fc.constantFrom('group', 'region', 'region', 'region'),
  fc.array(opcode, { maxLength: 4 }),
);
/** SFZ text of a few regions with conditions of all kinds. */
export const text = fc
  .array(header, { minLength: 1, maxLength: 8 })
  .map(
    (headers) =>
      `<global> sample=*sine\n${headers.map(([name, opcodes]) => `<${name}> ${opcodes.join(' ')}`).join('\n')}`,
  );

const shares = fc
  .tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 4 }))
  .map(([a, b]) => `lorand=${Math.min(a, b) / 4} hirand=${Math.max(a, b) / 4}`);
const steps = fc
  .tuple(fc.integer({ min: 1, max: 3 }), fc.constantFrom(2, 3))
  .map(([position, length]) => `seq_length=${length} seq_position=${position}`);

/** SFZ text of many regions of one or two keys that have much in common, so that they are looked at and counted together. */
export const denseText = fc
  .array(
    fc.tuple(
      fc.constantFrom('key=60', 'key=60', 'lokey=60 hikey=61'),
      fc.constantFrom('', '', 'hivel=63', 'lovel=64'),
      fc.constantFrom(
        '',
        'sw_lokey=57 sw_hikey=58 sw_last=57',
        'sw_lokey=57 sw_hikey=58 sw_last=58',
        'sw_down=57',
      ),
      fc.constantFrom('', '', 'hicc1=63', 'locc1=64', 'locc1=64 locc2=1', 'lobend=1'),
      fc.oneof(fc.constant(''), shares),
      fc.oneof(fc.constant(''), steps),
      fc.constantFrom('', '', 'trigger=first', 'trigger=release'),
    ),
    { minLength: 10, maxLength: 60 },
  )
  .map(
    (regions) => `<global> sample=*sine\n${regions.map((parts) => `<region> ${parts.join(' ')}`).join('\n')}`,
  );

/** One of all things that can be done to an instrument. */
export const action: fc.Arbitrary<Action> = fc.oneof(
  { weight: 5, arbitrary: fc.record({ kind: fc.constant('on' as const), key, velocity }) },
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('off' as const), key }) },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('controller' as const),
      number: fc.constantFrom(1, 2, 64, 66),
      value: small,
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('bend' as const),
      value: fc.constantFrom(-8192, -1, 0, 1, 8191),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('pressure' as const), value: small }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('ended' as const) }) },
);
