import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Playing } from '../playing';

// The meaning of the opcodes: public documentation of the open SFZ format, pages of their names.

describe('keys and velocities', () => {
  it('hold at both ends, and key stands for both', () => {
    const playing = new Playing('<region> lokey=c4 hikey=62 lovel=10 hivel=20\n<region> key=62 hikey=63');
    expect(playing.tap(59, 15)).toEqual([]);
    expect(playing.tap(60, 10)).toEqual(['start 0']);
    expect(playing.tap(60, 9)).toEqual([]);
    expect(playing.tap(60, 21)).toEqual([]);
    expect(playing.tap(62, 20)).toEqual(['start 0', 'start 1']);
    expect(playing.tap(63, 20)).toEqual(['start 1']);
  });

  it('are moved by note_offset and octave_offset', () => {
    const playing = new Playing('<control> note_offset=-1 octave_offset=1\n<region> key=60');
    expect(playing.tap(60)).toEqual([]);
    expect(playing.tap(71)).toEqual(['start 0']);
  });

  it('start nothing where one end is -1 or the range is upside down', () => {
    const playing = new Playing('<region> lokey=-1\n<region> hikey=-1\n<region> lokey=70 hikey=60');
    for (let key = 0; key < 128; key++) expect(playing.tap(key)).toEqual([]);
  });
});

describe('controllers, channel, program, wheel, pressure, tempo', () => {
  it('hold at both ends and start at their first values', () => {
    const playing = new Playing(
      '<control> set_cc1=10 set_hdcc2=0.5\n<region> locc1=10 hicc1=20\n<region> lohdcc2=0.5 hihdcc2=0.5\n<region> locc3=1\n<region> hicc3=0',
    );
    expect(playing.tap(60)).toEqual(['start 0', 'start 1', 'start 3']);
    playing.controller(1, 21);
    playing.controller(2, 64);
    playing.controller(3, 0.5);
    expect(playing.tap(60)).toEqual([]);
    playing.controller(1, 20);
    playing.controller(3, 1);
    expect(playing.tap(60)).toEqual(['start 0', 'start 2']);
  });

  it('start at the usual values where set_cc does not say', () => {
    const playing = new Playing(
      '<region> locc7=100 hicc7=100 locc10=64 hicc10=64 locc11=127 hicc1=0 hicc64=0',
    );
    expect(playing.tap(60)).toEqual(['start 0']);
  });

  // Extended controllers of the format's public documentation, from memory.
  it('know further controllers that notes, wheel and pressure set', () => {
    const playing = new Playing(`<region> locc128=127
<region> locc129=5 hicc129=5
<region> locc130=6 hicc130=6
<region> locc131=90 hicc131=90
<region> locc132=30 hicc132=30
<region> locc133=61 hicc133=61
<region> locc134=127
<region> hicc137=0
<region> locc137=127`);
    expect(playing.tap(60)).toEqual(['start 6', 'start 7']);
    playing.player.bend(8191, 0);
    playing.player.channelPressure(5, 0);
    playing.player.polyPressure(60, 6, 0);
    playing.player.noteOn(61, 1, 0);
    playing.player.noteOff(61, 30, 0);
    expect(playing.tap(61, 90)).toEqual([0, 1, 2, 3, 4, 5, 6, 7].map((region) => `start ${region}`));
    expect(playing.tap(60)).toContain('start 8');
  });

  it('know by the gate whether some key is down', () => {
    const playing = new Playing('<region> on_locc1=1 on_hicc1=127 locc134=127');
    playing.on(60);
    playing.on(62);
    playing.off(60);
    expect(playing.controller(1, 5)).toEqual(['start 0']);
    playing.off(62);
    playing.controller(1, 0);
    expect(playing.controller(1, 5)).toEqual([]);
  });

  it('ask for every controller that is named', () => {
    const playing = new Playing('<region> locc1=64 locc2=64');
    playing.controller(1, 100);
    expect(playing.tap(60)).toEqual([]);
    playing.controller(2, 64);
    expect(playing.tap(60)).toEqual(['start 0']);
  });

  it('ask for the channel, the program and the tempo', () => {
    const text =
      '<region> lochan=2 hichan=3\n<region> loprog=5 hiprog=6\n<region> lobpm=90 hibpm=120\n<region> lobpm=120';
    const playing = new Playing(text);
    expect(playing.tap(60)).toEqual(['start 3']);
    playing.player.program(5, 0);
    expect(playing.tap(60)).toEqual(['start 1', 'start 3']);
    expect(new Playing(text, { channel: 3, tempoBpm: 119 }).tap(60)).toEqual(['start 0', 'start 2']);
  });

  it('ask for the wheel and for the pressure of channel and key', () => {
    const playing = new Playing(
      '<region> lobend=1\n<region> lochanaft=64\n<region> lopolyaft=64\n<region> hibend=-1',
    );
    expect(playing.tap(60)).toEqual([]);
    playing.player.bend(1, 0);
    playing.player.polyPressure(60, 64, 0);
    expect(playing.tap(61)).toEqual(['start 0']);
    expect(playing.tap(60)).toEqual(['start 0', 'start 2']);
    playing.player.bend(-8192, 0);
    playing.player.channelPressure(127, 0);
    playing.player.polyPressure(60, 63, 0);
    expect(playing.tap(60)).toEqual(['start 1', 'start 3']);
  });

  it('measure the time from the last start of the group', () => {
    const playing = new Playing(
      '<region> group=1 key=60 hitimer=2\n<region> group=1 key=60 lotimer=2\n<region> group=2 key=61',
    );
    expect(playing.on(60)).toEqual(['start 1']);
    playing.seconds = 1.5;
    playing.on(61);
    playing.seconds = 2;
    expect(playing.on(60)).toEqual(['start 0', 'start 1']);
    playing.seconds = 3.9;
    expect(playing.on(60)).toEqual(['start 0']);
    playing.seconds = 6.1;
    expect(playing.on(60)).toEqual(['start 1']);
  });
});

