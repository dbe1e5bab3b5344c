import type { OpcodeTable } from '../opcodeTable';

/** Settings of the whole instrument, of voices and of curves. */
export const instrumentSettings: readonly OpcodeTable[] = [
  {
    category: 'Instrument Settings',
    rows: `
#define | v2 string
default_path | v2 string
note_offset | v2 integer semitones | [-127..127] | =0
octave_offset | v2 integer octaves | [-10..10] | =0
label_ccN | extension string
label_keyN | extension string
label_outputN | extension string
set_ccN | v2 integer | [0..127]
#include | extension string
hint_* | extension
*_mod | extension string | {add,mult}
set_hdccN | extension float | [0..1] | ~set_realccN
sw_note_offset | extension integer
sw_octave_offset | extension integer
global_label | extension string
master_label | extension string
group_label | extension string
region_label | extension string
`,
  },
  {
    category: 'Instrument Settings/Voice Lifecycle',
    rows: `
group | v1 integer | [-2147483648..2147483647] | =0 | ~polyphony_group
off_by | v1 integer | [-2147483648..2147483647] | =0 | ~offby
off_mode | v1 string | =fast | {fast,normal,time}
output | v1 integer | [0..1024] | =0
polyphony | v2 integer
note_polyphony | v2 integer
polyphony_stealing | extension integer
note_selfmask | v2 string | =on | {on,off}
rt_dead | v2 string | =off | {on,off}
off_curve | extension integer | [-2..10] | =10 | {-2,-1,0,1,2,10}
off_shape | extension float | =-10.3616
off_time | extension float | =0.006
`,
  },
  {
    category: 'Real-Time Instrument Script',
    rows: `
script | extension string
`,
  },
  {
    category: 'Curves',
    rows: `
curve_index | extension integer | [0..255]
vNNN | v2 float | [-1..1]
`,
  },
];
