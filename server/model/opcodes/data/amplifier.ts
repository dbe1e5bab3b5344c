import type { OpcodeTable } from '../opcodeTable';

/** Level, pan, stereo width and crossfades. */
export const amplifier: readonly OpcodeTable[] = [
  {
    category: 'Performance Parameters/Amplifier',
    rows: `
pan | v1 float % | [-100..100] | =0 | :the pan position | Place between left (-100) and right (100).
pan_onccN | v2 | >pan | ~pan_ccN
pan_curveccN | v2 integer | [0..255] | =0 | >pan
pan_smoothccN | v2 | >pan
pan_stepccN | v2 | >pan
pan_random | extension float % | [-100..100] | =0 | :the random part of the pan position | Greatest change of the pan position, picked at random for each note.
position | v1 float % | [-100..100] | =0 | :the stereo position | Place of the stereo sound, at the width it has, between left (-100) and right (100).
position_onccN | extension | >position
position_curveccN | extension integer | [0..255] | =0 | >position
position_smoothccN | extension | >position
position_stepccN | extension | >position
position_random | extension float % | [-100..100] | =0 | :the random part of the stereo position | Greatest change of the stereo position, picked at random for each note.
position_keycenter | extension | Key at which position_keytrack leaves the stereo position alone.
position_keytrack | extension | :the key tracking of the stereo position | How far each key away from position_keycenter moves the stereo position.
position_veltrack | extension integer | [-200..200] | =0 | :the velocity tracking of the stereo position | How far velocity moves the stereo position.
volume | v1 float dB | [-144..6] | =0 | :the volume | Level of the region, raised or lowered in decibels.
gain_ccN | extension float dB | [-144..48] | =0 | >volume | ~gain_onccN,volume_onccN
volume_curveccN | v2 integer | [0..255] | =0 | >volume
volume_smoothccN | v2 | >volume
volume_stepccN | v2 | >volume
width | v1 float % | [-100..100] | =100 | :the stereo width | Stereo width: 100 leaves the sample as it is, 0 makes it mono, -100 swaps the sides.
width_onccN | v2 | >width
width_curveccN | v2 integer | [0..255] | =0 | >width
width_smoothccN | v2 | >width
width_stepccN | v2 | >width
amp_keycenter | v1 integer | [0..127] | =60 | Key at which amp_keytrack leaves the level alone.
amp_keytrack | v1 float dB | [-96..12] | =0 | :the key tracking of the level | Change of the level for each key above amp_keycenter, in decibels.
amp_veltrack | v1 float % | [-100..100] | =100 | :the velocity tracking of the level | How much velocity sets the level: 100 from silent to full, 0 not at all, -100 the other way round.
amp_veltrack_onccN | extension | >amp_veltrack | ~amp_veltrack_ccN
amp_veltrack_curveccN | extension integer | [0..255] | =0 | >amp_veltrack
amp_veltrack_random | extension | Greatest change of the velocity tracking, picked at random for each note.
amp_velcurve_N | v1 float | [0..1] | =Standard curve (see amp_veltrack) | Level from 0 to 1 at velocity N; the points between those given lie on straight lines.
amp_random | v1 float dB | [0..24] | =0 | ~gain_random | :the random part of the level | Greatest level added at random to each note, in decibels.
rt_decay | v1 float dB | [0..200] | =0 | :the decay of release samples | Decibels by which a release sample gets quieter for each second that its note was held.
rt_decayN | extension float dB | [0..200] | =0 | Decibels by which a release sample gets quieter for each second in stretch N of the held note.
rt_decayN_time | extension float seconds | Time at which stretch N of the decay of release samples ends.
xf_cccurve | v1 string | =power | {gain,power} | Shape of crossfades by controllers: gain for sounds that are alike, power for others.
xf_keycurve | v1 string | =power | {gain,power} | Shape of crossfades over keys: gain for sounds that are alike, power for others.
xf_velcurve | v1 string | =power | {gain,power} | Shape of crossfades over velocity: gain for sounds that are alike, power for others.
xfin_loccN | v1 integer | [0..127] | =0 | Value of controller N up to which the region is silent; from there it fades in.
xfin_hiccN | v1 integer | [0..127] | =0 | Value of controller N from which the region is at full level after fading in.
xfout_loccN | v1 integer | [0..127] | =0 | Value of controller N from which the region fades out.
xfout_hiccN | v1 integer | [0..127] | =0 | Value of controller N from which the region is silent after fading out.
xfin_lokey | v1 integer | [0..127] | =0 | Key up to which the region is silent; above it, the region fades in.
xfin_hikey | v1 integer | [0..127] | =0 | Key from which the region is at full level after fading in.
xfout_lokey | v1 integer | [0..127] | =127 | Key from which the region fades out.
xfout_hikey | v1 integer | [0..127] | =127 | Key from which the region is silent after fading out.
xfin_lovel | v1 integer | [0..127] | =0 | Velocity up to which the region is silent; above it, the region fades in.
xfin_hivel | v1 integer | [0..127] | =0 | Velocity from which the region is at full level after fading in.
xfout_lovel | v1 integer | [0..127] | =127 | Velocity from which the region fades out.
xfout_hivel | v1 integer | [0..127] | =127 | Velocity from which the region is silent after fading out.
phase | v2 string | =normal | {normal,invert} | Turns the wave of the sample upside down when set to invert.
amplitude | extension float % | [0..100] | =100 | :the amplitude | Level of the region in percent, multiplied with volume; 0 is silent.
amplitude_onccN | extension float % | [-100..100] | >amplitude | ~amplitude_ccN
amplitude_curveccN | extension integer | [0..255] | =0 | >amplitude
amplitude_smoothccN | extension | >amplitude
global_amplitude | extension float % | [0..100] | =100 | :the amplitude of the global header | Level in percent for everything under the global header, multiplied with the levels further in.
master_amplitude | extension float % | [0..100] | =100 | :the amplitude of the master header | Level in percent for everything under the master header, multiplied with the levels further in.
group_amplitude | extension float % | [0..100] | =100 | :the amplitude of the group | Level in percent for everything in the group, multiplied with the levels of its regions.
pan_law | extension string | {mma,balance} | How the two sides keep their loudness as the sound is panned.
pan_keycenter | v2 integer | [0..127] | =60 | Key at which pan_keytrack leaves the pan position alone.
pan_keytrack | v2 float % | [-100..100] | =0 | :the key tracking of the pan position | How far each key above pan_keycenter moves the sound to the right.
pan_veltrack | v2 float % | [-100..100] | =0 | :the velocity tracking of the pan position | How far velocity moves the sound to the right.
global_volume | extension float dB | [-144..6] | =0 | :the volume of the global header | Decibels added to the level of everything under the global header.
master_volume | extension float dB | [-144..6] | =0 | :the volume of the master header | Decibels added to the level of everything under the master header.
group_volume | extension float dB | [-144..6] | =0 | :the volume of the group | Decibels added to the level of everything in the group.
`,
  },
];
