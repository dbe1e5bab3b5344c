import type { OpcodeTable } from '../opcodeTable';

/** When a region sounds. */
export const regionLogic: readonly OpcodeTable[] = [
  {
    category: 'Region Logic/Key Mapping',
    rows: `
key | v1 integer | [0..127]
lokey | v1 integer | [0..127] | =0
hikey | v1 integer | [0..127] | =127
lovel | v1 integer | [1..127] | =1
hivel | v1 integer | [1..127] | =127
`,
  },
  {
    category: 'Region Logic/MIDI Conditions',
    rows: `
lochan | v1 integer | [1..16] | =1
hichan | v1 integer | [1..16] | =16
loccN | v1 integer | [0..127] | =0
hiccN | v1 integer | [0..127] | =127
lobend | v1 integer | [-8192..8192] | =-8192
hibend | v1 integer | [-8192..8192] | =8192
sostenuto_cc | extension integer | [0..127] | =66
sostenuto_lo | extension float | [0..127] | =0.5
sostenuto_sw | v2 string | {on,off}
sustain_cc | extension integer | [0..127] | =64
sustain_lo | extension float | [0..127] | =0.5
sustain_sw | v2 string | {on,off}
sw_lokey | v1 integer | [0..127] | =0
sw_hikey | v1 integer | [0..127] | =127
sw_last | v1 integer | [0..127] | =0
sw_down | v1 integer | [0..127] | =0
sw_up | v1 integer | [0..127] | =0
sw_previous | v1 integer | [0..127]
sw_vel | v1 string | =current | {current,previous}
loprog | v2 integer | [0..127] | =0
hiprog | v2 integer | [0..127] | =127
lohdccN | extension float | [0..1] | =0
hihdccN | extension float | [0..1] | =1
sw_default | v2 integer | [0..127]
sw_label | extension string
sw_lolast | extension integer | [0..127]
sw_hilast | extension integer | [0..127]
varNN_mod | extension string | {mult,add}
varNN_onccX | extension float | [0..1] | >varNN_mod
varNN_curveccX | extension integer | [0..255] | =0 | >varNN_mod
varNN_* | extension
`,
  },
  {
    category: 'Region Logic/Internal Conditions',
    rows: `
lobpm | v1 float bpm | [0..500] | =0
hibpm | v1 float bpm | [0..500] | =500
lochanaft | v1 integer | [0..127] | =0
hichanaft | v1 integer | [0..127] | =127
lopolyaft | v1 integer | [0..127] | =0
hipolyaft | v1 integer | [0..127] | =127
lorand | v1 float | [0..1] | =0
hirand | v1 float | [0..1] | =1
seq_length | v1 integer | [1..100] | =1
seq_position | v1 integer | [1..100] | =1
lotimer | v2 float
hitimer | v2 float
`,
  },
  {
    category: 'Region Logic/Triggers',
    rows: `
trigger | v1 string | =attack | {attack,release,first,legato,release_key}
on_loccN | v1 integer | [0..127] | =-1 | ~start_loccN
on_hiccN | v1 integer | [0..127] | =-1 | ~start_hiccN
on_lohdccN | extension float | [0..1] | =-1 | ~start_lohdccN
on_hihdccN | extension float | [0..1] | =-1 | ~start_hihdccN
stop_loccN | v2 integer | [0..127] | =-1
stop_hiccN | v2 integer | [0..127] | =-1
stop_lohdccN | extension float | [0..1] | =-1
stop_hihdccN | extension float | [0..1] | =-1
`,
  },
];
