import type { OpcodeTable } from '../opcodeTable';

/** Envelopes: three with fixed stages and a target each, and numbered ones with free points. */
export const envelopes: readonly OpcodeTable[] = [
  {
    category: 'Modulation/Envelope Generators',
    rows: `
ampeg_attack | v1 float seconds | [0..100] | =0 | ~amp_attack
ampeg_attackccN | extension float seconds | [-100..100] | =0 | >ampeg_attack | ~ampeg_attack_onccN
ampeg_attack_curveccN | extension integer | [0..255] | =0 | >ampeg_attack
ampeg_vel2attack | extension float seconds | [-100..100] | =0 | >ampeg_attack | ~amp_vel2attack
ampeg_decay | v1 float seconds | [0..100] | =0 | ~amp_decay
ampeg_decayccN | extension float | [-100..100] | =0 | >ampeg_decay | ~ampeg_decay_onccN
ampeg_decay_curveccN | extension integer | [0..255] | =0 | >ampeg_decay
ampeg_vel2decay | extension float seconds | [-100..100] | =0 | >ampeg_decay | ~amp_vel2decay
ampeg_delay | v1 float seconds | [0..100] | =0 | ~amp_delay
ampeg_delayccN | extension float | [-100..100] | =0 | >ampeg_delay | ~ampeg_delay_onccN
ampeg_delay_curveccN | extension integer | [0..255] | =0 | >ampeg_delay
ampeg_vel2delay | extension float seconds | [-100..100] | =0 | >ampeg_delay | ~amp_vel2delay
ampeg_hold | v1 float seconds | [0..100] | =0 | ~amp_hold
ampeg_holdccN | extension float | [-100..100] | =0 | >ampeg_hold | ~ampeg_hold_onccN
ampeg_hold_curveccN | extension integer | [0..255] | =0 | >ampeg_hold
ampeg_vel2hold | extension float seconds | [-100..100] | =0 | >ampeg_hold | ~amp_vel2hold
ampeg_release | v1 float seconds | [0..100] | =0.001 | ~amp_release
ampeg_releaseccN | extension float seconds | [-100..100] | =0 | >ampeg_release | ~ampeg_release_onccN
ampeg_release_curveccN | extension integer | [0..255] | =0 | >ampeg_release
ampeg_vel2release | extension float seconds | [-100..100] | =0 | >ampeg_release | ~amp_vel2release
ampeg_sustain | v1 float % | [0..100] | =100 | ~amp_sustain
ampeg_sustainccN | extension float % | [-100..100] | =0 | >ampeg_sustain | ~ampeg_sustain_onccN
ampeg_sustain_curveccN | extension integer | [0..255] | =0 | >ampeg_sustain
ampeg_vel2sustain | extension float % | [-100..100] | =0 | >ampeg_sustain | ~amp_vel2sustain
ampeg_start | v1 float % | [0..100] | =0
ampeg_startccN | extension float seconds | [-100..100] | =0 | >ampeg_start | ~ampeg_start_onccN
ampeg_start_curveccN | extension integer | [0..255] | =0 | >ampeg_start
ampeg_attack_shape | extension float | =0
ampeg_decay_shape | extension float | =-10.3616
ampeg_decay_zero | extension integer | [0..1] | =1
ampeg_dynamic | extension integer | [0..1] | =0
ampeg_release_shape | extension float | =-10.3616
ampeg_release_zero | extension integer | [0..1] | =0
fileg_attack_shape | extension float | =0
fileg_decay_shape | extension float | =0
fileg_decay_zero | extension integer | [0..1] | =1
fileg_release_shape | extension float | =0
fileg_release_zero | extension integer | [0..1] | =0
fileg_dynamic | extension integer | [0..1] | =0
pitcheg_attack_shape | extension float | =0
pitcheg_decay_shape | extension float | =0
pitcheg_decay_zero | extension integer | [0..1] | =1
pitcheg_release_shape | extension float | =0
pitcheg_release_zero | extension integer | [0..1] | =0
pitcheg_dynamic | extension integer | [0..1] | =0
fileg_attack | v1 float seconds | [0..100] | =0 | ~fil_attack
fileg_attack_onccN | extension float seconds | [-100..100] | =0 | >fileg_attack | ~fileg_attackccN
fileg_attack_curveccN | extension integer | [0..255] | =0 | >fileg_attack
fileg_vel2attack | extension float seconds | [-100..100] | =0 | >fileg_attack | ~fil_vel2attack
fileg_decay | v1 float seconds | [0..100] | =0 | ~fil_decay
fileg_decay_onccN | extension float | [-100..100] | =0 | >fileg_decay | ~fileg_decayccN
fileg_decay_curveccN | extension integer | [0..255] | =0 | >fileg_decay
fileg_vel2decay | extension float seconds | [-100..100] | =0 | >fileg_decay | ~fil_vel2decay
fileg_delay | v1 float seconds | [0..100] | =0 | ~fil_delay
fileg_delay_onccN | extension float | [-100..100] | =0 | >fileg_delay | ~fileg_delayccN
fileg_delay_curveccN | extension integer | [0..255] | =0 | >fileg_delay
fileg_vel2delay | extension float seconds | [-100..100] | =0 | >fileg_delay | ~fil_vel2delay
fileg_depth | v1 integer cents | [-12000..12000] | =0 | ~fil_depth
fileg_depth_onccN | extension integer cents | [-12000..12000] | =0 | >fileg_depth | ~fileg_depthccN
fileg_depth_curveccN | extension integer | [0..255] | =0 | >fileg_depth
fileg_vel2depth | extension integer cents | [-12000..12000] | =0 | >fileg_depth | ~fil_vel2depth
fileg_hold | v1 float seconds | [0..100] | =0 | ~fil_hold
fileg_hold_onccN | extension float | [-100..100] | =0 | >fileg_hold | ~fileg_holdccN
fileg_hold_curveccN | extension integer | [0..255] | =0 | >fileg_hold
fileg_vel2hold | extension float seconds | [-100..100] | =0 | >fileg_hold | ~fil_vel2hold
fileg_release | v1 float seconds | [0..100] | =0 | ~fil_release
fileg_release_onccN | extension float seconds | [-100..100] | =0 | >fileg_release | ~fileg_releaseccN
fileg_release_curveccN | extension integer | [0..255] | =0 | >fileg_release
fileg_vel2release | extension float seconds | [-100..100] | =0 | >fileg_release | ~fil_vel2release
fileg_start | v1 float % | [0..100] | =0
fileg_start_onccN | extension float seconds | [-100..100] | =0 | >fileg_start | ~fileg_startccN
fileg_start_curveccN | extension integer | [0..255] | =0 | >fileg_start
fileg_sustain | v1 float % | [0..100] | =0 | ~fil_sustain
fileg_sustain_onccN | extension float seconds | [-100..100] | =0 | >fileg_sustain | ~fileg_sustainccN
fileg_sustain_curveccN | extension integer | [0..255] | =0 | >fileg_sustain
fileg_vel2sustain | extension float % | [-100..100] | =0 | >fileg_sustain | ~fil_vel2sustain
pitcheg_attack | v1 float seconds | [0..100] | =0 | ~pitch_attack
pitcheg_attack_onccN | extension | >pitcheg_attack
pitcheg_attack_curveccN | extension integer | [0..255] | =0 | >pitcheg_attack
pitcheg_vel2attack | extension float seconds | [-100..100] | =0 | >pitcheg_attack | ~pitch_vel2attack
pitcheg_decay | v1 float seconds | [0..100] | =0 | ~pitch_decay
pitcheg_decay_onccN | extension float | [-100..100] | =0 | >pitcheg_decay
pitcheg_decay_curveccN | extension integer | [0..255] | =0 | >pitcheg_decay
pitcheg_vel2decay | extension float seconds | [-100..100] | =0 | >pitcheg_decay | ~pitch_vel2decay
pitcheg_delay | v1 float seconds | [0..100] | =0 | ~pitch_delay
pitcheg_delay_onccN | extension float | [-100..100] | =0 | >pitcheg_delay
pitcheg_delay_curveccN | extension integer | [0..255] | =0 | >pitcheg_delay
pitcheg_vel2delay | extension float seconds | [-100..100] | =0 | >pitcheg_delay | ~pitch_vel2delay
pitcheg_depth | v1 integer cents | [-12000..12000] | =0 | ~pitch_depth
pitcheg_depth_onccN | extension integer cents | [-12000..12000] | =0 | >pitcheg_depth | ~pitcheg_depthccN
pitcheg_depth_curveccN | extension integer | [0..255] | =0 | >pitcheg_depth
pitcheg_vel2depth | extension integer cents | [-12000..12000] | =0 | >pitcheg_depth | ~pitch_vel2depth
pitcheg_hold | v1 float seconds | [0..100] | =0 | ~pitch_hold
pitcheg_hold_onccN | extension float | [-100..100] | =0 | >pitcheg_hold
pitcheg_hold_curveccN | extension integer | [0..255] | =0 | >pitcheg_hold
pitcheg_vel2hold | extension float seconds | [-100..100] | =0 | >pitcheg_hold | ~pitch_vel2hold
pitcheg_release | v1 float seconds | [0..100] | =0 | ~pitch_release
pitcheg_release_onccN | extension float seconds | [-100..100] | =0 | >pitcheg_release
pitcheg_release_curveccN | extension integer | [0..255] | =0 | >pitcheg_release
pitcheg_vel2release | extension float seconds | [-100..100] | =0 | >pitcheg_release | ~pitch_vel2release
pitcheg_start | v1 float % | [0..100] | =0
pitcheg_start_onccN | extension float seconds | [-100..100] | =0 | >pitcheg_start
pitcheg_start_curveccN | extension integer | [0..255] | =0 | >pitcheg_start
pitcheg_sustain | v1 float % | [0..100] | =0 | ~pitch_sustain
pitcheg_sustain_onccN | extension float seconds | [-100..100] | =0 | >pitcheg_sustain
pitcheg_sustain_curveccN | extension integer | [0..255] | =0 | >pitcheg_sustain
pitcheg_vel2sustain | extension float % | [-100..100] | =0 | >pitcheg_sustain | ~pitch_vel2sustain
egN_points | v2
egN_timeX | v2 float seconds
egN_timeX_onccY | extension float seconds | >egN_timeX
egN_levelX | v2 float | [-1..1] | =0
egN_levelX_onccY | extension float | [-1..1] | =0 | >egN_levelX
egN_ampeg | extension
egN_dynamic | extension integer | [0..1] | =0
egN_shapeX | v2 float | =0
egN_curveX | v2
egN_sustain | v2
egN_loop | v2
egN_loop_count | v2
egN_volume | v2
egN_volume_onccX | extension | >egN_volume
egN_amplitude | v2
egN_amplitude_onccX | extension | >egN_amplitude
egN_pan | v2
egN_pan_onccX | extension | >egN_pan
egN_width | v2
egN_width_onccX | extension | >egN_width
egN_pan_curve | v2
egN_pan_curveccX | extension integer | [0..255] | =0 | >egN_pan_curve
egN_freq_lfoX | v2 float Hz | =0
egN_depth_lfoX | v2 float % | =100
egN_depthadd_lfoX | v2
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
