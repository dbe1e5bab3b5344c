import type { OpcodeTable } from '../opcodeTable';

/** The sample of a region: where it starts, ends and loops, and how it is loaded. */
export const samplePlayback: readonly OpcodeTable[] = [
  {
    category: 'Sound Source/Sample Playback',
    rows: `
count | v1 integer | [0..4294967296] | =0 | How many times the sample plays from start to end; 0 leaves it to the loop mode.
delay | v1 float seconds | [0..100] | =0 | :the delay before the region starts | Waiting time between the note and the start of the region.
delay_ccN | extension float seconds | [-100..100] | =0 | >delay | ~delay_onccN
delay_curveccN | extension integer | [0..255] | =0 | >delay
delay_random | v1 float seconds | [0..100] | =0 | :the random part of the delay | Longest extra waiting time, picked at random for each note.
delay_samples | v2 integer sample units | :the delay in frames | Waiting time before the region starts, counted in sample frames.
delay_samples_onccN | extension integer sample units | >delay_samples
end | v1 integer sample units | [0..4294967296] | =unspecified | :the last frame played | Last frame of the sample that is played, counted from 0; -1 makes the region silent, yet it still triggers.
loop_count | v2 integer | ~loopcount | :the number of loop passes | How many times the loop repeats before the sample plays on to its end.
loop_crossfade | v2 float seconds | :the length of the loop crossfade | Length of the crossfade that smooths the seam of the loop.
loop_end | v1 integer sample units | [0..4294967296] | =0 | ~loopend | :the end of the loop | Last frame of the loop, counted from 0 and itself part of the loop; overrides the loop in the file.
loop_lengthccN | v2 | >loop_end | ~loop_length_onccN | How far controller N, fully up, lengthens the loop.
loop_mode | v1 string | {no_loop,one_shot,loop_continuous,loop_sustain} | ~loopmode | Whether and how long the sample loops; without it, a file that carries a loop is looped and any other is not.
loop_start | v1 integer sample units | [0..4294967296] | =0 | ~loopstart | :the start of the loop | First frame of the loop, counted from 0; overrides the loop in the file.
loop_startccN | v2 | >loop_start | ~loop_start_onccN
loop_tune | v2 float cents | =0 | ~looptune | :the tuning inside the loop | Retunes the looped part alone, for loops whose pitch is off.
loop_type | v2 string | =forward | {forward,backward,alternate} | ~looptype | Direction in which the loop plays: forward, backward, or back and forth.
offset | v1 integer sample units | [0..4294967296] | =0 | :the frame where playing starts | First frame of the sample that is played, counted from 0; a percentage of the length under offset_mode=percent.
offset_ccN | extension integer sample units | [0..4294967296] | =0 | >offset | ~offset_onccN
offset_random | v1 integer sample units | [0..4294967296] | =0 | :the random part of the offset | Greatest number of frames added at random to the start of the sample.
offset_mode | extension string | =samples | {samples,percent} | Whether offset counts sample frames or percent of the sample's length.
sample | v1 string | Path of the sound file, relative to the instrument's folder and put behind default_path; a name with a leading star is a built-in wave.
sample_fadeout | v2 float seconds | Length of the fade at the end of the sample.
sample_dyn_paramN | extension float | :numbered sample parameter N | Numbered parameter of a sample that can change while it sounds.
sample_dyn_paramN_onccX | extension float | >sample_dyn_paramN
sync_beats | v1 float beats | [0..32] | =0 | Makes the region wait for the next multiple of this many beats of the host's tempo.
sync_offset | v1 float beats | [0..32] | =0 | Moves the beat that sync_beats waits for.
delay_beats | v2 float beats | :the delay in beats | Waiting time before the region starts, counted in beats of the host's tempo.
delay_beats_onccN | extension | >delay_beats
delay_beats_curveccN | extension integer | [0..255] | =0 | >delay_beats
delay_beats_random | extension float beats | :the random part of the delay in beats | Longest extra waiting time in beats, picked at random for each note.
stop_beats | v2 float beats | :the stopping time in beats | Stops the region after this many beats of the host's tempo.
direction | v2 string | =forward | {forward,reverse} | Plays the sample forwards or backwards.
md5 | v2 string | =null | Checksum of the sample file, by which a changed file can be recognised.
reverse_loccN | v2 integer | [0..127] | Least value of controller N at which the sample plays backwards.
reverse_hiccN | v2 integer | [0..127] | Greatest value of controller N at which the sample plays backwards.
waveguide | v2 string | {on,off} | Turns sound generation by a waveguide on or off.
`,
  },
  {
    category: 'Wavetable Oscillator',
    rows: `
oscillator | v2 string | {on,off} | Plays the sample as one cycle of a wavetable when on.
oscillator_detune | v2 | :the detuning of the oscillators | Detuning between the oscillators when there are several.
oscillator_detune_onccN | extension | >oscillator_detune
oscillator_mode | v2 integer | [0..2] | =0 | How several oscillators work together: added up (0), or one modulating another (1 and 2).
oscillator_mod_depth | v2 | :the depth of the oscillator's modulation | How strongly one oscillator modulates the other.
oscillator_mod_depth_onccN | extension | >oscillator_mod_depth
oscillator_mod_smoothccN | extension | >oscillator_mod_depth
oscillator_multi | v2 integer | [1..9] | =1 | How many oscillators play at once.
oscillator_phase | v2 float | [-1..360] | :the starting phase of the oscillator | Phase at which the oscillator starts, in degrees; -1 picks one at random.
oscillator_quality | v2 integer | [0..3] | Quality of the interpolation of the wavetable; more costs more time.
oscillator_table_size | v2 | Number of frames in the wavetable.
`,
  },
  {
    category: 'Loading',
    rows: `
load_mode | v2 integer | [0..1] | Whether the sample is loaded into memory or read from disk while it plays.
load_start | v2 integer | How many frames of the start of the sample are loaded ahead.
load_end | v2 integer | Frame up to which the sample is loaded ahead.
sample_quality | v2 integer | [1..10] | Quality of the interpolation when the sample plays at another pitch; more costs more time.
image | v2 string | Picture shown behind the controls of the instrument.
`,
  },
];
