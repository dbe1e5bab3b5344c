import { describe, expect, it } from 'vitest';
import { checkText } from './markedText';

/**
 * Instruments of our own invention in the styles that SFZ is written in, all of them right. Each style is common
 * practice or stands in the public documentation of the open SFZ format; none may have a finding.
 */
const instruments: Readonly<Record<string, string>> = {
  'round robin by random ranges': `<group> lokey=60 hikey=64
<region> sample=a1.wav lorand=0 hirand=0.333
<region> sample=a2.wav lorand=0.333 hirand=0.667 lokey=59
<region> sample=a3.wav lorand=0.667 hirand=1`,
  'round robin by sequence, first position by default': `<group> key=36 seq_length=4
<region> sample=k1.wav
<region> sample=k2.wav seq_position=2
<region> sample=k3.wav seq_position=3 hivel=100
<region> sample=k4.wav seq_position=4`,
  'articulations on keyswitches with different zones': `<global> sw_lokey=24 sw_hikey=26 sw_default=24
<group> sw_last=24 sw_label=long
<region> sample=l1.wav lokey=36 hikey=41 pitch_keycenter=38
<region> sample=l2.wav lokey=42 hikey=47 pitch_keycenter=44
<group> sw_last=25 sw_label=short
<region> sample=s1.wav lokey=36 hikey=38 pitch_keycenter=37
<region> sample=s2.wav lokey=39 hikey=47 pitch_keycenter=43`,
  'articulations without groups': `<region> sample=l1.wav lokey=36 hikey=41 sw_last=24 sw_lokey=24 sw_hikey=25
<region> sample=l2.wav lokey=42 hikey=47 sw_last=24 sw_lokey=24 sw_hikey=25
<region> sample=s1.wav lokey=36 hikey=44 sw_last=25 sw_lokey=24 sw_hikey=25
<region> sample=s2.wav lokey=45 hikey=47 sw_last=25 sw_lokey=24 sw_hikey=25`,
  'microphones stacked in one group': `<group> lokey=48 hikey=59 pitch_keycenter=54
<region> sample=close.wav amplitude_oncc20=100
<region> sample=room.wav amplitude_oncc21=100
<region> sample=far.wav amplitude_oncc22=100`,
  'microphones in groups with zones of their own': `<group> group_label=close amplitude_oncc20=100
<region> sample=c1.wav lokey=48 hikey=53 pitch_keycenter=50
<region> sample=c2.wav lokey=54 hikey=59 pitch_keycenter=56
<group> group_label=room amplitude_oncc21=100
<region> sample=r1.wav lokey=48 hikey=50 pitch_keycenter=49
<region> sample=r2.wav lokey=51 hikey=59 pitch_keycenter=55`,
  'microphones with zones of their own in one group': `<group> ampeg_release=1
<region> sample=c1.wav lokey=48 hikey=53 amplitude_oncc20=100
<region> sample=c2.wav lokey=54 hikey=59 amplitude_oncc20=100
<region> sample=r.wav lokey=48 hikey=59 amplitude_oncc21=100`,
  'release samples beside the attack': `<group> ampeg_release=0.4
<region> sample=a1.wav lokey=48 hikey=59
<region> sample=a2.wav lokey=60 hikey=71
<region> sample=r.wav trigger=release rt_decay=6 lokey=50 hikey=65 pitch_keytrack=0`,
  'first and legato notes': `<region> sample=first.wav trigger=first lokey=48 hikey=60
<region> sample=slide.wav trigger=legato lokey=50 hikey=60 offset=2000
<region> sample=low.wav trigger=first lokey=40 hikey=47`,
  'dynamics crossfaded by a controller': `<group> lokey=48 hikey=60 xfout_locc1=0 xfout_hicc1=64
<region> sample=soft.wav
<group> lokey=48 hikey=60 xfin_locc1=0 xfin_hicc1=64
<region> sample=loud.wav`,
  'dynamics crossfaded by a controller without groups': `<region> sample=soft1.wav lokey=48 hikey=53 xfout_locc1=0 xfout_hicc1=64
<region> sample=soft2.wav lokey=54 hikey=60 xfout_locc1=0 xfout_hicc1=64
<region> sample=loud.wav lokey=48 hikey=60 xfin_locc1=0 xfin_hicc1=64`,
  'velocity layers with crossfades': `<group> key=60
<region> sample=p.wav hivel=70 xfout_lovel=50 xfout_hivel=70
<region> sample=f.wav lovel=50 xfin_lovel=50 xfin_hivel=70`,
  'key crossfades between zones': `<region> sample=a.wav lokey=48 hikey=62 xfout_lokey=58 xfout_hikey=62 pitch_keycenter=54
<region> sample=b.wav lokey=58 hikey=72 xfin_lokey=58 xfin_hikey=62 pitch_keycenter=66`,
  'drum kit on single keys with a choked hi-hat': `<global> loop_mode=one_shot
<group> key=36
<region> sample=kick_p.wav hivel=63
<region> sample=kick_f.wav lovel=64
<group> key=38
<region> sample=snare.wav
<group> key=42 group=1 off_by=1
<region> sample=hat_closed.wav
<group> key=46 group=1 off_by=1 off_mode=fast
<region> sample=hat_open.wav
<group> key=49
<region> sample=crash.wav`,
  'hi-hat openness by a controller': `<group> key=42 group=2 off_by=2
<region> sample=hat1.wav locc4=0 hicc4=31
<region> sample=hat2.wav locc4=32 hicc4=95 hivel=100
<region> sample=hat2f.wav locc4=32 hicc4=95 lovel=101
<region> sample=hat3.wav locc4=96 hicc4=127`,
  'pedal up and down': `<region> sample=up.wav lokey=48 hikey=60 locc64=0 hicc64=63
<region> sample=down1.wav lokey=48 hikey=53 locc64=64 hicc64=127
<region> sample=down2.wav lokey=54 hikey=60 locc64=64 hicc64=127`,
  'pedal noise and drones that no key triggers': `<region> sample=note.wav lokey=48 hikey=72
<region> sample=pedal.wav lokey=-1 hikey=-1 on_locc64=64 on_hicc64=127
<region> sample=drone.wav lokey=-1 hikey=-1 on_locc20=1 on_hicc20=127 loop_mode=loop_continuous`,
  'note names, path prefix, flats and sharps': `<control> default_path=Samples/Soft_
<region> sample=C4.wav lokey=b3 hikey=c#4 pitch_keycenter=c4
<region> sample=Eb4.wav lokey=D4 hikey=Eb4 pitch_keycenter=eb4`,
  'variables in names and values, with a transposed keyboard': `#define $MIC 20
#define $LOW 48
#define $HIGH 59
<control> note_offset=-12 octave_offset=1 label_cc$MIC=Close
<region> sample=a.wav lokey=$LOW hikey=$HIGH amplitude_oncc$MIC=100`,
  'masters, labels and several headers on a line': `<global> ampeg_release=1 <master> master_label=Left pan=-100
<group> group_label=soft hivel=63 <region> sample=l p.wav key=60 <group> group_label=loud lovel=64
<region> sample=l f.wav key=60
<master> master_label=Right pan=100
<group> hivel=50 <region> sample=r p.wav key=60 <group> lovel=51 <region> sample=r f.wav key=60`,
  'a split keyboard whose parts meet': `<group> group_label=bass hikey=62
<region> sample=bass.wav
<group> group_label=lead lokey=58
<region> sample=lead.wav`,
  'generators with envelopes and modulation': `<region> sample=*saw oscillator_multi=3 oscillator_detune=12
cutoff=800 cutoff_oncc74=4800 fil_type=lpf_2p ampeg_attack=0.01 lfo01_freq=5 lfo01_pitch=10
<region> sample=*sine transpose=-12 volume=-6`,
  'round robins with choke groups of their own and of different lengths': `<global> key=36
<group> group=1 off_by=2 <region> sample=a.wav seq_length=2 seq_position=1
<group> group=2 off_by=1 <region> sample=b.wav seq_length=4 seq_position=2
<group> group=2 off_by=1 <region> sample=c.wav seq_length=4 seq_position=4`,
  'a rare extra over a steady layer': `<region> sample=a.wav key=40
<region> sample=squeak.wav key=40 seq_length=7 seq_position=5
<region> sample=creak.wav key=40 hirand=0.1
<region> sample=crack.wav key=40 lorand=0.9`,
  'release noises that come at times': `<region> sample=a.wav lokey=40 hikey=50
<region> sample=r1.wav lokey=40 hikey=50 trigger=release hirand=0.2
<region> sample=r2.wav lokey=40 hikey=50 trigger=release lorand=0.2 hirand=0.4`,
  'a noise that comes at times': '<region> sample=a.wav key=40 hirand=0.3',
  'round robins within random ranges': `<group> key=38 seq_length=2
<region> sample=a.wav hirand=0.5
<region> sample=b.wav hirand=0.5 seq_position=2
<region> sample=c.wav lorand=0.5
<region> sample=d.wav lorand=0.5 seq_position=2`,
  'thirds of random numbers, rounded': `<group> key=38
<region> sample=a.wav lorand=0.000 hirand=0.333
<region> sample=b.wav lorand=0.334 hirand=0.666
<region> sample=c.wav lorand=0.667 hirand=1.000`,
  'a click and silence on keyswitches': `<global> sw_lokey=24 sw_hikey=25 sw_default=24
<group> group_label=click <region> sample=click.wav lokey=24 hikey=25
<group> output=1 <region> sample=*silence lokey=20 hikey=30
<group> output=2 <region> sample=air.wav lokey=0 hikey=127 volume=-40
<group> sw_last=24 <region> sample=a.wav lokey=36 hikey=60
<group> sw_last=25 <region> sample=b.wav lokey=36 hikey=60`,
  'intervals that depend on the note before': Array.from(
    { length: 30 },
    (_, key) => `<region> sample=up${key}.wav key=${key + 41} sw_last=${key + 40} trigger=legato`,
  )
    .concat('<region> sample=first.wav lokey=40 hikey=80 trigger=first')
    .join('\n'),
  'keyswitches in two ranges, each with its own regions': `<master> sw_lokey=24 sw_hikey=25
<group> sw_last=24 <region> sample=a.wav lokey=36 hikey=47
<group> sw_last=25 <region> sample=b.wav lokey=36 hikey=47
<master> sw_lokey=100 sw_hikey=101
<group> sw_last=100 <region> sample=c.wav lokey=48 hikey=70
<group> sw_last=101 <region> sample=d.wav lokey=48 hikey=70`,
  'every value written out, as by a program': `<region> sample=a.wav lokey=40 hikey=50 lovel=1 hivel=127 xfin_lokey=0 xfin_hikey=0
xfout_lokey=127 xfout_hikey=127 xfin_lovel=0 xfin_hivel=0 xfout_lovel=127 xfout_hivel=127 loop_mode=no_loop loop_start=0
loop_end=0 off_by=0 group=0 seq_length=1 seq_position=1 lorand=0 hirand=1`,
  'fades shared by zones, some of which they do not reach': `<group> xfin_lokey=40 xfin_hikey=45
<region> sample=a.wav lokey=40 hikey=50
<region> sample=b.wav lokey=51 hikey=60`,
  'controllers with a meaning in MIDI beside labelled ones': `<control> label_cc20=Near set_cc21=64 label_cc22=Air
<region> sample=a.wav key=60 amplitude_oncc20=100 volume_oncc7=6 pan_oncc10=100 cutoff_oncc74=1200 cutoff=400
tune_oncc21=10 pitch_oncc131=100 lfo01_pitch_oncc1=20 lfo01_freq=5 locc64=0`,
  'settings for release samples and timed fades above mixed groups': `<global> rt_decay=3 off_time=0.2 group=1 off_by=1
<group> off_mode=time <region> sample=a.wav key=60
<group> trigger=release <region> sample=b.wav key=60`,
  'loop points above regions of both kinds': `<group> loop_start=100 loop_end=200
<region> sample=a.wav key=60 loop_mode=loop_continuous
<region> sample=b.wav key=61 loop_mode=no_loop`,
  'variables with a long and a short name, the long one not used': `#define $SOFT 40
#define $SOFTER 20
<region> sample=a.wav key=60 volume=-$SOFT`,
  'a muting region and curves': `<region> sample=*silence end=-1 key=44 group=3
<region> sample=open.wav key=46 off_by=3
<region> sample=closed.wav key=45
<curve> curve_index=11 v000=0 v064=0.3 v127=1`,
};

describe('instruments that are right', () => {
  for (const [style, text] of Object.entries(instruments)) {
    it(`have no finding: ${style}`, () => {
      const { findings } = checkText(text);
      expect(
        findings.map(({ code, start, message }) => `${code} at ${text.slice(start, start + 20)}: ${message}`),
      ).toEqual([]);
    });
  }
});
