import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createPlayer } from '../../../server/playing/createPlayer';
import type { PlayEvent } from '../../../server/playing/events';
import { explain } from '../../../server/playing/explain';
import { playableInstrument } from '../../../server/playing/makePlayable';
import { readSfz } from '../../../server/sfz/read';
import type { Action } from './slowPlayer';
import { SlowPlayer } from './slowPlayer';

/** A handful of keys, so that what is played meets what is written. */
const key = fc.integer({ min: 57, max: 63 });
const velocity = fc.constantFrom(1, 40, 63, 64, 100, 127);
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
const text = fc
  .array(header, { minLength: 1, maxLength: 8 })
  .map(
    (headers) =>
      `<global> sample=*sine\n${headers.map(([name, opcodes]) => `<${name}> ${opcodes.join(' ')}`).join('\n')}`,
  );

const action: fc.Arbitrary<Action> = fc.oneof(
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

/** The real player, told of the same actions. */
class RealPlayer {
  readonly playable;
  readonly player;
  readonly #regionOf = new Map<number, number>();
  #sounding: number[] = [];

  constructor(instrument: ReturnType<typeof readSfz>, seed: number) {
    this.playable = structuredClone(playableInstrument(instrument));
    this.player = createPlayer(this.playable, { seed });
  }

  act(action: Action, seconds: number): string[] {
    const { player } = this;
    switch (action.kind) {
      case 'on':
        return this.#tell(player.noteOn(action.key, action.velocity, seconds));
      case 'off':
        return this.#tell(player.noteOff(action.key, 0, seconds));
      case 'controller':
        return this.#tell(player.controller(action.number, action.value, seconds));
      case 'bend':
        return this.#tell(player.bend(action.value, seconds));
      case 'pressure':
        return this.#tell(player.channelPressure(action.value, seconds));
      case 'ended':
        player.voiceEnded(this.#sounding.shift() ?? -1);
        return [];
    }
  }

  #tell(events: readonly PlayEvent[]): string[] {
    return events.map((event) => {
      if (event.kind === 'start') {
        this.#regionOf.set(event.voice, event.region);
        this.#sounding.push(event.voice);
        return `start ${event.region}`;
      }
      const region = this.#regionOf.get(event.voice);
      if (event.kind === 'release') return `release ${region}`;
      this.#sounding = this.#sounding.filter((voice) => voice !== event.voice);
      return `stop ${region} ${typeof event.how === 'string' ? event.how : `${event.how.seconds} s`}`;
    });
  }
}

describe('any instrument, played in any way', () => {
  it('answers as a slow, plain player does', () => {
    fc.assert(
      fc.property(text, fc.array(action, { maxLength: 40 }), fc.nat(), (sfz, actions, seed) => {
        const instrument = readSfz(sfz, { path: 'a.sfz' });
        const [real, slow] = [new RealPlayer(instrument, seed), new SlowPlayer(instrument, seed)];
        for (const [seconds, one] of actions.entries()) {
          expect(real.act(one, seconds)).toEqual(slow.act(one, seconds));
        }
      }),
      { numRuns: 1500 },
    );
  });

  it('starts what explaining says, and explaining changes nothing', () => {
    fc.assert(
      fc.property(
        text,
        fc.array(action, { maxLength: 25 }),
        key,
        velocity,
        fc.nat(),
        (sfz, actions, key, velocity, seed) => {
          const instrument = readSfz(sfz, { path: 'a.sfz' });
          const [asked, unasked] = [new RealPlayer(instrument, seed), new RealPlayer(instrument, seed)];
          for (const [seconds, one] of actions.entries()) {
            explain(asked.playable, asked.player, { key, velocity, timeSeconds: seconds });
            expect(asked.act(one, seconds)).toEqual(unasked.act(one, seconds));
          }
          const { sounds, silent } = explain(asked.playable, asked.player, {
            key,
            velocity,
            timeSeconds: 99,
          });
          const starts = unasked
            .act({ kind: 'on', key, velocity }, 99)
            .filter((told) => told.startsWith('start'));
          expect(sounds.map((region) => `start ${region}`)).toEqual(starts);
          expect([...sounds, ...silent.map(({ region }) => region)].sort((a, b) => a - b)).toEqual([
            ...instrument.regions.keys(),
          ]);
          for (const { message } of silent) expect(message).not.toMatch(/undefined|NaN|Infinity/);
        },
      ),
      { numRuns: 500 },
    );
  });
});
