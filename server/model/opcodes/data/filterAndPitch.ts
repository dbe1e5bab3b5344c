import type { OpcodeTable } from '../opcodeTable';

/** Equaliser, filter and pitch of a region. */
export const filterAndPitch: readonly OpcodeTable[] = [
  {
    category: 'Performance Parameters/EQ',
    rows: `
eqN_bw | v1 float octaves | [0.001..4] | =1 | :the bandwidth of equaliser band N | Bandwidth of equaliser band N.
eqN_bwccX | extension float octaves | [-4..4] | =0 | >eqN_bw | ~eqN_bw_onccX
eqN_freq | v1 float Hz | [0..30000] | =eq1_freq=50, eq2_freq=500, eq3_freq=5000 | :the centre frequency of equaliser band N | Centre frequency of equaliser band N.
eqN_freqccX | extension float Hz | [-30000..30000] | =0 | >eqN_freq | ~eqN_freq_onccX
eqN_vel2freq | extension float Hz | [-30000..30000] | =0 | >eqN_freq
eqN_gain | v1 float dB | [-96..24] | =0 | :the gain of equaliser band N | How far equaliser band N raises or lowers its frequencies.
eqN_gainccX | extension float dB | [-96..24] | =0 | >eqN_gain | ~eqN_gain_onccX
eqN_vel2gain | extension float dB | [-96..24] | =0 | >eqN_gain
eqN_dynamic | extension integer | [0..1] | =0 | Whether the settings of equaliser band N can change while a note sounds (1) or are fixed when it starts (0).
eqN_type | v2 string | =peak | {peak,lshelf,hshelf} | Shape of equaliser band N: a peak, a low shelf or a high shelf.
`,
  },
  {
    category: 'Performance Parameters/Filter',
    rows: `
cutoff | v1 float Hz | [0..] | =filter disabled | +cutoff2 | :the cutoff frequency | Cutoff or centre frequency of the filter; without it the filter is off.
cutoff_ccN | extension integer cents | [-9600..9600] | =0 | >cutoff | ~cutoff_onccN
cutoff_curveccN | v2 integer | [0..255] | =0 | >cutoff
cutoff_smoothccN | v2 float ms | [0..] | =0 | >cutoff
cutoff_stepccN | v2 integer | [0..] | =0 | >cutoff
cutoff_chanaft | extension integer cents | [-9600..9600] | =0 | >cutoff
cutoff_polyaft | extension integer cents | [-9600..9600] | =0 | >cutoff
fil_gain | extension float dB | =0 | +fil2_gain | :the shelf or peak gain | Gain of the filter types that raise or lower a band or a shelf.
fil_gain_onccN | extension | >fil_gain
fil_keycenter | v1 integer | [0..127] | =60 | +fil2_keycenter | Key at which fil_keytrack leaves the cutoff frequency alone.
fil_keytrack | v1 integer cents | [0..1200] | =0 | +fil2_keytrack | :the key tracking of the cutoff frequency | Change of the cutoff frequency for each key above fil_keycenter; 100 follows the keyboard.
fil_random | v1 integer cents | [0..9600] | =0 | ~cutoff_random | +cutoff2_random | :the random part of the cutoff frequency | Greatest rise of the cutoff frequency, picked at random for each note.
fil_type | v1 string | =lpf_2p | {lpf_1p,hpf_1p,lpf_2p,hpf_2p,bpf_2p,brf_2p,bpf_1p,brf_1p,apf_1p,lpf_2p_sv,hpf_2p_sv,bpf_2p_sv,brf_2p_sv,pkf_2p,lpf_4p,hpf_4p,lpf_6p,hpf_6p,comb,pink,lsh,hsh,peq} | ~filtype | +fil2_type | Type of filter and number of poles: low-pass, high-pass, band-pass, band-reject, all-pass, peak, shelf, comb or pink.
fil_veltrack | v1 integer cents | [-9600..9600] | =0 | +fil2_veltrack | :the velocity tracking of the cutoff frequency | Change of the cutoff frequency at the highest velocity.
resonance | v1 float dB | [0..40] | =0 | +resonance2 | :the resonance | Resonance of the filter at its cutoff frequency.
resonance_onccN | v2 float dB | [-40..40] | =0 | >resonance | ~resonance_ccN
resonance_curveccN | v2 integer | [0..255] | =0 | >resonance
resonance_smoothccN | v2 float ms | [0..] | =0 | >resonance
resonance_stepccN | v2 integer | [0..] | =0 | >resonance
resonance_random | extension float dB | [0..40] | =0 | :the random part of the resonance | Greatest rise of the resonance, picked at random for each note.
resonance2_random | extension float dB | [0..40] | =0 | :the random part of the second filter's resonance | Greatest rise of the second filter's resonance, picked at random for each note.
noise_filter | v2 string | {on,off,lpf_1p,hpf_1p,bpf_1p,brf_1p,apf_1p,lpf_2p,hpf_2p,bpf_2p,brf_2p,pkf_2p,lpf_4p,hpf_4p,lpf_6p,hpf_6p,comb,pink} | Filter that the noise generator goes through, or off.
noise_stereo | v2 string | {on,off} | Whether the noise differs between left and right.
noise_level | v2 float dB | [-96..24] | :the noise level | Level of the noise added to the sample.
noise_level_onccN | extension float dB | [-96..24] | >noise_level
noise_level_smoothccN | extension float ms | [0..] | =0 | >noise_level
noise_step | v2 integer | [0..100] | :the step size of the noise | How coarse the steps of the noise are.
noise_step_onccN | extension integer | [0..100] | >noise_step
noise_tone | v2 integer | [0..100] | :the tone of the noise | Brightness of the noise.
noise_tone_onccN | extension integer | [0..100] | >noise_tone
`,
  },
  {
    category: 'Performance Parameters/Pitch',
    rows: `
bend_up | v1 integer cents | [-9600..9600] | =200 | ~bendup | :the upward bend range | Change of pitch with the pitch wheel fully up.
bend_down | v1 integer cents | [-9600..9600] | =-200 | ~benddown | :the downward bend range | Change of pitch with the pitch wheel fully down.
bend_smooth | v2 float ms | [0..] | =0 | :the smoothing of the pitch wheel | How slowly the pitch follows the pitch wheel; 0 follows at once.
bend_step | v1 integer cents | [1..1200] | =1 | ~bendstep | Size of the steps in which the pitch wheel moves the pitch; 100 bends in semitones.
tune | v1 integer cents | [-100..100] | =0 | ~pitch | :the tuning | Fine tuning of the region, up or down.
pitch_onccN | v2 - cents | [-9600..9600] | >tune | ~tune_ccN,tune_onccN
pitch_curveccN | v2 integer | [0..255] | =0 | >tune | ~tune_curveccN
pitch_smoothccN | v2 float ms | [0..] | =0 | >tune | ~tune_smoothccN
pitch_stepccN | v2 | [0..] | =0 | >tune | ~tune_stepccN
group_tune | extension integer cents | [-9600..9600] | =0 | :the tuning of the group | Cents added to the tuning of everything in the group.
master_tune | extension integer cents | [-9600..9600] | =0 | :the tuning of the master header | Cents added to the tuning of everything under the master header.
global_tune | extension integer cents | [-9600..9600] | =0 | :the tuning of the global header | Cents added to the tuning of everything under the global header.
pitch_keycenter | v1 integer | [0..127] | =60 | Root key: the note that was recorded, at which the sample plays at its own speed.
pitch_keytrack | v1 integer cents | [-1200..1200] | =100 | ~tune_keytrack | :the key tracking of the pitch | Change of pitch for each key: 100 follows the keyboard, 0 plays the same pitch on all keys.
pitch_random | v1 integer cents | [0..9600] | =0 | ~tune_random | :the random part of the pitch | Greatest change of pitch, picked at random for each note.
pitch_veltrack | v1 integer cents | [-9600..9600] | =0 | ~tune_veltrack | :the velocity tracking of the pitch | Change of pitch at the highest velocity.
transpose | v1 integer | [-127..127] | =0 | :the transposition | Moves the pitch of the region up or down in semitones.
bend_stepup | v2 integer cents | [1..1200] | =1 | Size of the steps in which the pitch wheel raises the pitch.
bend_stepdown | v2 integer cents | [1..1200] | =1 | Size of the steps in which the pitch wheel lowers the pitch.
`,
  },
];
