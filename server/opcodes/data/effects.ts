import type { OpcodeTable } from '../opcodeTable';

/** Effects and the buses between them. */
export const effects: readonly OpcodeTable[] = [
  {
    category: 'Effects',
    rows: `
apan_depth | v2 | [0..100]
apan_depth_onccN | extension | >apan_depth
apan_dry | v2 | [0..100]
apan_dry_onccN | extension | >apan_dry
apan_freq | v2 float Hz
apan_freq_onccN | extension | >apan_freq
apan_phase | v2 float ° | [0..180]
apan_phase_onccN | extension | >apan_phase
apan_waveform | v2
apan_wet | v2 | [0..100]
apan_wet_onccN | extension | >apan_wet
bitred | v2 | [0..100]
bitred_onccN | extension | >bitred
bitred_curveccN | extension integer | [0..255] | =0 | >bitred
bitred_smoothccN | extension | >bitred
bitred_stepccN | extension | >bitred
bus | v2 string | =main | {main,aux1,aux2,aux3,aux4,aux5,aux6,aux7,aux8,fx1,fx2,fx3,fx4,midi}
bypass_onccN | v2 float
comp_attack | v2 float seconds
comp_gain | v2
comp_ratio | v2 | [0..100]
comp_release | v2 float seconds
comp_stlink | v2 string | {on,off}
comp_threshold | v2 float dB
decim | v2 | [0..100]
decim_onccN | extension | >decim
decim_curveccN | extension integer | [0..255] | =0 | >decim
decim_smoothccN | extension | >decim
decim_stepccN | extension | >decim
delay_cutoff | v2 float Hz
delay_cutoff_onccN | extension | >delay_cutoff
delay_damphi | v2 | [0..100]
delay_damphi_onccN | extension | >delay_damphi
delay_damplo | v2 | [0..100]
delay_damplo_onccN | extension | >delay_damplo
delay_dry | v2 | [0..100]
delay_dry_onccN | extension | >delay_dry
delay_feedback | v2 | [0..100]
delay_feedback_onccN | extension | >delay_feedback
delay_filter | v2 string
delay_input | v2 | [0..100]
delay_input_onccN | extension | >delay_input
delay_levelc | v2 | [0..100]
delay_levell | v2 | [0..100]
delay_levelr | v2 | [0..100]
delay_lfofreq | v2 float Hz
delay_lfofreq_onccN | extension | >delay_lfofreq
delay_moddepth | v2 | [0..100]
delay_moddepth_onccN | extension | >delay_moddepth
delay_mode | v2 string | {detune,chorus,cross,flanger,lrc,mod,multimod,panning,ping,rlc,stereo,tlcr}
delay_panc | v2 | [0..100]
delay_panc_onccN | extension | >delay_panc
delay_panl | v2 | [0..100]
delay_panl_onccN | extension | >delay_panl
delay_panr | v2 | [0..100]
delay_panr_onccN | extension | >delay_panr
delay_resonance | v2
delay_resonance_onccN | extension | >delay_resonance
delay_spread | v2 | [0..100]
delay_spread_onccN | extension | >delay_spread
delay_syncc_onccN | v2
delay_syncl_onccN | v2
delay_syncr_onccN | v2
delay_time_tap | v2
delay_timec | v2
delay_timec_onccN | extension | >delay_timec
delay_timel | v2
delay_timel_onccN | extension | >delay_timel
delay_timer | v2
delay_timer_onccN | extension | >delay_timer
delay_wet | v2 | [0..100]
delay_wet_onccN | extension | >delay_wet
directtomain | v2 float % | [0..100] | =100
disto_depth | v2 | [0..100]
disto_depth_onccN | extension | >disto_depth
disto_dry | v2 | [0..100]
disto_dry_onccN | extension | >disto_dry
disto_stages | v2
disto_tone | v2 | [0..100]
disto_tone_onccN | extension | >disto_tone
disto_wet | v2 | [0..100]
disto_wet_onccN | extension | >disto_wet
dsp_order | v2 integer | [0..14]
effect1 | v1 float % | [0..100] | =0
effect2 | v1 float % | [0..100] | =0
effect3 | v2 float % | [0..100] | =0
effect4 | v2 float % | [0..100] | =0
eq_bw | v2
eq_bw_onccN | extension | >eq_bw
eq_freq | v2
eq_freq_onccN | extension | >eq_freq
eq_gain | v2
eq_gain_onccN | extension | >eq_gain
eq_type | v2
filter_cutoff | v2
filter_cutoff_onccN | extension | >filter_cutoff
filter_resonance | v2
filter_resonance_onccN | extension | >filter_resonance
filter_type | v2 string
fxNtomain | v2 float % | [0..100] | =0
fxNtomix | v2 float % | [0..100] | =0
gate_onccN | v2
gate_attack | v2
gate_release | v2
gate_stlink | v2 string | {on,off}
gate_threshold | v2
internal | v2 string | =off | {on,off}
param_offset | extension integer
phaser_depth | v2 | [0..100]
phaser_depth_onccN | extension | >phaser_depth
phaser_feedback | v2 | [0..100]
phaser_feedback_onccN | extension | >phaser_feedback
phaser_freq | v2 float Hz
phaser_freq_onccN | extension | >phaser_freq
phaser_phase_onccN | v2 | [0..100]
phaser_stages | v2
phaser_waveform | v2
phaser_wet | v2 | [0..100]
phaser_wet_onccN | extension | >phaser_wet
reverb_damp | v2 | [0..100]
reverb_damp_onccN | extension | >reverb_damp
reverb_dry | v2 | [0..100]
reverb_dry_onccN | extension | >reverb_dry
reverb_input | v2 | [0..100]
reverb_input_onccN | extension | >reverb_input
reverb_predelay | v2 float seconds
reverb_predelay_onccN | extension | >reverb_predelay
reverb_size | v2 | [0..100]
reverb_size_onccN | extension | >reverb_size
reverb_tone | v2 | [0..100]
reverb_tone_onccN | extension | >reverb_tone
reverb_type | v2 string | {chamber,large_hall,large_room,mid_hall,mid_room,small_hall,small_room}
reverb_wet | v2 | [0..100]
reverb_wet_onccN | extension | >reverb_wet
static_cyclic_level | v2 | [0..100]
static_cyclic_time | v2 float seconds
static_filter | v2 string
static_level | v2 | [0..100]
static_level_onccN | extension | >static_level
static_random_level | v2 | [0..100]
static_random_maxtime | v2 float seconds
static_random_mintime | v2 float seconds
static_stereo | v2
static_tone | v2 | [0..100]
strings_number | v2
strings_wet_onccN | v2 | [0..100]
tdfir_dry | v2 | [0..100]
tdfir_dry_onccN | extension | >tdfir_dry
tdfir_gain | v2 | [0..100]
tdfir_impulse | v2
tdfir_wet | v2 | [0..100]
tdfir_wet_onccN | extension | >tdfir_wet
type | v2 string | {apan,comp,delay,disto,eq,filter,fverb,gate,limiter,lofi,mverb,phaser,static,strings,tdfir}
vendor_specific | extension string
`,
  },
];
