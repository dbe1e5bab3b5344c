import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { playableInstrument } from '../../../../server/playing/playable/makePlayable';
import { playMessage } from '../../../../server/playing/player/playMessage';
import { coveringStrikes } from '../../../../server/playing/sweep/coveringStrikes';
import { playUpTo, strikeOf } from '../../../../server/playing/sweep/playedNote';
import { readSfz } from '../../../../server/sfz/read';
import { startedIn } from '../actions';
import { action, text } from '../anyInstrument';
import { RealPlayer } from '../realPlayer';

function coverageOf(sfz: string) {
  return coveringStrikes(playableInstrument(readSfz(`<global> sample=*sine\n${sfz}`, { path: 'a.sfz' })));
}

describe('strikes that cover an instrument', () => {
  it('are one for each state that regions ask for, and one for each step of a round robin', () => {
    const { strikes, never } = coverageOf(`<group> key=60 seq_length=2 hivel=63
<region>
<region> seq_position=2
<group> key=60 lovel=64
<region>
<region> lokey=40 hikey=50 pitch_keycenter=45`);
    expect(never).toEqual([]);
    expect(strikes.map(({ note, starts }) => [note.key, note.velocity, note.strike, starts])).toEqual([
      [60, 32, 1, [0]],
      [60, 32, 2, [1]],
      [60, 96, 1, [2]],
      [45, 96, 1, [3]],
    ]);
  });

  it('share a strike among layers and a release', () => {
    const { strikes } = coverageOf('<region> key=60\n<region> key=60\n<region> key=60 trigger=release');
    expect(strikes.map(({ starts }) => starts)).toEqual([[0, 1, 2]]);
  });

  it.each([
    ['sw_lokey=20 sw_hikey=24 sw_last=22', { keyswitch: 22 }],
    ['sw_lokey=20 sw_hikey=24 sw_lolast=23 sw_hilast=30', { keyswitch: 23 }],
    ['sw_lokey=20 sw_hikey=24 sw_last=30 sw_default=30', {}],
    ['key=60 sw_last=60', { key: 60 }],
    ['key=60 sw_down=40', { heldKeys: [40] }],
    ['lokey=60 hikey=62 sw_up=60 pitch_keycenter=60', { key: 61 }],
    ['lokey=60 hikey=62 sw_lokey=55 sw_hikey=61 sw_last=55', { key: 62, keyswitch: 55 }],
    ['sw_previous=41', { previousKey: 41 }],
    ['trigger=first sw_down=40', { key: 40 }],
    ['key=60 sw_lokey=60 sw_hikey=61 sw_last=60 on_locc1=1 on_hicc1=1', { keyswitch: 60 }],
    ['sw_previous=50 on_locc1=1 on_hicc1=1', { previousKey: 50 }],
    ['trigger=legato key=60', { heldKeys: [59] }],
    ['trigger=legato key=60 sw_up=59', { heldKeys: [61] }],
    ['locc1=64 hicc2=10', { controllers: [{ controller: 1, value: 64 }] }],
    ['locc1=64 lohdcc1=0.9', { controllers: [{ controller: 1, value: 115 }] }],
    ['locc131=100', { velocity: 114 }],
    ['hicc133=10', { key: 10 }],
    ['on_locc64=64 on_hicc64=127', { by: { controller: 64, from: 63, to: 64 } }],
    ['on_locc64=0 on_hicc64=20 locc64=10', { by: { controller: 64, from: 21, to: 10 } }],
    ['lobend=100', { bend: 100 }],
    ['hibend=-100', { bend: -100 }],
    ['lochanaft=1 hichanaft=5', { channelPressure: 1 }],
    ['lopolyaft=9', { polyPressure: 9 }],
    ['lochan=3 hichan=4', { channel: 3 }],
    ['loprog=7', { program: 7 }],
    ['lobpm=60 hibpm=100', { tempoBpm: 80 }],
    ['lorand=0.9', {}],
    ['lorand=0.2 hirand=0.3 seq_length=3 seq_position=3', {}],
    ['lotimer=5 trigger=release', {}],
    ['trigger=release_key', {}],
  ])('find what %s asks for', (opcodes, state) => {
    const { strikes, never } = coverageOf(`<region> ${opcodes}`);
    expect(never).toEqual([]);
    expect(strikes).toHaveLength(1);
    expect(strikes[0]).toMatchObject({ starts: [0], note: state });
  });

  it('have a neighbour start the group where a timer asks for that', () => {
    const { strikes, never } = coverageOf(
      '<global> sample=*sine group=1\n<region> key=60 hitimer=0.2\n<region> key=50',
    );
    expect(never).toEqual([]);
    expect(strikes[0]?.note).toMatchObject({ key: 60, previousKey: 50 });
  });

  it('lift the pedals for release regions', () => {
    const { strikes } = coverageOf(
      '<control> set_cc64=127 set_cc66=127\n<region> sample=*sine trigger=release',
    );
    expect(strikes[0]?.starts).toEqual([0]);
  });

  it.each([
    ['lokey=60 hikey=59', 'key'],
    ['lokey=-1', 'key'],
    ['lovel=80 hivel=70', 'velocity'],
    ['hivel=0', 'velocity'],
    ['sw_lokey=20 sw_hikey=24 sw_last=30', 'keyswitch'],
    ['key=60 sw_up=60', 'keyswitch'],
    ['sw_down=60 sw_up=60', 'keyswitch'],
    ['locc1=64 hicc1=63', 'controller'],
    ['seq_length=2 seq_position=3', 'sequence'],
    ['lorand=0.5 hirand=0.5', 'random'],
    ['on_locc64=0 on_hicc64=127', 'trigger'],
    ['key=60 trigger=first sw_down=40', 'trigger'],
    ['locc1=64 on_locc1=0 on_hicc1=0', 'controller'],
    ['hitimer=1', 'trigger'],
    ['lobend=10 hibend=9', 'bend'],
    ['lochanaft=10 hichanaft=9', 'pressure'],
    ['end=-1', 'off'],
    ['end=-1 trigger=release', 'off'],
    ['end=-1 seq_length=3 seq_position=3', 'off'],
    ['end=-1 on_locc1=10 on_hicc1=20', 'off'],
  ])('never let %s sound', (opcodes, reason) => {
    const { strikes, never } = coverageOf(`<region> ${opcodes}`);
    expect(strikes).toEqual([]);
    expect(never).toMatchObject([{ region: 0, reason }]);
  });
});

