import type { OpcodeTable } from '../opcodeTable';

/** Envelopes: three with fixed stages and a target each, and numbered ones with free points. */
export const envelopes: readonly OpcodeTable[] = [
  {
    category: 'Modulation/Envelope Generators',
    rows: `
ampeg_attack | v1 float seconds | [0..100] | =0 | ~amp_attack | :the attack time of the amplitude envelope | Time in which the amplitude envelope rises to its peak.
ampeg_attackccN | extension float seconds | [-100..100] | =0 | >ampeg_attack | ~ampeg_attack_onccN
ampeg_attack_curveccN | extension integer | [0..255] | =0 | >ampeg_attack
ampeg_vel2attack | extension float seconds | [-100..100] | =0 | >ampeg_attack | ~amp_vel2attack
ampeg_decay | v1 float seconds | [0..100] | =0 | ~amp_decay | :the decay time of the amplitude envelope | Time in which the amplitude envelope falls from its peak to the sustain level.
ampeg_decayccN | extension float | [-100..100] | =0 | >ampeg_decay | ~ampeg_decay_onccN
ampeg_decay_curveccN | extension integer | [0..255] | =0 | >ampeg_decay
ampeg_vel2decay | extension float seconds | [-100..100] | =0 | >ampeg_decay | ~amp_vel2decay
ampeg_delay | v1 float seconds | [0..100] | =0 | ~amp_delay | :the delay of the amplitude envelope | Waiting time before the amplitude envelope starts.
ampeg_delayccN | extension float | [-100..100] | =0 | >ampeg_delay | ~ampeg_delay_onccN
ampeg_delay_curveccN | extension integer | [0..255] | =0 | >ampeg_delay
ampeg_vel2delay | extension float seconds | [-100..100] | =0 | >ampeg_delay | ~amp_vel2delay
ampeg_hold | v1 float seconds | [0..100] | =0 | ~amp_hold | :the hold time of the amplitude envelope | Time for which the amplitude envelope stays at its peak.
ampeg_holdccN | extension float | [-100..100] | =0 | >ampeg_hold | ~ampeg_hold_onccN
ampeg_hold_curveccN | extension integer | [0..255] | =0 | >ampeg_hold
ampeg_vel2hold | extension float seconds | [-100..100] | =0 | >ampeg_hold | ~amp_vel2hold
ampeg_release | v1 float seconds | [0..100] | =0.001 | ~amp_release | :the release time of the amplitude envelope | Time in which the amplitude envelope falls to nothing after the key is released.
ampeg_releaseccN | extension float seconds | [-100..100] | =0 | >ampeg_release | ~ampeg_release_onccN
ampeg_release_curveccN | extension integer | [0..255] | =0 | >ampeg_release
ampeg_vel2release | extension float seconds | [-100..100] | =0 | >ampeg_release | ~amp_vel2release
ampeg_sustain | v1 float % | [0..100] | =100 | ~amp_sustain | :the sustain level of the amplitude envelope | Level of the amplitude envelope while the key stays down, in percent of its peak.
ampeg_sustainccN | extension float % | [-100..100] | =0 | >ampeg_sustain | ~ampeg_sustain_onccN
ampeg_sustain_curveccN | extension integer | [0..255] | =0 | >ampeg_sustain
ampeg_vel2sustain | extension float % | [-100..100] | =0 | >ampeg_sustain | ~amp_vel2sustain
ampeg_start | v1 float % | [0..100] | =0 | :the starting level of the amplitude envelope | Level from which the amplitude envelope starts, in percent of its peak.
ampeg_startccN | extension float seconds | [-100..100] | =0 | >ampeg_start | ~ampeg_start_onccN
ampeg_start_curveccN | extension integer | [0..255] | =0 | >ampeg_start
ampeg_attack_shape | extension float | =0 | :the shape of the attack of the amplitude envelope | Curvature of the attack of the amplitude envelope; 0 is a straight line.
ampeg_decay_shape | extension float | =-10.3616 | :the shape of the decay of the amplitude envelope | Curvature of the decay of the amplitude envelope; 0 is a straight line.
ampeg_decay_zero | extension integer | [0..1] | =1 | Whether the decay time of the amplitude envelope is measured down to zero (1) or down to the level where the stage ends (0).
ampeg_dynamic | extension integer | [0..1] | =0 | Whether the settings of the amplitude envelope can change while a note sounds (1) or are fixed when it starts (0).
ampeg_release_shape | extension float | =-10.3616 | :the shape of the release of the amplitude envelope | Curvature of the release of the amplitude envelope; 0 is a straight line.
ampeg_release_zero | extension integer | [0..1] | =0 | Whether the release time of the amplitude envelope is measured from its peak (1) or from the level at which the key is released (0).
fileg_attack_shape | extension float | =0 | :the shape of the attack of the filter envelope | Curvature of the attack of the filter envelope; 0 is a straight line.
fileg_decay_shape | extension float | =0 | :the shape of the decay of the filter envelope | Curvature of the decay of the filter envelope; 0 is a straight line.
fileg_decay_zero | extension integer | [0..1] | =1 | Whether the decay time of the filter envelope is measured down to zero (1) or down to the level where the stage ends (0).
fileg_release_shape | extension float | =0 | :the shape of the release of the filter envelope | Curvature of the release of the filter envelope; 0 is a straight line.
fileg_release_zero | extension integer | [0..1] | =0 | Whether the release time of the filter envelope is measured from its peak (1) or from the level at which the key is released (0).
fileg_dynamic | extension integer | [0..1] | =0 | Whether the settings of the filter envelope can change while a note sounds (1) or are fixed when it starts (0).
pitcheg_attack_shape | extension float | =0 | :the shape of the attack of the pitch envelope | Curvature of the attack of the pitch envelope; 0 is a straight line.
pitcheg_decay_shape | extension float | =0 | :the shape of the decay of the pitch envelope | Curvature of the decay of the pitch envelope; 0 is a straight line.
pitcheg_decay_zero | extension integer | [0..1] | =1 | Whether the decay time of the pitch envelope is measured down to zero (1) or down to the level where the stage ends (0).
pitcheg_release_shape | extension float | =0 | :the shape of the release of the pitch envelope | Curvature of the release of the pitch envelope; 0 is a straight line.
pitcheg_release_zero | extension integer | [0..1] | =0 | Whether the release time of the pitch envelope is measured from its peak (1) or from the level at which the key is released (0).
pitcheg_dynamic | extension integer | [0..1] | =0 | Whether the settings of the pitch envelope can change while a note sounds (1) or are fixed when it starts (0).
fileg_attack | v1 float seconds | [0..100] | =0 | ~fil_attack | :the attack time of the filter envelope | Time in which the filter envelope rises to its peak.
fileg_attack_onccN | extension float seconds | [-100..100] | =0 | >fileg_attack | ~fileg_attackccN
fileg_attack_curveccN | extension integer | [0..255] | =0 | >fileg_attack
fileg_vel2attack | extension float seconds | [-100..100] | =0 | >fileg_attack | ~fil_vel2attack
fileg_decay | v1 float seconds | [0..100] | =0 | ~fil_decay | :the decay time of the filter envelope | Time in which the filter envelope falls from its peak to the sustain level.
fileg_decay_onccN | extension float | [-100..100] | =0 | >fileg_decay | ~fileg_decayccN
fileg_decay_curveccN | extension integer | [0..255] | =0 | >fileg_decay
fileg_vel2decay | extension float seconds | [-100..100] | =0 | >fileg_decay | ~fil_vel2decay
fileg_delay | v1 float seconds | [0..100] | =0 | ~fil_delay | :the delay of the filter envelope | Waiting time before the filter envelope starts.
fileg_delay_onccN | extension float | [-100..100] | =0 | >fileg_delay | ~fileg_delayccN
fileg_delay_curveccN | extension integer | [0..255] | =0 | >fileg_delay
fileg_vel2delay | extension float seconds | [-100..100] | =0 | >fileg_delay | ~fil_vel2delay
fileg_depth | v1 integer cents | [-12000..12000] | =0 | ~fil_depth | :the depth of the filter envelope | How far the peak of the filter envelope moves the cutoff frequency.
fileg_depth_onccN | extension integer cents | [-12000..12000] | =0 | >fileg_depth | ~fileg_depthccN
fileg_depth_curveccN | extension integer | [0..255] | =0 | >fileg_depth
fileg_vel2depth | extension integer cents | [-12000..12000] | =0 | >fileg_depth | ~fil_vel2depth
fileg_hold | v1 float seconds | [0..100] | =0 | ~fil_hold | :the hold time of the filter envelope | Time for which the filter envelope stays at its peak.
fileg_hold_onccN | extension float | [-100..100] | =0 | >fileg_hold | ~fileg_holdccN
fileg_hold_curveccN | extension integer | [0..255] | =0 | >fileg_hold
fileg_vel2hold | extension float seconds | [-100..100] | =0 | >fileg_hold | ~fil_vel2hold
fileg_release | v1 float seconds | [0..100] | =0 | ~fil_release | :the release time of the filter envelope | Time in which the filter envelope falls to nothing after the key is released.
fileg_release_onccN | extension float seconds | [-100..100] | =0 | >fileg_release | ~fileg_releaseccN
fileg_release_curveccN | extension integer | [0..255] | =0 | >fileg_release
fileg_vel2release | extension float seconds | [-100..100] | =0 | >fileg_release | ~fil_vel2release
fileg_start | v1 float % | [0..100] | =0 | :the starting level of the filter envelope | Level from which the filter envelope starts, in percent of its peak.
fileg_start_onccN | extension float seconds | [-100..100] | =0 | >fileg_start | ~fileg_startccN
fileg_start_curveccN | extension integer | [0..255] | =0 | >fileg_start
fileg_sustain | v1 float % | [0..100] | =0 | ~fil_sustain | :the sustain level of the filter envelope | Level of the filter envelope while the key stays down, in percent of its peak.
fileg_sustain_onccN | extension float seconds | [-100..100] | =0 | >fileg_sustain | ~fileg_sustainccN
fileg_sustain_curveccN | extension integer | [0..255] | =0 | >fileg_sustain
fileg_vel2sustain | extension float % | [-100..100] | =0 | >fileg_sustain | ~fil_vel2sustain
pitcheg_attack | v1 float seconds | [0..100] | =0 | ~pitch_attack | :the attack time of the pitch envelope | Time in which the pitch envelope rises to its peak.
pitcheg_attack_onccN | extension | >pitcheg_attack
pitcheg_attack_curveccN | extension integer | [0..255] | =0 | >pitcheg_attack
pitcheg_vel2attack | extension float seconds | [-100..100] | =0 | >pitcheg_attack | ~pitch_vel2attack
pitcheg_decay | v1 float seconds | [0..100] | =0 | ~pitch_decay | :the decay time of the pitch envelope | Time in which the pitch envelope falls from its peak to the sustain level.
pitcheg_decay_onccN | extension float | [-100..100] | =0 | >pitcheg_decay
pitcheg_decay_curveccN | extension integer | [0..255] | =0 | >pitcheg_decay
pitcheg_vel2decay | extension float seconds | [-100..100] | =0 | >pitcheg_decay | ~pitch_vel2decay
pitcheg_delay | v1 float seconds | [0..100] | =0 | ~pitch_delay | :the delay of the pitch envelope | Waiting time before the pitch envelope starts.
pitcheg_delay_onccN | extension float | [-100..100] | =0 | >pitcheg_delay
pitcheg_delay_curveccN | extension integer | [0..255] | =0 | >pitcheg_delay
pitcheg_vel2delay | extension float seconds | [-100..100] | =0 | >pitcheg_delay | ~pitch_vel2delay
pitcheg_depth | v1 integer cents | [-12000..12000] | =0 | ~pitch_depth | :the depth of the pitch envelope | How far the peak of the pitch envelope moves the pitch.
pitcheg_depth_onccN | extension integer cents | [-12000..12000] | =0 | >pitcheg_depth | ~pitcheg_depthccN
pitcheg_depth_curveccN | extension integer | [0..255] | =0 | >pitcheg_depth
pitcheg_vel2depth | extension integer cents | [-12000..12000] | =0 | >pitcheg_depth | ~pitch_vel2depth
pitcheg_hold | v1 float seconds | [0..100] | =0 | ~pitch_hold | :the hold time of the pitch envelope | Time for which the pitch envelope stays at its peak.
pitcheg_hold_onccN | extension float | [-100..100] | =0 | >pitcheg_hold
pitcheg_hold_curveccN | extension integer | [0..255] | =0 | >pitcheg_hold
pitcheg_vel2hold | extension float seconds | [-100..100] | =0 | >pitcheg_hold | ~pitch_vel2hold
pitcheg_release | v1 float seconds | [0..100] | =0 | ~pitch_release | :the release time of the pitch envelope | Time in which the pitch envelope falls to nothing after the key is released.
pitcheg_release_onccN | extension float seconds | [-100..100] | =0 | >pitcheg_release
pitcheg_release_curveccN | extension integer | [0..255] | =0 | >pitcheg_release
pitcheg_vel2release | extension float seconds | [-100..100] | =0 | >pitcheg_release | ~pitch_vel2release
pitcheg_start | v1 float % | [0..100] | =0 | :the starting level of the pitch envelope | Level from which the pitch envelope starts, in percent of its peak.
pitcheg_start_onccN | extension float seconds | [-100..100] | =0 | >pitcheg_start
pitcheg_start_curveccN | extension integer | [0..255] | =0 | >pitcheg_start
pitcheg_sustain | v1 float % | [0..100] | =0 | ~pitch_sustain | :the sustain level of the pitch envelope | Level of the pitch envelope while the key stays down, in percent of its peak.
pitcheg_sustain_onccN | extension float seconds | [-100..100] | =0 | >pitcheg_sustain
pitcheg_sustain_curveccN | extension integer | [0..255] | =0 | >pitcheg_sustain
pitcheg_vel2sustain | extension float % | [-100..100] | =0 | >pitcheg_sustain | ~pitch_vel2sustain
egN_points | v2 | Number of points of envelope N; without it, the points given are counted.
egN_timeX | v2 float seconds | :the time of point X of envelope N | Time that envelope N takes from the point before to point X.
egN_timeX_onccY | extension float seconds | >egN_timeX
egN_levelX | v2 float | [-1..1] | =0 | :the level of point X of envelope N | Level of envelope N at point X, from -1 to 1.
egN_levelX_onccY | extension float | [-1..1] | =0 | >egN_levelX
egN_ampeg | extension | Makes envelope N the amplitude envelope, in place of the one with fixed stages.
egN_dynamic | extension integer | [0..1] | =0 | Whether the settings of envelope N can change while a note sounds (1) or are fixed when it starts (0).
egN_shapeX | v2 float | =0 | :the shape of envelope N before point X | Curvature of envelope N on the way to point X; 0 is a straight line.
egN_curveX | v2 | Number of the curve that envelope N follows on the way to point X.
egN_sustain | v2 | Number of the point at which envelope N waits while the key stays down.
egN_loop | v2 | Number of the point to which envelope N goes back when it reaches its sustain point.
egN_loop_count | v2 | How many times envelope N repeats its loop.
egN_volume | v2
egN_volume_onccX | extension | >egN_volume
egN_amplitude | v2
egN_amplitude_onccX | extension | >egN_amplitude
egN_pan | v2
egN_pan_onccX | extension | >egN_pan
egN_width | v2
egN_width_onccX | extension | >egN_width
egN_pan_curve | v2 | :the pan curve of envelope N | Number of the curve that shapes how envelope N moves the pan position.
egN_pan_curveccX | extension integer | [0..255] | =0 | >egN_pan_curve
egN_freq_lfoX | v2 float Hz | =0 | :the depth of envelope N on the frequency of LFO X | How far envelope N moves the frequency of LFO X.
egN_depth_lfoX | v2 float % | =100 | :the depth of envelope N on the depth of LFO X | How much envelope N scales the depth of LFO X.
egN_depthadd_lfoX | v2 | :the depth that envelope N adds to LFO X | How much envelope N adds to the depth of LFO X.
egN_pitch | v2
egN_pitch_onccX | extension | >egN_pitch
egN_cutoff | v2
egN_cutoff_onccX | extension | >egN_cutoff
egN_cutoff2 | v2
egN_cutoff2_onccX | extension | >egN_cutoff2
egN_resonance | v2
egN_resonance_onccX | extension | >egN_resonance
egN_resonance2 | v2
egN_resonance2_onccX | extension | >egN_resonance2
egN_eqXfreq | v2
egN_eqXfreq_onccY | extension | >egN_eqXfreq
egN_eqXbw | v2
egN_eqXbw_onccY | extension | >egN_eqXbw
egN_eqXgain | v2
egN_eqXgain_onccY | extension | >egN_eqXgain
egN_decim | v2
egN_decim_onccX | extension | >egN_decim
egN_bitred | v2
egN_bitred_onccX | extension | >egN_bitred
egN_rectify | v2
egN_rectify_onccX | extension | >egN_rectify
egN_ringmod | v2
egN_ringmod_onccX | extension | >egN_ringmod
egN_noiselevel | v2
egN_noiselevel_onccX | extension | >egN_noiselevel
egN_noisestep | v2
egN_noisestep_onccX | extension | >egN_noisestep
egN_noisetone | v2
egN_noisetone_onccX | extension | >egN_noisetone
egN_driveshape | v2
egN_driveshape_onccX | extension | >egN_driveshape
egN_sample_dyn_paramX | extension
egN_sample_dyn_paramX_onccY | extension | >egN_sample_dyn_paramX
`,
  },
];
