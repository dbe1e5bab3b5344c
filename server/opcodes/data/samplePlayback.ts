import type { OpcodeTable } from '../opcodeTable';

/** The sample of a region: where it starts, ends and loops, and how it is loaded. */
export const samplePlayback: readonly OpcodeTable[] = [
  {
    category: 'Sound Source/Sample Playback',
    rows: `
count | v1 integer | [0..4294967296] | =0
delay | v1 float seconds | [0..100] | =0
delay_ccN | extension float seconds | [-100..100] | =0 | >delay | ~delay_onccN
delay_curveccN | extension integer | [0..255] | =0 | >delay
delay_random | v1 float seconds | [0..100] | =0
delay_samples | v2 integer sample units
delay_samples_onccN | extension integer sample units | >delay_samples
end | v1 integer sample units | [0..4294967296] | =unspecified
loop_count | v2 integer | ~loopcount
loop_crossfade | v2 float seconds
loop_end | v1 integer sample units | [0..4294967296] | =0 | ~loopend
loop_lengthccN | v2 | >loop_end | ~loop_length_onccN
loop_mode | v1 string | {no_loop,one_shot,loop_continuous,loop_sustain} | ~loopmode
loop_start | v1 integer sample units | [0..4294967296] | =0 | ~loopstart
loop_startccN | v2 | >loop_start | ~loop_start_onccN
loop_tune | v2 float cents | =0 | ~looptune
loop_type | v2 string | =forward | {forward,backward,alternate} | ~looptype
offset | v1 integer sample units | [0..4294967296] | =0
offset_ccN | extension integer sample units | [0..4294967296] | =0 | >offset | ~offset_onccN
offset_random | v1 integer sample units | [0..4294967296] | =0
offset_mode | extension string | =samples | {samples,percent}
sample | v1 string
sample_fadeout | v2 float seconds
sample_dyn_paramN | extension float
sample_dyn_paramN_onccX | extension float | >sample_dyn_paramN
sync_beats | v1 float beats | [0..32] | =0
sync_offset | v1 float beats | [0..32] | =0
delay_beats | v2 float beats
delay_beats_onccN | extension | >delay_beats
delay_beats_curveccN | extension integer | [0..255] | =0 | >delay_beats
delay_beats_random | extension float beats
stop_beats | v2 float beats
direction | v2 string | =forward | {forward,reverse}
md5 | v2 string | =null
reverse_loccN | v2 integer | [0..127]
reverse_hiccN | v2 integer | [0..127]
waveguide | v2 string | {on,off}
`,
  },
  {
    category: 'Wavetable Oscillator',
    rows: `
oscillator | v2 string | {on,off}
oscillator_detune | v2
oscillator_detune_onccN | extension | >oscillator_detune
oscillator_mode | v2 integer | [0..2] | =0
oscillator_mod_depth | v2
oscillator_mod_depth_onccN | extension | >oscillator_mod_depth
oscillator_mod_smoothccN | extension | >oscillator_mod_depth
oscillator_multi | v2 integer | [1..9] | =1
oscillator_phase | v2 float | [-1..360]
oscillator_quality | v2 integer | [0..3]
oscillator_table_size | v2
`,
  },
  {
    category: 'Loading',
    rows: `
load_mode | v2 integer | [0..1]
load_start | v2 integer
load_end | v2 integer
sample_quality | v2 integer | [1..10]
image | v2 string
`,
  },
];
