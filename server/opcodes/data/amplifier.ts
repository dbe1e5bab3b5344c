import type { OpcodeTable } from '../opcodeTable';

/** Level, pan, stereo width and crossfades. */
export const amplifier: readonly OpcodeTable[] = [
  {
    category: 'Performance Parameters/Amplifier',
    rows: `
pan | v1 float % | [-100..100] | =0
pan_onccN | v2 | >pan | ~pan_ccN
pan_curveccN | v2 integer | [0..255] | =0 | >pan
pan_smoothccN | v2 | >pan
pan_stepccN | v2 | >pan
pan_random | extension float % | [-100..100] | =0
position | v1 float % | [-100..100] | =0
position_onccN | extension | >position
position_curveccN | extension integer | [0..255] | =0 | >position
position_smoothccN | extension | >position
position_stepccN | extension | >position
position_random | extension float % | [-100..100] | =0
position_keycenter | extension
position_keytrack | extension
position_veltrack | extension integer | [-200..200] | =0
volume | v1 float dB | [-144..6] | =0
gain_ccN | extension float dB | [-144..48] | =0 | >volume | ~gain_onccN,volume_onccN
volume_curveccN | v2 integer | [0..255] | =0 | >volume
volume_smoothccN | v2 | >volume
volume_stepccN | v2 | >volume
width | v1 float % | [-100..100] | =100
width_onccN | v2 | >width
width_curveccN | v2 integer | [0..255] | =0 | >width
width_smoothccN | v2 | >width
width_stepccN | v2 | >width
amp_keycenter | v1 integer | [0..127] | =60
amp_keytrack | v1 float dB | [-96..12] | =0
amp_veltrack | v1 float % | [-100..100] | =100
amp_veltrack_onccN | extension | >amp_veltrack | ~amp_veltrack_ccN
amp_veltrack_curveccN | extension integer | [0..255] | =0 | >amp_veltrack
amp_veltrack_random | extension
amp_velcurve_N | v1 float | [0..1] | =Standard curve (see amp_veltrack)
amp_random | v1 float dB | [0..24] | =0 | ~gain_random
rt_decay | v1 float dB | [0..200] | =0
rt_decayN | extension float dB | [0..200] | =0
rt_decayN_time | extension float seconds
xf_cccurve | v1 string | =power | {gain,power}
xf_keycurve | v1 string | =power | {gain,power}
xf_velcurve | v1 string | =power | {gain,power}
xfin_loccN | v1 integer | [0..127] | =0
xfin_hiccN | v1 integer | [0..127] | =0
xfout_loccN | v1 integer | [0..127] | =0
xfout_hiccN | v1 integer | [0..127] | =0
xfin_lokey | v1 integer | [0..127] | =0
xfin_hikey | v1 integer | [0..127] | =0
xfout_lokey | v1 integer | [0..127] | =127
xfout_hikey | v1 integer | [0..127] | =127
xfin_lovel | v1 integer | [0..127] | =0
xfin_hivel | v1 integer | [0..127] | =0
xfout_lovel | v1 integer | [0..127] | =127
xfout_hivel | v1 integer | [0..127] | =127
phase | v2 string | =normal | {normal,invert}
amplitude | extension float % | [0..100] | =100
amplitude_onccN | extension float % | [-100..100] | >amplitude | ~amplitude_ccN
amplitude_curveccN | extension integer | [0..255] | =0 | >amplitude
amplitude_smoothccN | extension | >amplitude
global_amplitude | extension float % | [0..100] | =100
master_amplitude | extension float % | [0..100] | =100
group_amplitude | extension float % | [0..100] | =100
pan_law | extension string | {mma,balance}
pan_keycenter | v2 integer | [0..127] | =60
pan_keytrack | v2 float % | [-100..100] | =0
pan_veltrack | v2 float % | [-100..100] | =0
global_volume | extension float dB | [-144..6] | =0
master_volume | extension float dB | [-144..6] | =0
group_volume | extension float dB | [-144..6] | =0
`,
  },
];
