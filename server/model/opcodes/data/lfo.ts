import type { OpcodeTable } from '../opcodeTable';

/** Low-frequency oscillators: three with a fixed target, and numbered ones. */
export const lfo: readonly OpcodeTable[] = [
  {
    category: 'Modulation/LFO',
    rows: `
amplfo_delay | v1 float seconds | [0..100] | =0 | :the delay of the tremolo LFO | Waiting time before the tremolo LFO starts.
amplfo_depth | v1 float dB | [-10..10] | =0 | :the depth of the tremolo LFO | How far the tremolo LFO moves the level either way.
amplfo_depthccN | extension float dB | [-10..10] | =0 | >amplfo_depth | ~amplfo_depth_onccN
amplfo_depthchanaft | extension float dB | [-10..10] | =0 | >amplfo_depth
amplfo_depthpolyaft | extension float dB | [-10..10] | =0 | >amplfo_depth
amplfo_fade | v1 float seconds | [0..100] | =0 | :the fade-in of the tremolo LFO | Time in which the tremolo LFO grows to its full depth.
amplfo_freq | v1 float Hz | [0..20] | =0 | :the frequency of the tremolo LFO | Speed of the tremolo LFO.
amplfo_freqccN | extension float Hz | [-200..200] | =0 | >amplfo_freq
amplfo_freqchanaft | extension float Hz | [-200..200] | =0 | >amplfo_freq
amplfo_freqpolyaft | extension float Hz | [-200..200] | =0 | >amplfo_freq
fillfo_delay | v1 float seconds | [0..100] | =0 | :the delay of the filter LFO | Waiting time before the filter LFO starts.
fillfo_depth | v1 float cents | [-1200..1200] | =0 | :the depth of the filter LFO | How far the filter LFO moves the cutoff frequency either way.
fillfo_depthccN | extension float cents | [-1200..1200] | =0 | >fillfo_depth | ~fillfo_depth_onccN
fillfo_depthchanaft | extension float cents | [-1200..1200] | =0 | >fillfo_depth
fillfo_depthpolyaft | extension float cents | [-1200..1200] | =0 | >fillfo_depth
fillfo_fade | v1 float seconds | [0..100] | =0 | :the fade-in of the filter LFO | Time in which the filter LFO grows to its full depth.
fillfo_freq | v1 float Hz | [0..20] | =0 | :the frequency of the filter LFO | Speed of the filter LFO.
fillfo_freqccN | extension float Hz | [-200..200] | =0 | >fillfo_freq
fillfo_freqchanaft | extension float Hz | [-200..200] | =0 | >fillfo_freq
fillfo_freqpolyaft | extension float Hz | [-200..200] | =0 | >fillfo_freq
pitchlfo_delay | v1 float seconds | [0..100] | =0 | :the delay of the vibrato LFO | Waiting time before the vibrato LFO starts.
pitchlfo_depth | v1 float cents | [-1200..1200] | =0 | :the depth of the vibrato LFO | How far the vibrato LFO moves the pitch either way.
pitchlfo_depthccN | extension float cents | [-1200..1200] | =0 | >pitchlfo_depth | ~pitchlfo_depth_onccN
pitchlfo_depthchanaft | extension float cents | [-1200..1200] | =0 | >pitchlfo_depth
pitchlfo_depthpolyaft | extension float cents | [-1200..1200] | =0 | >pitchlfo_depth
pitchlfo_fade | v1 float seconds | [0..100] | =0 | :the fade-in of the vibrato LFO | Time in which the vibrato LFO grows to its full depth.
pitchlfo_freq | v1 float Hz | [0..20] | =0 | :the frequency of the vibrato LFO | Speed of the vibrato LFO.
pitchlfo_freqccN | extension float Hz | [-200..200] | =0 | >pitchlfo_freq
pitchlfo_freqchanaft | extension float Hz | [-200..200] | =0 | >pitchlfo_freq
pitchlfo_freqpolyaft | extension float Hz | [-200..200] | =0 | >pitchlfo_freq
lfoN_freq | v2 float Hz | :the frequency of LFO N | Speed of LFO N.
lfoN_freq_onccX | extension | >lfoN_freq
lfoN_freq_smoothccX | extension | >lfoN_freq
lfoN_freq_stepccX | extension | >lfoN_freq
lfoN_delay | v2 float seconds | =0 | :the delay of LFO N | Waiting time before LFO N starts.
lfoN_delay_onccX | extension | >lfoN_delay
lfoN_fade | v2 float | :the fade-in of LFO N | Time in which LFO N grows to its full depth, in seconds.
lfoN_fade_onccX | extension float | >lfoN_fade
lfoN_phase | v2 float | [0..1] | =0 | :the starting phase of LFO N | Place in its wave, from 0 to 1, at which LFO N starts.
lfoN_phase_onccX | extension | >lfoN_phase
lfoN_count | v2 integer | :the number of waves of LFO N | How many waves LFO N runs through before it stops.
lfoN_wave | v2 integer | =1 | +lfoN_waveX | :the wave of LFO N | Number of the wave form of LFO N.
lfoN_wave_onccX | extension | >lfoN_wave
lfoN_steps | v2 integer | Number of steps of LFO N when it runs as a step sequencer.
lfoN_stepX | v2 float % | [-100..100] | :step X of LFO N | Value of step X of LFO N when it runs as a step sequencer.
lfoN_stepX_onccY | extension | >lfoN_stepX
lfoN_smooth | v2 | :the smoothing of LFO N | How much the corners of the wave of LFO N are rounded.
lfoN_smooth_onccX | extension | >lfoN_smooth
lfoN_volume | v2
lfoN_volume_onccX | extension | >lfoN_volume
lfoN_volume_smoothccX | extension | >lfoN_volume
lfoN_volume_stepccX | extension | >lfoN_volume
lfoN_amplitude | v2
lfoN_amplitude_onccX | extension | >lfoN_amplitude
lfoN_amplitude_smoothccX | extension | >lfoN_amplitude
lfoN_amplitude_stepccX | extension | >lfoN_amplitude
lfoN_pan | v2
lfoN_pan_onccX | extension | >lfoN_pan
lfoN_pan_smoothccX | extension | >lfoN_pan
lfoN_pan_stepccX | extension | >lfoN_pan
lfoN_width | v2
lfoN_width_onccX | extension | >lfoN_width
lfoN_width_smoothccX | extension | >lfoN_width
lfoN_width_stepccX | extension | >lfoN_width
lfoN_freq_lfoX | v2 | :the depth of LFO N on the frequency of LFO X | How far LFO N moves the frequency of LFO X.
lfoN_freq_lfoX_onccY | extension | >lfoN_freq_lfoX
lfoN_depth_lfoX | v2 | :the depth of LFO N on the depth of LFO X | How much LFO N scales the depth of LFO X.
lfoN_depthadd_lfoX | v2 | :the depth that LFO N adds to LFO X | How much LFO N adds to the depth of LFO X.
lfoN_pitch | v2
lfoN_pitch_curveccX | extension integer | [0..255] | =0 | >lfoN_pitch
lfoN_pitch_onccX | extension | >lfoN_pitch
lfoN_pitch_smoothccX | extension | >lfoN_pitch
lfoN_pitch_stepccX | extension | >lfoN_pitch
lfoN_cutoff | v2 | +lfoN_cutoff2
lfoN_cutoff_onccX | extension | >lfoN_cutoff
lfoN_cutoff_smoothccX | extension | >lfoN_cutoff
lfoN_cutoff_stepccX | extension | >lfoN_cutoff
lfoN_resonance | v2 | +lfoN_resonance2
lfoN_resonance_onccX | extension | >lfoN_resonance
lfoN_resonance_smoothccX | extension | >lfoN_resonance
lfoN_resonance_stepccX | extension | >lfoN_resonance
lfoN_eqXfreq | v2
lfoN_eqXfreq_onccY | extension | >lfoN_eqXfreq
lfoN_eqXfreq_smoothccY | extension | >lfoN_eqXfreq
lfoN_eqXfreq_stepccY | extension | >lfoN_eqXfreq
lfoN_eqXbw | v2
lfoN_eqXbw_onccY | extension | >lfoN_eqXbw
lfoN_eqXbw_smoothccY | extension | >lfoN_eqXbw
lfoN_eqXbw_stepccY | extension | >lfoN_eqXbw
lfoN_eqXgain | v2
lfoN_eqXgain_onccY | extension | >lfoN_eqXgain
lfoN_eqXgain_smoothccY | extension | >lfoN_eqXgain
lfoN_eqXgain_stepccY | extension | >lfoN_eqXgain
lfoN_decim | v2
lfoN_decim_onccX | extension | >lfoN_decim
lfoN_decim_smoothccX | extension | >lfoN_decim
lfoN_decim_stepccX | extension | >lfoN_decim
lfoN_bitred | v2
lfoN_bitred_onccX | extension | >lfoN_bitred
lfoN_bitred_smoothccX | extension | >lfoN_bitred
lfoN_bitred_stepccX | extension | >lfoN_bitred
lfoN_noiselevel | v2
lfoN_noiselevel_onccX | extension | >lfoN_noiselevel
lfoN_noiselevel_smoothccX | extension | >lfoN_noiselevel
lfoN_noiselevel_stepccX | extension | >lfoN_noiselevel
lfoN_noisestep | v2
lfoN_noisestep_onccX | extension | >lfoN_noisestep
lfoN_noisestep_smoothccX | extension | >lfoN_noisestep
lfoN_noisestep_stepccX | extension | >lfoN_noisestep
lfoN_noisetone | v2
lfoN_noisetone_onccX | extension | >lfoN_noisetone
lfoN_noisetone_smoothccX | extension | >lfoN_noisetone
lfoN_noisetone_stepccX | extension | >lfoN_noisetone
lfoN_drive | v2
lfoN_drive_onccX | extension | >lfoN_drive
lfoN_drive_smoothccX | extension | >lfoN_drive
lfoN_drive_stepccX | extension | >lfoN_drive
lfoN_offset | extension float | +lfoN_offsetX | :the offset of LFO N | Constant added to the wave of LFO N.
lfoN_ratio | extension float | +lfoN_ratioX | :the frequency ratio of LFO N | Factor by which the wave runs faster than the frequency of LFO N.
lfoN_scale | extension float | +lfoN_scaleX | :the size of LFO N | Factor by which the wave of LFO N is made larger or smaller.
lfoN_sample_dyn_paramX | extension
lfoN_sample_dyn_paramX_onccY | extension | >lfoN_sample_dyn_paramX
`,
  },
];
