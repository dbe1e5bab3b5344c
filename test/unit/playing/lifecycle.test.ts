import { describe, expect, it } from 'vitest';
import { Playing } from './playing';

// The meaning of the opcodes: public documentation of the open SFZ format, pages of their names; pedals: MIDI 1.0.

describe('letting a note go', () => {
  it('releases its voices, but not one_shot, and not those of other keys', () => {
    const playing = new Playing(
      '<region> loop_mode=loop_sustain\n<region> loop_mode=one_shot\n<region> count=2',
    );
    playing.on(60);
    playing.on(62);
    expect(playing.off(60)).toEqual(['release 0']);
    expect(playing.off(60)).toEqual([]);
    expect(playing.off(62)).toEqual(['release 0']);
  });

  it('releases all strikes of a key that was struck again without being let go', () => {
    const playing = new Playing('<region>');
    playing.on(60);
    playing.on(60);
    expect(playing.off(60)).toEqual(['release 0', 'release 0']);
  });

  it('does not release what has ended', () => {
    const playing = new Playing('<region>\n<region>');
    playing.on(60);
    playing.ended(0);
    expect(playing.off(60)).toEqual(['release 1']);
  });

  it('lets a note that waits for its delay not sound, except one_shot', () => {
    const playing = new Playing(
      '<region> delay=2\n<region> delay=0.5\n<region> delay=2 loop_mode=one_shot\n<region> delay_oncc1=1.27',
    );
    playing.controller(1, 100);
    playing.seconds = 10;
    playing.on(60);
    expect(playing.started.map(({ delaySeconds }) => delaySeconds)).toEqual([
      2,
      0.5,
      2,
      expect.closeTo(1, 9),
    ]);
    playing.seconds = 10.9;
    expect(playing.off(60)).toEqual(['stop 0 fast', 'release 1', 'stop 3 fast']);
  });

  it('draws delay_random between 0 and its value', () => {
    const playing = new Playing('<region> delay=1 delay_random=0.5');
    const delays = new Set<number>();
    for (let strike = 0; strike < 50; strike++) {
      playing.tap(60);
      delays.add(playing.started[0]?.delaySeconds ?? -1);
    }
    expect(delays.size).toBe(50);
    for (const delay of delays) {
      expect(delay).toBeGreaterThanOrEqual(1);
      expect(delay).toBeLessThan(1.5);
    }
  });
});

describe('release regions', () => {
  const text =
    '<region> key=60\n<region> key=60 trigger=release lovel=50\n<region> key=60 trigger=release_key rt_decay=3';

  it('sound at note-off with the velocity of the note-on, quieter by rt_decay for each second', () => {
    const playing = new Playing(text);
    playing.on(60, 80);
    playing.seconds = 4.5;
    expect(playing.off(60)).toEqual(['release 0', 'start 1', 'start 2']);
    expect(playing.started).toMatchObject([
      { region: 1, velocity: 80, gainDb: 0 },
      { region: 2, velocity: 80, gainDb: -13.5 },
    ]);
    playing.on(60, 49);
    expect(playing.off(60)).toEqual(['release 0', 'start 2']);
  });

  it('wait for the pedal, release_key does not', () => {
    const playing = new Playing(text);
    playing.controller(64, 127);
    playing.on(60);
    expect(playing.off(60)).toEqual(['start 2']);
    expect(playing.controller(64, 0)).toEqual(['release 0', 'start 1']);
  });

  it('do not sound where the note has died away, unless rt_dead=on', () => {
    const playing = new Playing('<region>\n<region> trigger=release\n<region> trigger=release rt_dead=on');
    playing.on(60);
    playing.ended(0);
    expect(playing.off(60)).toEqual(['start 2']);
    playing.on(60);
    expect(playing.off(60)).toEqual(['release 0', 'start 1', 'start 2']);
  });

  it('sound where the note started nothing', () => {
    const playing = new Playing('<region> trigger=release');
    playing.on(60);
    expect(playing.off(60)).toEqual(['start 0']);
  });

  it('are not released themselves', () => {
    const playing = new Playing('<region> trigger=release loop_mode=loop_continuous');
    playing.tap(60);
    playing.on(60);
    expect(playing.off(60)).toEqual(['start 0']);
  });

  it('get quieter in stages', () => {
    const playing = new Playing(
      '<region> trigger=release rt_decay=50 rt_decay1=10 rt_decay1_time=1 rt_decay2=2 rt_decay2_time=2',
    );
    const gainAfter = (seconds: number) => {
      playing.seconds = 100;
      playing.on(60);
      playing.seconds = 100 + seconds;
      playing.off(60);
      return playing.started[0]?.gainDb;
    };
    expect(gainAfter(0.5)).toBeCloseTo(-5, 9);
    expect(gainAfter(1.5)).toBeCloseTo(-11, 9);
    expect(gainAfter(4)).toBeCloseTo(-16, 9);
  });
});

