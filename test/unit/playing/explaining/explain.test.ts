import { describe, expect, it } from 'vitest';
import { explain } from '../../../../server/playing/explaining/explain';
import { playableInstrument } from '../../../../server/playing/playable/makePlayable';
import { keyswitchState, playUpTo } from '../../../../server/playing/sweep/playedNote';
import { readSfz } from '../../../../server/sfz/read';

/**
 * The reason and message of each region of some text for key 60 at velocity 100 after keys were pressed, with some still
 * down.
 */
function whySilent(text: string, taps: readonly number[] = [], held: readonly number[] = []): string[] {
  const playable = playableInstrument(readSfz(`<global> sample=*sine\n${text}`, { path: 'a.sfz' }));
  const { player } = playUpTo(playable, { key: 60, velocity: 100 }, 1);
  for (const key of taps) {
    player.noteOn(key, 100, 0);
    player.noteOff(key, 0, 1);
  }
  for (const key of held) player.noteOn(key, 100, 2);
  const { silent } = explain(playable, player, { key: 60, velocity: 100, timeSeconds: 5 });
  return silent.map(({ reason, message }) => `${reason}: ${message}`);
}

// The conditions: public documentation of the open SFZ format (CC0 1.0), each opcode's page. Which reason is told first is
// our choice.
describe('the messages of an explanation', () => {
  it.each([
    ['hikey=59', 'key: It answers keys 0 (C-1) to 59 (B3), not 60 (C4).'],
    ['key=59', 'key: It answers key 59 (B3), not 60 (C4).'],
    [
      'lokey=70 hikey=65',
      'key: Its lowest key 70 (A#4) lies above its highest, 65 (F4), so no key starts it.',
    ],
    ['lokey=-1', 'key: Keys are turned off for it (-1), and nothing else starts it.'],
    [
      'hikey=-1 on_locc64=64 on_hicc64=127',
      'key: It is started not by a key but by controller 64 when it reaches 64 to 127.',
    ],
    ['hivel=99', 'velocity: It answers velocities 1 to 99, not 100.'],
    ['sw_last=24', 'keyswitch: It sounds after the keyswitch 24 (C1); none was pressed yet.'],
    [
      'sw_last=24 sw_default=25',
      'keyswitch: It sounds after the keyswitch 24 (C1); until one is pressed 25 (C#1) counts.',
    ],
    [
      'sw_lolast=24 sw_hilast=26',
      'keyswitch: It sounds after a keyswitch of keys 24 (C1) to 26 (D1); none was pressed yet.',
    ],
    ['sw_down=24', 'keyswitch: It sounds while 24 (C1) is held; it is not.'],
    ['sw_previous=24', 'keyswitch: It sounds after the note 24 (C1); there was no note before.'],
    ['locc1=64', 'controller: It sounds with controller 1 at 64 to 127; it is at 0.'],
    ['lochan=2 hichan=2', 'controller: It answers MIDI channel 2; the note is on 1.'],
    ['loprog=3', 'controller: It sounds under program 3 to 127; it is 0.'],
    ['seq_length=2 seq_position=2', 'sequence: It is step 2 of 2 in its round robin; this is step 1.'],
    ['seq_position=2', 'sequence: It is step 2 of a round robin of 1, so its turn never comes.'],
    ['trigger=release', 'trigger: It sounds when the key is let go, or the pedal that holds the note.'],
    [
      'trigger=release_key',
      'trigger: It sounds when the key is let go, whether or not a pedal holds the note.',
    ],
    ['trigger=legato', 'trigger: It sounds for a legato note, with another key held; none is.'],
    [
      'start_locc1=5 start_hicc1=5',
      'trigger: It is started not by a key but by controller 1 when it reaches 5.',
    ],
    ['lobend=1', 'bend: It sounds with the pitch wheel at 1 to 8192; it is at 0.'],
    ['lochanaft=9', 'pressure: It sounds at a channel aftertouch of 9 to 127; it is 0.'],
    ['lopolyaft=9', 'pressure: It sounds at a key aftertouch of 9 to 127; it is 0.'],
    ['end=-1', 'off: Its end is below 0, which turns its sound off; it can still silence others.'],
  ])('%s', (opcodes, message) => {
    expect(whySilent(`<region> ${opcodes}`)).toEqual([message]);
  });

  it('names the reason of channel and program a controller, of tempo and timer a trigger', () => {
    expect(
      whySilent('<region> lochan=2\n<region> loprog=1\n<region> lobpm=130 hibpm=140\n<region> hitimer=1'),
    ).toEqual([
      'controller: It answers MIDI channel 2 to 16; the note is on 1.',
      'controller: It sounds under program 1 to 127; it is 0.',
      'trigger: It sounds at a tempo from 130 to below 140; it is 120.',
      'trigger: It sounds if its group last started 1 s or less before; it has not started yet.',
    ]);
    expect(whySilent('<region> key=50\n<region> lotimer=6\n<region> lotimer=1 hitimer=4', [50])).toEqual([
      'key: It answers key 50 (D3), not 60 (C4).',
      'trigger: It sounds if its group last started 6 s or more before; that was 5 s ago.',
      'trigger: It sounds if its group last started 1 to 4 s before; that was 5 s ago.',
    ]);
  });

  it('tells what was pressed and what is held', () => {
    expect(
      whySilent(
        '<global> sample=*sine sw_lokey=20 sw_hikey=29\n<region> sw_last=24\n<region> sw_previous=24',
        [24, 25],
      ),
    ).toEqual([
      'keyswitch: It sounds after the keyswitch 24 (C1); the last one pressed is 25 (C#1).',
      'keyswitch: It sounds after the note 24 (C1); the note before was 25 (C#1).',
    ]);
    expect(whySilent('<region> sw_up=24\n<region> trigger=first', [], [24])).toEqual([
      'keyswitch: It sounds while 24 (C1) is not held; it is.',
      'trigger: It sounds for a first note, with no other key held; another one is.',
    ]);
  });

  it('tells the random number', () => {
    const [message] = whySilent('<region> lorand=1');
    expect(message).toMatch(
      /^random: It sounds for random numbers from 1 to 1; this strike drew 0\.\d{1,3}\.$/,
    );
  });

  it('holds a keyswitch that a region asks to be held, and lets others go', () => {
    const text = '<region> sample=*sine key=60 sw_down=24\n<region> sample=*sine key=60 trigger=first';
    const playable = playableInstrument(readSfz(text, { path: 'a.sfz' }));
    const soundingAfter = (keyswitch: number) => {
      const { player, timeSeconds } = playUpTo(playable, {
        ...keyswitchState(playable, keyswitch),
        key: 60,
        velocity: 100,
      });
      return explain(playable, player, { key: 60, velocity: 100, timeSeconds }).sounds;
    };
    expect(soundingAfter(24)).toEqual([0]);
    expect(soundingAfter(25)).toEqual([1]);
  });
});
