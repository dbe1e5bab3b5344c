import { describe, expect, it } from 'vitest';
import type { Checked } from './markedText';
import { applyFix, checkText, expectMarks, fixesOf } from './markedText';

/** As `expectMarks`; what keys and velocities are left over is not looked at. */
function expectLogic(marked: string): Checked {
  return expectMarks(marked, { severities: { 'key-gap': 'off', 'velocity-gap': 'off' } });
}

/** Codes of the findings in a text. */
function codes(text: string): string[] {
  return checkText(text).findings.map(({ code }) => code);
}

// seq_length and seq_position count from 1, and a position past the length never comes: public documentation of the open SFZ
// format (CC0 1.0), seq_position.
describe('round robins', () => {
  it('miss a step', () => {
    const checked = expectLogic(`<group> key=60 seq_length=4
                          ^ sequence-hole warning
<region> sample=a.wav
<region> sample=b.wav seq_position=2
<region> sample=c.wav seq_position=4`);
    expect(checked.findings[0]?.message).toContain('step 3 of 4 on key 60 (C4)');
    expect(fixesOf(checked, 'sequence-hole')).toEqual([]);
  });

  it('may have rests between their steps, which is information', () => {
    expectLogic(`<group> key=60 seq_length=5
                          ^ sequence-hole information
<region> sample=a.wav
<region> sample=b.wav seq_position=3`);
  });

  it('have one finding where their length is no number', () => {
    expectLogic(`<group> key=60 seq_length=two
                          ^^^ opcode-value error
<region> sample=a.wav seq_position=1
<region> sample=b.wav seq_position=2`);
  });

  it('are shorter than their length says, which one fix settles', () => {
    const checked = checkText(`<group> key=60 seq_length=4
<region> sample=a.wav
<region> sample=b.wav seq_position=2`);
    const [fix] = fixesOf(checked, 'sequence-hole');
    expect(codes(applyFix(checked.text, fix))).toEqual([]);
  });

  it('have a position that never comes', () => {
    const checked = expectLogic(`<group> key=60 seq_length=2
<region> sample=a.wav
<region> sample=b.wav seq_position=2
<region> sample=c.wav seq_position=3
                                   ^ sequence-hole warning
<group> key=61
<region> sample=d.wav seq_position=2
                                   ^ sequence-hole warning`);
    expect(checked.findings[1]?.message).toContain('its round robin has no length');
  });

  it('are told once for all keys under one header', () => {
    const { findings } = checkText(`<group> seq_length=2
<region> sample=a.wav key=60
<region> sample=b.wav key=61
<region> sample=c.wav key=62`);
    expect(findings).toHaveLength(1);
    expect(findings[0]?.message).toContain('in 2 more places');
  });

  it('miss a step under one keyswitch although another articulation has it', () => {
    expectLogic(`<global> sw_lokey=24 sw_hikey=25 key=60
<group> sw_last=24 seq_length=2
                              ^ sequence-hole warning
<region> sample=a.wav
<group> sw_last=25
<region> sample=b.wav`);
  });
});

// A region takes random numbers from lorand up to hirand, 0 to 1 in all: public documentation of the open SFZ format (CC0
// 1.0), lorand. That holes as narrow as a rounding are none is our choice.
describe('random ranges', () => {
  it('leave a hole between, before and behind them', () => {
    const checked = expectLogic(`<group> key=60
<region> sample=a.wav lorand=0.1 hirand=0.4
                             ^^^ random-hole warning
<region> sample=b.wav lorand=0.5 hirand=0.9
                             ^^^ random-hole warning
                                        ^^^ random-hole warning`);
    expect(checked.findings[1]?.message).toContain('from 0.4 to 0.5');
  });

  it('are information where much is left, as a sound that comes at times leaves it', () => {
    expectLogic(`<group> key=60
<region> sample=a.wav hirand=0.3
<region> sample=b.wav lorand=0.3 hirand=0.5
                                        ^^^ random-hole information`);
  });

  it('are compared within one velocity layer', () => {
    expectLogic(`<group> key=60 hivel=63
<region> sample=a.wav hirand=0.5
<region> sample=b.wav lorand=0.5
<group> key=60 lovel=64
<region> sample=c.wav hirand=0.5
<region> sample=d.wav lorand=0.6
                             ^^^ random-hole warning`);
  });
});

// off_by names the group that silences a region: public documentation of the open SFZ format (CC0 1.0), off_by.
describe('exclusive groups', () => {
  it('are named by off_by and not there', () => {
    const checked = expectLogic(`<region> key=42 sample=a.wav group=1 offby=2
                                     ^^^^^ opcode-alias hint
                                           ^ off-by-unknown warning
<region> key=46 sample=b.wav polyphony_group=3 off_by=1
                             ^^^^^^^^^^^^^^^ opcode-alias hint`);
    expect(checked.findings[1]?.message).toContain('1, 3');
  });
});