describe('the sustain pedal', () => {
  it('is down from 64 on, and lets notes go in the order of their keys', () => {
    const playing = new Playing('<region>\n<region> trigger=release');
    playing.controller(64, 63);
    playing.on(60);
    expect(playing.off(60)).toEqual(['release 0', 'start 1']);
    playing.controller(64, 64);
    for (const key of [64, 62, 60]) playing.on(key);
    for (const key of [62, 60, 64]) expect(playing.off(key)).toEqual([]);
    expect(playing.controller(64, 127)).toEqual([]);
    expect(playing.controller(64, 63)).toEqual([
      'release 0',
      'start 1',
      'release 0',
      'start 1',
      'release 0',
      'start 1',
    ]);
    expect(playing.started.map(({ key }) => key)).toEqual([62, 60, 64]);
    expect(playing.controller(64, 0)).toEqual([]);
  });

  it('leaves notes alone whose keys are down', () => {
    const playing = new Playing('<region>');
    playing.controller(64, 127);
    playing.on(60);
    playing.off(60);
    playing.on(60);
    expect(playing.controller(64, 0)).toEqual(['release 0']);
    expect(playing.off(60)).toEqual(['release 0']);
  });

  it('is not followed, is another controller or is down sooner where a region says so', () => {
    const playing = new Playing(
      '<region> sustain_sw=off\n<region> sustain_cc=67\n<region> sustain_lo=1\n<region>',
    );
    playing.controller(64, 30);
    playing.on(60);
    expect(playing.off(60)).toEqual(['release 0', 'release 1', 'release 3']);
    playing.controller(67, 127);
    playing.controller(64, 127);
    playing.on(60);
    expect(playing.off(60)).toEqual(['release 0']);
    expect(playing.controller(64, 10)).toEqual(['release 3']);
    expect(playing.controller(67, 0)).toEqual(['release 1']);
    expect(playing.controller(64, 0)).toEqual(['release 2', 'release 2']);
  });
});

describe('the sostenuto pedal', () => {
  it('holds the notes whose keys are down as it goes down, and no later ones', () => {
    const playing = new Playing('<region>\n<region> trigger=release');
    playing.on(60);
    playing.controller(66, 127);
    playing.on(62);
    expect(playing.off(62)).toEqual(['release 0', 'start 1']);
    expect(playing.off(60)).toEqual([]);
    expect(playing.on(60)).toEqual(['start 0']);
    expect(playing.off(60)).toEqual(['release 0', 'start 1']);
    expect(playing.controller(66, 0)).toEqual(['release 0', 'start 1']);
  });

  it('works together with the sustain pedal', () => {
    const playing = new Playing('<region>');
    playing.on(60);
    playing.controller(66, 127);
    playing.controller(64, 127);
    playing.on(62);
    playing.off(60);
    playing.off(62);
    expect(playing.controller(64, 0)).toEqual(['release 0']);
    playing.controller(64, 127);
    expect(playing.controller(66, 0)).toEqual([]);
    expect(playing.controller(64, 0)).toEqual(['release 0']);
  });

  it('is not followed where a region says so', () => {
    const playing = new Playing(
      '<region> sostenuto_sw=off\n<region> sostenuto_cc=67 sostenuto_lo=10\n<region>',
    );
    playing.on(60);
    playing.controller(66, 127);
    playing.controller(67, 10);
    expect(playing.off(60)).toEqual(['release 0']);
    expect(playing.controller(67, 9)).toEqual(['release 1']);
    expect(playing.controller(66, 0)).toEqual(['release 2']);
  });
});

describe('groups that silence others', () => {
  it('end what is off_by them, by its own off_mode', () => {
    const playing = new Playing(`<region> key=42 group=1 off_by=2
<region> key=43 group=1 off_by=2 off_mode=normal
<region> key=44 group=1 off_by=2 off_mode=time off_time=0.25
<region> key=45 group=1 off_by=2 off_mode=time
<region> key=46 group=2 off_by=3
<region> key=47 group=3`);
    for (const key of [42, 43, 44, 45]) playing.on(key);
    expect(playing.on(46)).toEqual([
      'stop 0 fast',
      'stop 1 normal',
      'stop 2 0.25 s',
      'stop 3 0.006 s',
      'start 4',
    ]);
    expect(playing.off(42)).toEqual([]);
    expect(playing.on(47)).toEqual(['stop 4 fast', 'start 5']);
  });

  it('end released and one_shot voices too, and those of their own group', () => {
    const playing = new Playing(
      '<global> group=5 off_by=5\n<region> key=60\n<region> key=62 loop_mode=one_shot',
    );
    playing.tap(60);
    expect(playing.tap(62)).toEqual(['stop 0 fast', 'start 1']);
    expect(playing.tap(62)).toEqual(['stop 1 fast', 'start 1']);
  });

  it('leave the layers of one note alone', () => {
    const playing = new Playing('<global> group=1 off_by=1\n<region>\n<region>');
    expect(playing.on(60)).toEqual(['start 0', 'start 1']);
    expect(playing.on(62)).toEqual(['stop 0 fast', 'stop 1 fast', 'start 0', 'start 1']);
  });

  it('silence also by a region that has no sound: end=-1, no sample', () => {
    const playing = new Playing(`<region> sample=*sine key=60 off_by=1
<region> sample=*sine key=61 group=1 end=-1
<region> key=62 group=1`);
    playing.on(60);
    expect(playing.on(61)).toEqual(['stop 0 fast']);
    playing.on(60);
    expect(playing.on(62)).toEqual(['stop 0 fast']);
  });

  it('are not group 0', () => {
    const playing = new Playing('<region> key=60 off_by=0\n<region> key=61\n<region> key=62 group=0');
    playing.on(60);
    expect(playing.on(61)).toEqual(['start 1']);
    expect(playing.on(62)).toEqual(['start 2']);
  });

  it('silence by a release and by a controller as well', () => {
    const playing = new Playing(
      '<region> off_by=1\n<region> trigger=release group=1\n<region> on_locc1=1 on_hicc1=127 group=1',
    );
    playing.on(60);
    expect(playing.off(60)).toEqual(['release 0', 'stop 0 fast', 'start 1']);
    playing.on(60);
    expect(playing.controller(1, 1)).toEqual(['stop 0 fast', 'start 2']);
  });
});

