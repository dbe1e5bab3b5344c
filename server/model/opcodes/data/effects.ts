import type { OpcodeTable } from '../opcodeTable';

/** Effects and the buses between them. */
export const effects: readonly OpcodeTable[] = [
  {
    category: 'Effects',
    rows: `
apan_depth | v2 | [0..100] | :the depth of the auto-pan | How far the auto-pan moves the sound from side to side.
apan_depth_onccN | extension | >apan_depth
apan_dry | v2 | [0..100] | :the dry level of the auto-pan | How much of the unchanged sound passes the auto-pan.
apan_dry_onccN | extension | >apan_dry
apan_freq | v2 float Hz | :the speed of the auto-pan | Speed of the auto-pan.
apan_freq_onccN | extension | >apan_freq
apan_phase | v2 float ° | [0..180] | :the phase of the auto-pan | Difference in phase between the two sides of the auto-pan.
apan_phase_onccN | extension | >apan_phase
apan_waveform | v2 | Number of the wave form of the auto-pan.
apan_wet | v2 | [0..100] | :the wet level of the auto-pan | How much of the changed sound comes out of the auto-pan.
apan_wet_onccN | extension | >apan_wet
bitred | v2 | [0..100] | :the bit reduction | How strongly the sound is reduced to fewer bits.
bitred_onccN | extension | >bitred
bitred_curveccN | extension integer | [0..255] | =0 | >bitred
bitred_smoothccN | extension | >bitred
bitred_stepccN | extension | >bitred
bus | v2 string | =main | {main,aux1,aux2,aux3,aux4,aux5,aux6,aux7,aux8,fx1,fx2,fx3,fx4,midi} | Bus that an effect works on: the main mix, an auxiliary bus, an effect send or the MIDI stream.
bypass_onccN | v2 float | Switches the effect off by controller N.
comp_attack | v2 float seconds | Time in which the compressor takes hold of a sound above its threshold.
comp_gain | v2 | Gain behind the compressor.
comp_ratio | v2 | [0..100] | How strongly the compressor lowers what is above its threshold.
comp_release | v2 float seconds | Time in which the compressor lets go of a sound below its threshold.
comp_stlink | v2 string | {on,off} | Whether the compressor treats both sides alike, by the louder one.
comp_threshold | v2 float dB | Level above which the compressor lowers the sound.
decim | v2 | [0..100] | :the sample-rate reduction | How strongly the sound is reduced to a lower sample rate.
decim_onccN | extension | >decim
decim_curveccN | extension integer | [0..255] | =0 | >decim
decim_smoothccN | extension | >decim
decim_stepccN | extension | >decim
delay_cutoff | v2 float Hz | :the cutoff frequency of the delay | Cutoff frequency of the filter in the delay.
delay_cutoff_onccN | extension | >delay_cutoff
delay_damphi | v2 | [0..100] | :the high damping of the delay | How much high frequencies fade from repeat to repeat of the delay.
delay_damphi_onccN | extension | >delay_damphi
delay_damplo | v2 | [0..100] | :the low damping of the delay | How much low frequencies fade from repeat to repeat of the delay.
delay_damplo_onccN | extension | >delay_damplo
delay_dry | v2 | [0..100] | :the dry level of the delay | How much of the unchanged sound passes the delay.
delay_dry_onccN | extension | >delay_dry
delay_feedback | v2 | [0..100] | :the feedback of the delay | How much of each repeat of the delay is fed back into it.
delay_feedback_onccN | extension | >delay_feedback
delay_filter | v2 string | Type of the filter in the delay.
delay_input | v2 | [0..100] | :the input level of the delay | How much of the sound goes into the delay.
delay_input_onccN | extension | >delay_input
delay_levelc | v2 | [0..100] | Level of the centre tap of the delay.
delay_levell | v2 | [0..100] | Level of the left tap of the delay.
delay_levelr | v2 | [0..100] | Level of the right tap of the delay.
delay_lfofreq | v2 float Hz | :the modulation speed of the delay | Speed at which the delay time swings.
delay_lfofreq_onccN | extension | >delay_lfofreq
delay_moddepth | v2 | [0..100] | :the modulation depth of the delay | How far the delay time swings.
delay_moddepth_onccN | extension | >delay_moddepth
delay_mode | v2 string | {detune,chorus,cross,flanger,lrc,mod,multimod,panning,ping,rlc,stereo,tlcr} | Kind of delay, by its taps and the way they are fed.
delay_panc | v2 | [0..100] | :the pan position of the centre tap of the delay | Pan position of the centre tap of the delay.
delay_panc_onccN | extension | >delay_panc
delay_panl | v2 | [0..100] | :the pan position of the left tap of the delay | Pan position of the left tap of the delay.
delay_panl_onccN | extension | >delay_panl
delay_panr | v2 | [0..100] | :the pan position of the right tap of the delay | Pan position of the right tap of the delay.
delay_panr_onccN | extension | >delay_panr
delay_resonance | v2 | :the resonance of the delay | Resonance of the filter in the delay.
delay_resonance_onccN | extension | >delay_resonance
delay_spread | v2 | [0..100] | :the stereo spread of the delay | Stereo spread of the repeats of the delay.
delay_spread_onccN | extension | >delay_spread
delay_syncc_onccN | v2 | Switches tempo syncing of the centre tap of the delay by controller N.
delay_syncl_onccN | v2 | Switches tempo syncing of the left tap of the delay by controller N.
delay_syncr_onccN | v2 | Switches tempo syncing of the right tap of the delay by controller N.
delay_time_tap | v2 | Sets the delay time by tapping it in.
delay_timec | v2 | :the time of the centre tap of the delay | Time of the centre tap of the delay.
delay_timec_onccN | extension | >delay_timec
delay_timel | v2 | :the time of the left tap of the delay | Time of the left tap of the delay.
delay_timel_onccN | extension | >delay_timel
delay_timer | v2 | :the time of the right tap of the delay | Time of the right tap of the delay.
delay_timer_onccN | extension | >delay_timer
delay_wet | v2 | [0..100] | :the wet level of the delay | How much of the changed sound comes out of the delay.
delay_wet_onccN | extension | >delay_wet
directtomain | v2 float % | [0..100] | =100 | :the level to the main output | How much of the unprocessed sound goes straight to the main output.
disto_depth | v2 | [0..100] | :the depth of the distortion | Strength of the distortion.
disto_depth_onccN | extension | >disto_depth
disto_dry | v2 | [0..100] | :the dry level of the distortion | How much of the unchanged sound passes the distortion.
disto_dry_onccN | extension | >disto_dry
disto_stages | v2 | Number of stages of the distortion in a row.
disto_tone | v2 | [0..100] | :the tone of the distortion | Brightness of the distortion.
disto_tone_onccN | extension | >disto_tone
disto_wet | v2 | [0..100] | :the wet level of the distortion | How much of the changed sound comes out of the distortion.
disto_wet_onccN | extension | >disto_wet
dsp_order | v2 integer | [0..14] | Order in which the filter, the equaliser and the other processors of a voice follow each other.
effect1 | v1 float % | [0..100] | =0 | :the level sent to effect bus 1 | How much of the region is sent to effect bus 1.
effect2 | v1 float % | [0..100] | =0 | :the level sent to effect bus 2 | How much of the region is sent to effect bus 2.
effect3 | v2 float % | [0..100] | =0 | :the level sent to effect bus 3 | How much of the region is sent to effect bus 3.
effect4 | v2 float % | [0..100] | =0 | :the level sent to effect bus 4 | How much of the region is sent to effect bus 4.
eq_bw | v2 | :the bandwidth of the equaliser effect | Bandwidth of the equaliser effect.
eq_bw_onccN | extension | >eq_bw
eq_freq | v2 | :the frequency of the equaliser effect | Frequency at which the equaliser effect works.
eq_freq_onccN | extension | >eq_freq
eq_gain | v2 | :the gain of the equaliser effect | How far the equaliser effect raises or lowers its frequencies.
eq_gain_onccN | extension | >eq_gain
eq_type | v2 | Shape of the equaliser effect.
filter_cutoff | v2 | :the cutoff frequency of the filter effect | Cutoff frequency of the filter effect.
filter_cutoff_onccN | extension | >filter_cutoff
filter_resonance | v2 | :the resonance of the filter effect | Resonance of the filter effect.
filter_resonance_onccN | extension | >filter_resonance
filter_type | v2 string | Type of the filter effect.
fxNtomain | v2 float % | [0..100] | =0 | :the level of effect bus N in the main mix | How much of effect bus N goes to the main output.
fxNtomix | v2 float % | [0..100] | =0 | :the level of effect bus N in the mix | How much of effect bus N goes to the mix that the effects on the main output work on.
gate_onccN | v2 | Opens and closes the gate by controller N.
gate_attack | v2 | Time in which the gate opens.
gate_release | v2 | Time in which the gate closes.
gate_stlink | v2 string | {on,off} | Whether the gate treats both sides alike, by the louder one.
gate_threshold | v2 | Level below which the gate silences the sound.
internal | v2 string | =off | {on,off} | Whether the effect works inside each voice rather than on the mix.
param_offset | extension integer | Number added to the controller numbers by which the parameters of a vendor effect are reached.
phaser_depth | v2 | [0..100] | :the depth of the phaser | How far the phaser sweeps.
phaser_depth_onccN | extension | >phaser_depth
phaser_feedback | v2 | [0..100] | :the feedback of the phaser | How much of the output of the phaser is fed back into it.
phaser_feedback_onccN | extension | >phaser_feedback
phaser_freq | v2 float Hz | :the speed of the phaser | Speed of the sweep of the phaser.
phaser_freq_onccN | extension | >phaser_freq
phaser_phase_onccN | v2 | [0..100] | How far controller N, fully up, moves the phase of the phaser.
phaser_stages | v2 | Number of stages of the phaser.
phaser_waveform | v2 | Number of the wave form of the sweep of the phaser.
phaser_wet | v2 | [0..100] | :the wet level of the phaser | How much of the changed sound comes out of the phaser.
phaser_wet_onccN | extension | >phaser_wet
reverb_damp | v2 | [0..100] | :the damping of the reverb | How much faster high frequencies die away in the reverb.
reverb_damp_onccN | extension | >reverb_damp
reverb_dry | v2 | [0..100] | :the dry level of the reverb | How much of the unchanged sound passes the reverb.
reverb_dry_onccN | extension | >reverb_dry
reverb_input | v2 | [0..100] | :the input level of the reverb | How much of the sound goes into the reverb.
reverb_input_onccN | extension | >reverb_input
reverb_predelay | v2 float seconds | :the pre-delay of the reverb | Waiting time before the reverb starts.
reverb_predelay_onccN | extension | >reverb_predelay
reverb_size | v2 | [0..100] | :the size of the reverb | Size of the room of the reverb.
reverb_size_onccN | extension | >reverb_size
reverb_tone | v2 | [0..100] | :the tone of the reverb | Brightness of what goes into the reverb.
reverb_tone_onccN | extension | >reverb_tone
reverb_type | v2 string | {chamber,large_hall,large_room,mid_hall,mid_room,small_hall,small_room} | Kind and size of the room of the reverb.
reverb_wet | v2 | [0..100] | :the wet level of the reverb | How much of the changed sound comes out of the reverb.
reverb_wet_onccN | extension | >reverb_wet
static_cyclic_level | v2 | [0..100] | Level of the crackle that comes back at regular times.
static_cyclic_time | v2 float seconds | Time between one regular crackle and the next.
static_filter | v2 string | Type of the filter that the added hiss and crackle go through.
static_level | v2 | [0..100] | :the level of the added noise | Level of the steady noise that the static effect adds.
static_level_onccN | extension | >static_level
static_random_level | v2 | [0..100] | Level of the crackle that comes at random times.
static_random_maxtime | v2 float seconds | Longest time between two random crackles.
static_random_mintime | v2 float seconds | Shortest time between two random crackles.
static_stereo | v2 | Whether the noise of the static effect differs between left and right.
static_tone | v2 | [0..100] | Brightness of the noise of the static effect.
strings_number | v2 | Number of strings that ring along with the sound.
strings_wet_onccN | v2 | [0..100] | How far controller N, fully up, raises the level of the strings that ring along.
tdfir_dry | v2 | [0..100] | :the dry level of the convolution filter | How much of the unchanged sound passes the convolution filter.
tdfir_dry_onccN | extension | >tdfir_dry
tdfir_gain | v2 | [0..100] | Gain of the convolution filter.
tdfir_impulse | v2 | Impulse response that the convolution filter uses.
tdfir_wet | v2 | [0..100] | :the wet level of the convolution filter | How much of the changed sound comes out of the convolution filter.
tdfir_wet_onccN | extension | >tdfir_wet
type | v2 string | {apan,comp,delay,disto,eq,filter,fverb,gate,limiter,lofi,mverb,phaser,static,strings,tdfir} | Which effect this header is: one of the listed kinds, or a dotted name of a vendor's own effect.
vendor_specific | extension string | Stands for parameters that one vendor's effect understands and others ignore.
`,
  },
];
