import { describe, expect, it } from 'vitest';
import { Playing } from './playing';

// The meaning of sw_last, sw_default, sw_down, sw_up, sw_previous, sw_lolast, sw_hilast and sw_vel: public documentation
// of the open SFZ format, pages of these names.

describe('the last keyswitch', () => {
  const text = `<global> sw_lokey=24 sw_hikey=26 lokey=40 hikey=80
<region> sw_last=24
<region> sw_last=25
<region>`;

  it('keeps regions silent until one is pressed, and then chooses', () => {
    const playing = new Playing(text);
    expect(playing.tap(60)).toEqual(['start 2']);
    expect(playing.tap(24)).toEqual([]);
    expect(playing.tap(60)).toEqual(['start 0', 'start 2']);
    expect(playing.tap(61)).toEqual(['start 0', 'start 2']);
    playing.tap(25);
    expect(playing.tap(60)).toEqual(['start 1', 'start 2']);
  });

  it('is any key of the zone, and none outside it', () => {
    const playing = new Playing(text);
    playing.tap(25);
    playing.tap(27);
    expect(playing.tap(60)).toContain('start 1');
    playing.tap(26);
    expect(playing.tap(60)).toEqual(['start 2']);
  });

  it('is sw_default before any is pressed', () => {
    const playing = new Playing(
      `<global> sw_lokey=24 sw_hikey=26 sw_default=25\n<region> sw_last=24\n<region> sw_last=25`,
    );
    expect(playing.tap(60)).toEqual(['start 1']);
    playing.tap(24);
    expect(playing.tap(60)).toEqual(['start 0']);
  });

  it('can be one of a range', () => {
    const playing = new Playing('<region> sw_lokey=20 sw_hikey=29 sw_lolast=24 sw_hilast=26 key=60');
    for (const [key, sounds] of [
      [23, false],
      [24, true],
      [25, true],
      [26, true],
      [27, false],
    ] as const) {
      playing.tap(key);
      expect(playing.tap(60)).toEqual(sounds ? ['start 0'] : []);
    }
  });

  it('moves with note_offset, octave_offset and with what moves keyswitches alone', () => {
    const playing = new Playing(
      '<control> note_offset=2 octave_offset=1 sw_note_offset=1 sw_octave_offset=-1\n<region> sw_lokey=24 sw_hikey=24 sw_last=24 key=60',
    );
    playing.tap(24 + 14 - 11);
    expect(playing.tap(60 + 14)).toEqual(['start 0']);
  });

  it('is one of the keys that regions name where no zone is set', () => {
    const playing = new Playing('<region> key=60 sw_last=24\n<region> key=60 sw_last=25\n<region> lokey=20');
    playing.tap(24);
    expect(playing.tap(60)).toEqual(['start 0', 'start 2']);
    expect(playing.tap(60)).toEqual(['start 0', 'start 2']);
    playing.tap(25);
    expect(playing.tap(60)).toEqual(['start 1', 'start 2']);
  });

  it('reaches to the end of the keyboard where one end of the zone is not set', () => {
    const above = new Playing('<region> key=60 sw_lokey=0 sw_last=24');
    above.tap(24);
    expect(above.tap(60)).toEqual([]);
    const below = new Playing('<region> key=60 sw_hikey=30 sw_last=24');
    below.tap(24);
    expect(below.tap(60)).toEqual(['start 0']);
    below.tap(0);
    expect(below.tap(60)).toEqual([]);
    const lowest = new Playing('<region> key=60 sw_lokey=0 sw_hikey=0 sw_last=0');
    lowest.tap(0);
    expect(lowest.tap(60)).toEqual(['start 0']);
  });

  it('counts for the region on the keyswitch itself', () => {
    const playing = new Playing(
      '<region> sw_lokey=24 sw_hikey=25 sw_last=24 key=24\n<region> key=24 sw_down=24\n<region> key=24 sw_up=24',
    );
    expect(playing.tap(24)).toEqual(['start 0', 'start 1']);
  });

  it('is looked for in the zone of each region', () => {
    const playing = new Playing(
      '<region> key=60 sw_lokey=20 sw_hikey=21 sw_last=20\n<region> key=60 sw_lokey=30 sw_hikey=31 sw_last=30',
    );
    playing.tap(20);
    playing.tap(31);
    expect(playing.tap(60)).toEqual(['start 0']);
    playing.tap(30);
    expect(playing.tap(60)).toEqual(['start 0', 'start 1']);
  });
});

describe('held keys and the note before', () => {
  it('are looked at as the note is struck', () => {
    const playing = new Playing('<region> key=60 sw_down=24\n<region> key=60 sw_up=24');
    expect(playing.tap(60)).toEqual(['start 1']);
    playing.on(24);
    expect(playing.tap(60)).toEqual(['start 0']);
    playing.off(24);
    expect(playing.tap(60)).toEqual(['start 1']);
  });

  it('choose by the note before', () => {
    const playing = new Playing('<region> key=60 sw_previous=58\n<region> key=60 sw_previous=60');
    expect(playing.tap(60)).toEqual([]);
    expect(playing.tap(60)).toEqual(['start 1']);
    playing.tap(58);
    expect(playing.tap(60)).toEqual(['start 0']);
  });

  it('give the velocity of the note before to the sound, not to the choice of regions', () => {
    const playing = new Playing(
      '<region> key=60 sw_vel=previous lovel=64\n<region> key=60 hivel=63 sw_vel=current',
    );
    playing.tap(60, 100);
    expect(playing.started).toMatchObject([{ region: 0, velocity: 100 }]);
    playing.tap(61, 20);
    playing.tap(60, 90);
    expect(playing.started).toMatchObject([{ region: 0, velocity: 20 }]);
    playing.tap(60, 10);
    expect(playing.started).toMatchObject([{ region: 1, velocity: 10 }]);
  });
});
