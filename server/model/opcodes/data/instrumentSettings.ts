import type { OpcodeTable } from '../opcodeTable';

/** Settings of the whole instrument, of voices and of curves. */
export const instrumentSettings: readonly OpcodeTable[] = [
  {
    category: 'Instrument Settings',
    rows: `
#define | v2 string | Gives text a name that starts with a dollar sign; wherever the name stands later, the text takes its place.
default_path | v2 string | Text put in front of every sample path; it needs its own slash at the end when it names a folder.
note_offset | v2 integer semitones | [-127..127] | =0 | Moves all incoming notes by this many keys before any region sees them.
octave_offset | v2 integer octaves | [-10..10] | =0 | Moves all incoming notes by this many octaves before any region sees them.
label_ccN | extension string | Name of controller N as shown to the player.
label_keyN | extension string | Name of key N as shown to the player.
label_outputN | extension string | Name of audio output N as shown to the player.
set_ccN | v2 integer | [0..127] | Value that controller N has when the instrument is loaded.
#include | extension string | Puts the text of another file in this place; the path is relative to the main file.
hint_* | extension | Advice to the program that plays the instrument, such as how to use memory; others ignore it.
*_mod | extension string | {add,mult} | Whether several movements of the named opcode are added up or multiplied.
set_hdccN | extension float | [0..1] | ~set_realccN | Value from 0 to 1, with fine steps, that controller N has when the instrument is loaded.
sw_note_offset | extension integer | Moves the keyswitches by this many keys.
sw_octave_offset | extension integer | Moves the keyswitches by this many octaves.
global_label | extension string | Name of the global header as shown to the player.
master_label | extension string | Name of the master header as shown to the player.
group_label | extension string | Name of the group as shown to the player.
region_label | extension string | Name of the region as shown to the player.
`,
  },
  {
    category: 'Instrument Settings/Voice Lifecycle',
    rows: `
group | v1 integer | [-2147483648..2147483647] | =0 | ~polyphony_group | Number of the exclusive group that the region belongs to; other regions name it in off_by.
off_by | v1 integer | [-2147483648..2147483647] | =0 | ~offby | Number of the exclusive group that silences this region when one of its regions starts.
off_mode | v1 string | =fast | {fast,normal,time} | How the region ends when off_by silences it: at once, by its release, or within off_time.
output | v1 integer | [0..1024] | =0 | Number of the audio output that the region plays to.
polyphony | v2 integer | Most voices that may sound at once within the header or the group.
note_polyphony | v2 integer | Most voices of the same note that may sound at once.
polyphony_stealing | extension integer | Way of choosing the voice that ends when there are too many.
note_selfmask | v2 string | =on | {on,off} | Whether a softer repeat of a note may end a louder one under note_polyphony.
rt_dead | v2 string | =off | {on,off} | Whether a release sample still plays when the voice that it ends has already died away.
off_curve | extension integer | [-2..10] | =10 | {-2,-1,0,1,2,10} | Number of the curve by which the region fades when off_by silences it.
off_shape | extension float | =-10.3616 | :the shape of the fade when silenced | Curvature of the fade when off_by silences the region; 0 is a straight line.
off_time | extension float | =0.006 | :the length of the fade when silenced | Length of the fade under off_mode=time, in seconds.
`,
  },
  {
    category: 'Real-Time Instrument Script',
    rows: `
script | extension string | Script that the player runs together with the instrument.
`,
  },
  {
    category: 'Curves',
    rows: `
curve_index | extension integer | [0..255] | Number by which other opcodes call this curve.
vNNN | v2 float | [-1..1] | Value of the curve at controller value NNN; the points between those given lie on straight lines.
`,
  },
];