describe('bounds on voices', () => {
  it('end the oldest of the group, by its off_mode', () => {
    const playing = new Playing(
      '<group> group=1 polyphony=2 off_mode=normal\n<region>\n<group> group=1\n<region> key=99\n<group>\n<region> key=50',
    );
    playing.on(60);
    playing.on(50);
    playing.on(62);
    expect(playing.on(64)).toEqual(['stop 0 normal', 'start 0']);
    expect(playing.off(60)).toEqual([]);
    playing.ended(0);
    expect(playing.on(65)).toEqual(['start 0']);
  });

  it('count a voice of the same group under another header', () => {
    const playing = new Playing(
      '<group> group=1 polyphony=1\n<region> key=60\n<group> group=1\n<region> key=62',
    );
    playing.on(62);
    expect(playing.on(60)).toEqual(['stop 1 fast', 'start 0']);
    expect(playing.on(62)).toEqual(['start 1']);
  });

  it('count below the header that sets them where there is no group', () => {
    const playing = new Playing(
      '<group> polyphony=1\n<region> key=60\n<region> key=62\n<group> polyphony=1\n<region> key=64',
    );
    playing.on(64);
    playing.on(60);
    expect(playing.on(62)).toEqual(['stop 0 fast', 'start 1']);
  });

  it('do not cut the layers of one note', () => {
    const playing = new Playing('<global> polyphony=3\n<region>\n<region>');
    playing.on(60);
    expect(playing.on(62)).toEqual(['start 0', 'stop 0 fast', 'start 1']);
    const layers = new Playing('<global> polyphony=1\n<region>\n<region>');
    expect(layers.on(60)).toEqual(['start 0', 'start 1']);
    expect(layers.on(62)).toEqual(['stop 0 fast', 'stop 1 fast', 'start 0', 'start 1']);
  });

  it('count the strikes of one key, and end softer ones alone', () => {
    const playing = new Playing('<region> note_polyphony=1');
    playing.tap(60, 80);
    playing.tap(62, 80);
    expect(playing.tap(60, 60)).toEqual(['start 0']);
    expect(playing.tap(60, 70)).toEqual(['stop 0 fast', 'start 0']);
    expect(playing.tap(60, 80)).toEqual(['stop 0 fast', 'stop 0 fast', 'start 0']);
  });

  it('end any strike of the key where note_selfmask is off', () => {
    const playing = new Playing('<region> note_polyphony=2 note_selfmask=off');
    playing.tap(60, 80);
    playing.tap(60, 70);
    expect(playing.tap(60, 60)).toEqual(['stop 0 fast', 'start 0']);
    expect(playing.tap(60, 10)).toEqual(['stop 0 fast', 'start 0']);
  });

  it('leave release regions and other groups out of the strikes of a key', () => {
    const playing = new Playing(
      '<region> note_polyphony=1\n<region> trigger=release note_polyphony=1\n<region> group=1',
    );
    playing.on(60);
    expect(playing.off(60)).toEqual(['release 0', 'release 2', 'start 1']);
    expect(playing.on(60)).toEqual(['stop 0 fast', 'start 0', 'start 2']);
  });
});

describe('turning all off', () => {
  it('ends all voices, forgets keys and held notes, keeps controllers', () => {
    const playing = new Playing('<region>\n<region> trigger=release');
    playing.controller(64, 127);
    playing.tap(60);
    playing.on(62);
    expect(playing.allOff()).toEqual(['stop 0 fast', 'stop 0 fast']);
    expect(playing.off(62)).toEqual([]);
    expect(playing.controller(64, 0)).toEqual([]);
    expect(playing.player.state.controllers[7]).toBe(100);
  });

  // MIDI 1.0, channel mode messages 120 and 123.
  it('comes by the channel mode messages', () => {
    const playing = new Playing('<region>');
    playing.on(60);
    expect(playing.controller(120, 0)).toEqual(['stop 0 fast']);
    playing.on(60);
    playing.on(62);
    expect(playing.controller(123, 0)).toEqual(['release 0', 'release 0']);
    playing.controller(64, 127);
    playing.on(60);
    expect(playing.controller(123, 0)).toEqual([]);
  });
});