describe('round robins', () => {
  it('count for each region the strikes that meet its other conditions', () => {
    const playing = new Playing(`<global> seq_length=2
<group> hivel=63
<region>
<region> seq_position=2
<group> lovel=64
<region>
<region> seq_position=2`);
    expect(playing.tap(60, 30)).toEqual(['start 0']);
    expect(playing.tap(60, 90)).toEqual(['start 2']);
    expect(playing.tap(60, 90)).toEqual(['start 3']);
    expect(playing.tap(60, 30)).toEqual(['start 1']);
    expect(playing.tap(60, 30)).toEqual(['start 0']);
  });

  it('never come to a step beyond the length', () => {
    const playing = new Playing(
      '<region> seq_length=2 seq_position=3\n<region> seq_position=2\n<region> seq_length=1',
    );
    for (let strike = 0; strike < 7; strike++) expect(playing.tap(60)).toEqual(['start 2']);
  });

  it('count releases for regions that those start', () => {
    const playing = new Playing(
      '<group> trigger=release seq_length=2\n<region>\n<region> seq_position=2\n<group>\n<region> trigger=attack',
    );
    playing.on(60);
    expect(playing.off(60)).toEqual(['release 2', 'start 0']);
    playing.on(60);
    expect(playing.off(60)).toEqual(['release 2', 'start 1']);
  });
});

describe('random numbers', () => {
  it('let exactly one of the regions sound that share them out, each about as often as its part is wide', () => {
    const playing = new Playing(
      '<region> hirand=0.25\n<region> lorand=0.25 hirand=0.75\n<region> lorand=0.75',
    );
    const counts = [0, 0, 0];
    for (let strike = 0; strike < 4000; strike++) {
      const told = playing.tap(60);
      expect(told).toHaveLength(1);
      counts[Number(told[0]?.split(' ')[1])]++;
    }
    // Five standard deviations of a binomial distribution of 4000 draws (probability theory).
    for (const [region, share] of [0.25, 0.5, 0.25].entries()) {
      expect(Math.abs(counts[region] - 4000 * share)).toBeLessThan(5 * Math.sqrt(4000 * share * (1 - share)));
    }
  });

  it('are the same for the same seed and playing, and others for another seed', () => {
    const text = '<region> hirand=0.5 delay_random=1\n<region> lorand=0.5';
    const heard = (seed: number) => {
      const playing = new Playing(text, { seed });
      return Array.from({ length: 64 }, () => {
        playing.tap(60);
        return playing.started;
      });
    };
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        expect(heard(seed)).toEqual(heard(seed));
        expect(heard(seed)).not.toEqual(heard(seed + 1));
      }),
      { numRuns: 20 },
    );
  });

  it('differ from region to region and from note to note', () => {
    const playing = new Playing('<region>\n<region>');
    const seeds = new Set<number>();
    for (let strike = 0; strike < 500; strike++) {
      playing.tap(60);
      for (const { randomSeed } of playing.started) seeds.add(randomSeed);
    }
    expect(seeds.size).toBe(1000);
  });
});

