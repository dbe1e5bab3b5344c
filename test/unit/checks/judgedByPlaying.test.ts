import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Instrument } from '../../../server/model/instrument';
import { findSwitchingKeys } from '../../../server/model/overlaps/switchingKeys';
import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import type { PlayableInstrument } from '../../../server/playing/playable/playableInstrument';
import { createPlayer } from '../../../server/playing/player/createPlayer';
import { coveringStrikes } from '../../../server/playing/sweep/coveringStrikes';
import { checkText } from './markedText';

// The player's rules have tests of their own, with the public documentation of the open SFZ format (CC0 1.0) beside them.
// Checks look at all that could be played at once; a player tries one thing after another. What a check claims of silence
// has to come true when it is played.

const range = (name: string, low: number, high: number) =>
  fc
    .tuple(fc.integer({ min: low, max: high }), fc.integer({ min: low, max: high }))
    .map(([a, b]) => `lo${name}=${Math.min(a, b)} hi${name}=${Math.max(a, b)}`);

/** SFZ text of regions with some opcodes each, and what checks find in it. */
function checked(region: fc.Arbitrary<string>, most = 6) {
  return fc
    .array(region, { minLength: 1, maxLength: most })
    .map((regions) =>
      checkText(`<global> sample=a.wav\n${regions.map((one) => `<region> ${one}`).join('\n')}`),
    );
}

function messagesOf({ findings }: ReturnType<typeof checkText>, code: string): string[] {
  return findings.filter((finding) => finding.code === code).map(({ message }) => message);
}

/** The regions that a number of strikes of a key starts, strike by strike. */
function struck(playable: PlayableInstrument, key: number, velocity: number, strikes: number): number[][] {
  const player = createPlayer(playable, { seed: 3 });
  return Array.from({ length: strikes }, (_, at) => {
    const events = player.noteOn(key, velocity, at);
    player.noteOff(key, 0, at + 0.5);
    return events.flatMap((event) => (event.kind === 'start' ? [event.region] : []));
  });
}

/** Regions that can never sound, as lines of the text. */
function neverOf(instrument: Instrument): Map<number, string> {
  const { never } = coveringStrikes(playableInstrument(instrument));
  return new Map(never.map(({ region, reason }) => [region, reason]));
}

describe('what checks say of silence comes true when it is played', () => {
  it('on keys and velocities that nothing answers', () => {
    const region = fc.tuple(range('key', 58, 70), range('vel', 1, 127)).map((both) => both.join(' '));
    fc.assert(
      fc.property(checked(region), (one) => {
        const playable = playableInstrument(one.instrument);
        for (const message of messagesOf(one, 'key-gap')) {
          const keys = [...message.matchAll(/(\d+) \(/g)].map(([, key]) => Number(key));
          for (let key = Math.min(...keys); key <= Math.max(...keys); key++) {
            for (const velocity of [1, 64, 127]) expect(struck(playable, key, velocity, 1)).toEqual([[]]);
          }
        }
        for (const message of messagesOf(one, 'velocity-gap')) {
          const [, low, high = low] = /velocit(?:y|ies) (\d+)(?: to (\d+))?/.exec(message) ?? [];
          const key = Number(/(\d+) \(/.exec(message)?.[1]);
          for (const velocity of [Number(low), Number(high)])
            expect(struck(playable, key, velocity, 1)).toEqual([[]]);
        }
      }),
      { numRuns: 160 },
    );
  });

  it('on steps of round robins that no region has, and on those past the length', () => {
    const region = fc
      .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 5 }))
      .map(([length, position]) => `key=60 seq_length=${length} seq_position=${position}`);
    let holes = 0;
    fc.assert(
      fc.property(checked(region), (one) => {
        const never = neverOf(one.instrument);
        const beyond = messagesOf(one, 'sequence-hole').filter((message) => message.startsWith('Step'));
        const isNever = [...never.values()];
        if (beyond.length > 0) expect(isNever).toContain('sequence');
        expect(isNever.length > 0).toBe(beyond.length > 0);
        const missing = messagesOf(one, 'sequence-hole').filter((message) => !message.startsWith('Step'));
        if (missing.length === 0) return;
        holes++;
        // All lengths from 1 to 4 come round in 12 strikes.
        const strikes = struck(playableInstrument(one.instrument), 60, 100, 12);
        expect(strikes.some((regions) => regions.length === 0)).toBe(true);
      }),
      { numRuns: 160 },
    );
    expect(holes).toBeGreaterThan(50);
  });

  it('for random numbers that no region takes', () => {
    const quarter = fc.integer({ min: 0, max: 4 }).map((part) => part / 4);
    const region = fc
      .tuple(quarter, quarter)
      .map(([a, b]) => `key=60 lorand=${Math.min(a, b)} hirand=${Math.max(a, b)}`);
    let holes = 0;
    fc.assert(
      fc.property(checked(region, 4), (one) => {
        if (messagesOf(one, 'random-hole').length === 0) return;
        holes++;
        const strikes = struck(playableInstrument(one.instrument), 60, 100, 100);
        expect(strikes.some((regions) => regions.length === 0)).toBe(true);
      }),
      { numRuns: 80 },
    );
    expect(holes).toBeGreaterThan(20);
  });

  it('for keyswitches that cannot be pressed', () => {
    const key = fc.integer({ min: 20, max: 26 });
    const region = fc
      .tuple(key, key, key, fc.option(key))
      .map(
        ([last, a, b, byDefault]) =>
          `key=60 sw_last=${last} sw_lokey=${Math.min(a, b)} sw_hikey=${Math.max(a, b)}${byDefault === null ? '' : ` sw_default=${byDefault}`}`,
      );
    fc.assert(
      fc.property(checked(region, 1), (one) => {
        const [message] = messagesOf(one, 'keyswitch-range');
        const isNever = message?.includes('so this never sounds.') === true;
        expect(neverOf(one.instrument).get(0)).toBe(isNever ? 'keyswitch' : undefined);
      }),
      { numRuns: 120 },
    );
  });

  it('for ranges that are upside down', () => {
    const region = fc
      .tuple(
        fc.constantFrom(['lokey', 'hikey'], ['lovel', 'hivel'], ['locc1', 'hicc1']),
        fc.integer({ min: 1, max: 100 }),
        fc.integer({ min: 1, max: 100 }),
      )
      .map(([[low, high], a, b]) => `${low}=${a} ${high}=${b}`);
    fc.assert(
      fc.property(checked(region, 1), (one) => {
        expect(neverOf(one.instrument).size).toBe(messagesOf(one, 'range-inverted').length);
      }),
      { numRuns: 80 },
    );
  });

  it('and the keys that switch are those that change what sounds', () => {
    const key = fc.integer({ min: 20, max: 24 });
    const region = fc
      .tuple(fc.constantFrom('sw_last', 'sw_down', 'sw_up'), key)
      .map(([name, value]) => `key=60 ${name}=${value}`);
    fc.assert(
      fc.property(checked(region), fc.integer({ min: -3, max: 3 }), ({ text }, moved) => {
        const { instrument } = checkText(`<control> note_offset=1 sw_note_offset=${moved}\n${text}`);
        const playable = playableInstrument(instrument);
        const asked = [playable.switchLow, playable.switchDown, playable.switchUp];
        const keys = new Set(asked.flatMap((column) => [...column].filter((one) => one >= 0)));
        const { keyswitches } = findSwitchingKeys(instrument);
        expect(keyswitches.map((one) => one.key)).toEqual([...keys].sort((a, b) => a - b));
      }),
      { numRuns: 100 },
    );
  });
});
