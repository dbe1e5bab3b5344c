import type { OpcodeTable } from '../opcodeTable';

/** When a region sounds. */
export const regionLogic: readonly OpcodeTable[] = [
  {
    category: 'Region Logic/Key Mapping',
    rows: `
key | v1 integer | [0..127] | Sets the lowest key, the highest key and the root key to one and the same note.
lokey | v1 integer | [0..127] | =0 | Lowest key that plays the region; -1 switches keys off, for regions that a controller triggers.
hikey | v1 integer | [0..127] | =127 | Highest key that plays the region; -1 switches keys off, for regions that a controller triggers.
lovel | v1 integer | [1..127] | =1 | Lowest velocity at which the region plays.
hivel | v1 integer | [1..127] | =127 | Highest velocity at which the region plays.
`,
  },
  {
    category: 'Region Logic/MIDI Conditions',
    rows: `
lochan | v1 integer | [1..16] | =1 | Lowest MIDI channel on which the region plays.
hichan | v1 integer | [1..16] | =16 | Highest MIDI channel on which the region plays.
loccN | v1 integer | [0..127] | =0 | Least value of controller N at which the region plays.
hiccN | v1 integer | [0..127] | =127 | Greatest value of controller N at which the region plays.
lobend | v1 integer | [-8192..8192] | =-8192 | Lowest pitch-wheel position at which the region plays.
hibend | v1 integer | [-8192..8192] | =8192 | Highest pitch-wheel position at which the region plays.
sostenuto_cc | extension integer | [0..127] | =66 | Number of the controller that works as the sostenuto pedal.
sostenuto_lo | extension float | [0..127] | =0.5 | Least value at which the sostenuto pedal counts as down.
sostenuto_sw | v2 string | {on,off} | Whether the region follows the sostenuto pedal.
sustain_cc | extension integer | [0..127] | =64 | Number of the controller that works as the sustain pedal.
sustain_lo | extension float | [0..127] | =0.5 | Least value at which the sustain pedal counts as down.
sustain_sw | v2 string | {on,off} | Whether the region follows the sustain pedal.
sw_lokey | v1 integer | [0..127] | =0 | Lowest key of the range in which keyswitches lie.
sw_hikey | v1 integer | [0..127] | =127 | Highest key of the range in which keyswitches lie.
sw_last | v1 integer | [0..127] | =0 | Keyswitch that must be the last one pressed for the region to play.
sw_down | v1 integer | [0..127] | =0 | Key that must be held for the region to play.
sw_up | v1 integer | [0..127] | =0 | Key that must not be held for the region to play.
sw_previous | v1 integer | [0..127] | Note that must have been the last one before for the region to play.
sw_vel | v1 string | =current | {current,previous} | Whether the region takes the velocity of its own note or of the note before.
loprog | v2 integer | [0..127] | =0 | Lowest MIDI program number at which the region plays.
hiprog | v2 integer | [0..127] | =127 | Highest MIDI program number at which the region plays.
lohdccN | extension float | [0..1] | =0 | Least value from 0 to 1 of controller N, with fine steps, at which the region plays.
hihdccN | extension float | [0..1] | =1 | Greatest value from 0 to 1 of controller N, with fine steps, at which the region plays.
sw_default | v2 integer | [0..127] | Keyswitch that counts as pressed when the instrument is loaded.
sw_label | extension string | Name of the articulation that the keyswitch chooses, as shown to the player.
sw_lolast | extension integer | [0..127] | Lowest key of a range of keyswitches, any of which may be the last one pressed for the region to play.
sw_hilast | extension integer | [0..127] | Highest key of a range of keyswitches, any of which may be the last one pressed for the region to play.
varNN_mod | extension string | {mult,add} | :variable NN | Whether the controllers that make up variable NN are added up or multiplied.
varNN_onccX | extension float | [0..1] | >varNN_mod | How much controller X, fully up, adds to variable NN or scales it by.
varNN_curveccX | extension integer | [0..255] | =0 | >varNN_mod | Number of the curve that shapes how controller X moves variable NN.
varNN_* | extension | How far variable NN moves the opcode that is named in place of the star.
`,
  },
  {
    category: 'Region Logic/Internal Conditions',
    rows: `
lobpm | v1 float bpm | [0..500] | =0 | Lowest tempo of the host at which the region plays.
hibpm | v1 float bpm | [0..500] | =500 | Tempo of the host below which the region plays.
lochanaft | v1 integer | [0..127] | =0 | Least channel aftertouch at which the region plays.
hichanaft | v1 integer | [0..127] | =127 | Greatest channel aftertouch at which the region plays.
lopolyaft | v1 integer | [0..127] | =0 | Least key aftertouch at which the region plays.
hipolyaft | v1 integer | [0..127] | =127 | Greatest key aftertouch at which the region plays.
lorand | v1 float | [0..1] | =0 | Lower end of the share of random numbers from 0 to 1, drawn for each note, for which the region plays.
hirand | v1 float | [0..1] | =1 | Upper end, itself left out, of the share of random numbers from 0 to 1 for which the region plays.
seq_length | v1 integer | [1..100] | =1 | Number of steps of the round robin that the region takes part in.
seq_position | v1 integer | [1..100] | =1 | Step of the round robin, counted from 1, at which the region plays.
lotimer | v2 float | Least time since the last region of the same group started for the region to play, in seconds.
hitimer | v2 float | Greatest time since the last region of the same group started for the region to play, in seconds.
`,
  },
  {
    category: 'Region Logic/Triggers',
    rows: `
trigger | v1 string | =attack | {attack,release,first,legato,release_key} | What starts the region: pressing a key, releasing it, a first note, or a note played legato.
on_loccN | v1 integer | [0..127] | =-1 | ~start_loccN | Lower end of the values of controller N that start the region when the controller enters them.
on_hiccN | v1 integer | [0..127] | =-1 | ~start_hiccN | Upper end of the values of controller N that start the region when the controller enters them.
on_lohdccN | extension float | [0..1] | =-1 | ~start_lohdccN | Lower end of the values from 0 to 1 of controller N that start the region when the controller enters them.
on_hihdccN | extension float | [0..1] | =-1 | ~start_hihdccN | Upper end of the values from 0 to 1 of controller N that start the region when the controller enters them.
stop_loccN | v2 integer | [0..127] | =-1 | Lower end of the values of controller N that stop the region when the controller enters them.
stop_hiccN | v2 integer | [0..127] | =-1 | Upper end of the values of controller N that stop the region when the controller enters them.
stop_lohdccN | extension float | [0..1] | =-1 | Lower end of the values from 0 to 1 of controller N that stop the region when the controller enters them.
stop_hihdccN | extension float | [0..1] | =-1 | Upper end of the values from 0 to 1 of controller N that stop the region when the controller enters them.
`,
  },
];
