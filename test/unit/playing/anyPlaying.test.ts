import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explain } from '../../../server/playing/explaining/explain';
import { readSfz } from '../../../server/sfz/read';
import { startedIn } from './actions';
import { action, denseText, key, text, velocity } from './anyInstrument';
import { RealPlayer } from './realPlayer';
import { SlowPlayer } from './slowPlayer';

describe('any instrument, played in any way', () => {
  it.each([
    ['few regions with conditions of all kinds', text, 1500],
    ['many regions with much in common', denseText, 300],
  ])('answers as a slow, plain player does: %s', (_what, sfzText, numRuns) => {
    fc.assert(
      fc.property(sfzText, fc.array(action, { maxLength: 40 }), fc.nat(), (sfz, actions, seed) => {
        const instrument = readSfz(sfz, { path: 'a.sfz' });
        const [real, slow] = [new RealPlayer(instrument, seed), new SlowPlayer(instrument, seed)];
        for (const [seconds, one] of actions.entries()) {
          expect(real.act(one, seconds)).toEqual(slow.act(one, seconds));
        }
      }),
      { numRuns },
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
          const starts = startedIn(unasked.act({ kind: 'on', key, velocity }, 99));
          expect(sounds).toEqual(starts);
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