describe('triggers', () => {
  it('tell a first note from a legato one by the keys that are held', () => {
    const playing = new Playing('<region> trigger=first\n<region> trigger=legato\n<region> trigger=attack');
    expect(playing.on(60)).toEqual(['start 0', 'start 2']);
    expect(playing.on(62)).toEqual(['start 1', 'start 2']);
    expect(playing.on(62)).toEqual(['start 1', 'start 2']);
    playing.off(60);
    playing.off(62);
    expect(playing.on(64)).toEqual(['start 0', 'start 2']);
    expect(playing.on(64)).toEqual(['start 0', 'start 2']);
  });

  it('start a region by a controller as its value enters the range, at velocity 127, and no key does', () => {
    const playing = new Playing(
      '<region> on_locc64=64 on_hicc64=127 pitch_keycenter=48\n<region> lokey=-1 on_locc64=10 on_hicc64=20',
    );
    expect(playing.tap(60)).toEqual([]);
    expect(playing.controller(64, 15)).toEqual(['start 1']);
    expect(playing.controller(64, 64)).toEqual(['start 0']);
    expect(playing.started).toMatchObject([{ key: 48, velocity: 127, gainDb: 0 }]);
    expect(playing.controller(64, 127)).toEqual([]);
    expect(playing.controller(65, 15)).toEqual([]);
    expect(playing.controller(64, 20)).toEqual(['start 1']);
    expect(playing.controller(64, 0)).toEqual([]);
  });

  it('start a region by a fine controller, and stop it by another range', () => {
    const playing = new Playing('<region> start_lohdcc1=0.5 start_hihdcc1=1 stop_locc1=0 stop_hicc1=10');
    expect(playing.controller(1, 63.5)).toEqual(['start 0']);
    expect(playing.controller(1, 11)).toEqual([]);
    expect(playing.controller(1, 5)).toEqual(['stop 0 normal']);
    expect(playing.controller(1, 3)).toEqual([]);
  });

  it('ask the other conditions of a region that a controller starts', () => {
    const playing = new Playing(
      '<region> on_locc1=1 on_hicc1=127 locc2=64 seq_length=2 seq_position=2 lokey=70 hivel=20',
    );
    expect(playing.controller(1, 5)).toEqual([]);
    playing.controller(2, 64);
    playing.controller(1, 0);
    expect(playing.controller(1, 5)).toEqual([]);
    playing.controller(1, 0);
    expect(playing.controller(1, 5)).toEqual(['start 0']);
  });

  it('turn a start off by -1', () => {
    const playing = new Playing('<group> on_locc64=64 on_hicc64=127\n<region> on_locc64=-1 on_hicc64=-1');
    expect(playing.controller(64, 100)).toEqual([]);
    expect(playing.tap(60)).toEqual(['start 0']);
  });
});

describe('messages that make no sense', () => {
  it('change nothing', () => {
    const playing = new Playing('<region>');
    const { player } = playing;
    for (const bad of [Number.NaN, -1, 128, 60.5, Number.POSITIVE_INFINITY]) {
      expect(player.noteOn(bad, 100, 0)).toEqual([]);
      expect(player.noteOff(bad, 0, 0)).toEqual([]);
      expect(player.polyPressure(bad, 1, 0)).toEqual([]);
      expect(player.program(bad, 0)).toEqual([]);
    }
    for (const bad of [Number.NaN, -1, 128]) {
      expect(player.noteOn(60, bad, 0)).toEqual([]);
      expect(player.controller(1, bad, 0)).toEqual([]);
      expect(player.channelPressure(bad, 0)).toEqual([]);
    }
    expect(player.controller(512, 1, 0)).toEqual([]);
    expect(player.bend(8192, 0)).toEqual([]);
    expect(player.noteOff(60, 0, 0)).toEqual([]);
    expect(player.state).toMatchObject({ bend: 0, channelPressure: 0, program: 0 });
    player.voiceEnded(99);
    expect(playing.on(60)).toEqual(['start 0']);
  });

  it('let a key go by a velocity of 0 (MIDI 1.0, note on)', () => {
    const playing = new Playing('<region>');
    playing.on(60);
    expect(playing.on(60, 0)).toEqual(['release 0']);
  });
});