// Keys from sw_lokey to sw_hikey switch, sw_default counts until one is pressed, note_offset and octave_offset move
// keys: public documentation of the open SFZ format (CC0 1.0). How many switches are too many to be switches is our choice.
describe('keyswitches', () => {
  it('lie outside the range in which they count', () => {
    expectLogic(`<global> sw_lokey=24 sw_hikey=25
<group> sw_last=26
                ^^ keyswitch-range warning
<region> sample=a.wav key=60
<group> sw_last=25
<region> sample=b.wav key=60
<group> sw_last=30
<region> sample=d.wav key=60 sw_hikey=30`);
  });

  it('lie outside a range that a region alone has', () => {
    expectLogic(`<group> sw_last=25
                ^^ keyswitch-range warning
<region> sample=a.wav key=60 sw_lokey=c2 sw_hikey=d2`);
  });

  it('say so where one outside the range counts until another is pressed', () => {
    const { findings } = expectLogic(`<global> sw_lokey=24 sw_hikey=25 sw_default=26
<group> sw_last=26
                ^^ keyswitch-range warning
<region> sample=a.wav key=60`);
    expect(findings[0]?.message).toContain('so this never sounds again once another keyswitch was pressed');
  });

  it('sound as well', () => {
    const checked = expectLogic(`<group> sw_last=24 lokey=36 hikey=60
<region> sample=a.wav
<group> lokey=20 hikey=30
                       ^^ keyswitch-sounds warning
<region> sample=b.wav`);
    expect(checked.findings[0]?.message).toContain('24 (C1)');
  });

  it('sound as well where the whole keyboard is moved', () => {
    expectLogic(`<control> note_offset=12
<group> sw_last=24 lokey=36 hikey=60
<region> sample=a.wav
<group> lokey=20 hikey=30
                       ^^ keyswitch-sounds warning
<region> sample=b.wav`);
  });
});

// Below a fade-in and above a fade-out a region is silent, above and below them it is full: public documentation of the open
// SFZ format (CC0 1.0), xfin_lokey and xfout_lokey.
describe('crossfades outside their region', () => {
  it('silence it, or change nothing', () => {
    expectLogic(`<region> sample=a.wav lokey=40 hikey=50 xfin_lokey=55 xfin_hikey=60
                                                   ^^ crossfade-outside warning
<region> sample=b.wav lokey=51 hikey=59 xfin_lokey=40 xfin_hikey=45
                                                                 ^^ crossfade-outside warning
<region> sample=c.wav lokey=60 hikey=70 locc20=0 hicc20=63 xfout_locc20=100 xfout_hicc20=127
                                                                        ^^^ crossfade-outside warning`);
  });

  it('follow keys with the offset of the instrument', () => {
    expect(
      codes(`<control> note_offset=12
<region> sample=a.wav lokey=40 hikey=50 xfin_lokey=40 xfin_hikey=45`),
    ).toEqual([]);
  });
});

// label_ccN and set_ccN: public documentation of the open SFZ format (CC0 1.0). That controllers such as 1, 7 and 64 need no
// label is common practice: MIDI 1.0 names them.
describe('controllers without a name', () => {
  it('are told where the instrument names others', () => {
    expectLogic(`<control> label_cc20=Near set_cc23=10
<region> sample=a.wav key=60 volume_oncc20=1 pan_oncc21=100 tune_cc22=5 width_oncc23=1 locc22=1
                                             ^^^^^^^^^^ controller-unnamed hint
                                                            ^^^^^^^^^ controller-unnamed hint`);
  });
});

describe('opcodes without effect', () => {
  it('are loop points of what does not loop', () => {
    const checked = expectLogic(`<group> loop_mode=one_shot
<region> sample=a.wav key=60 loop_start=5 loop_end=10
                             ^^^^^^^^^^^^ no-effect hint
                                          ^^^^^^^^^^^ no-effect hint
<region> sample=b.wav key=61 loop_start=5 loop_end=10 loop_mode=loop_sustain`);
    expect(applyFix(checked.text, fixesOf(checked, 'no-effect')[0])).toContain('key=60 loop_end=10\n');
  });

  it('are values written again under the same header', () => {
    expectLogic(`<region> sample=a.wav key=60 tune=5 volume=0 tune=-5
                             ^^^^ no-effect hint`);
  });

  it('are not what an included file gives and the text around it changes', () => {
    const includes = { 'part.sfz': 'tune=5 volume=1' };
    const text = '<region> sample=a.wav key=60\n#include "part.sfz"\n#include "part.sfz"\ntune=1';
    expect(checkText(text, { includes }).findings).toEqual([]);
  });

  it('are those that another opcode has to switch on', () => {
    expectLogic(`<group> rt_decay=6 off_time=1
        ^^^^^^^^^^ no-effect hint
                   ^^^^^^^^^^ no-effect hint
<region> sample=a.wav key=60`);
  });
});

describe('variables whose names begin alike', () => {
  it('are told where the longer one is used', () => {
    expectLogic(`#define $KEY 60
#define $KEYS 61
        ^^^^^ define-prefix warning
#define $KEYBOARD 1
<region> sample=a.wav key=$KEY
<region> sample=b.wav key=$KEYS`);
  });
});