describe('the cover of any instrument', () => {
  it('starts every region or gives the reason, and each strike starts what it says from a fresh start', () => {
    fc.assert(
      fc.property(text, fc.nat(), (sfz, seed) => {
        const playable = playableInstrument(readSfz(sfz, { path: 'a.sfz' }));
        const { strikes, never } = coveringStrikes(playable, seed);
        const covered = new Set(strikes.flatMap(({ starts }) => starts));
        for (const { region } of never) expect(covered.has(region)).toBe(false);
        expect(covered.size + never.length).toBe(playable.regionCount);
        for (const { note, starts } of strikes) {
          const { player, timeSeconds } = playUpTo(playable, note, seed);
          const started = strikeOf(note).messages.flatMap(({ seconds, message }) =>
            playMessage(player, message, timeSeconds + seconds).flatMap((event) =>
              event.kind === 'start' ? [event.region] : [],
            ),
          );
          expect(started).toEqual(starts);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('gives up no region that some playing starts', () => {
    fc.assert(
      fc.property(
        text,
        fc.array(action, { minLength: 20, maxLength: 60 }),
        fc.nat(),
        (sfz, actions, seed) => {
          const real = new RealPlayer(readSfz(sfz, { path: 'a.sfz' }), seed);
          const never = coveringStrikes(real.playable, seed).never.map(({ region }) => region);
          for (const [seconds, one] of actions.entries()) {
            for (const region of startedIn(real.act(one, seconds))) expect(never).not.toContain(region);
          }
        },
      ),
      { numRuns: 600 },
    );
  });
});
