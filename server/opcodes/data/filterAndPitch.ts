import type { OpcodeTable } from '../opcodeTable';

/** Equaliser, filter and pitch of a region. */
export const filterAndPitch: readonly OpcodeTable[] = [
  {
    category: 'Performance Parameters/EQ',
    rows: `
eqN_bw | v1 float octaves | [0.001..4] | =1
eqN_bwccX | extension float octaves | [-4..4] | =0 | >eqN_bw | ~eqN_bw_onccX
eqN_freq | v1 float Hz | [0..30000] | =eq1_freq=50, eq2_freq=500, eq3_freq=5000
eqN_freqccX | extension float Hz | [-30000..30000] | =0 | >eqN_freq | ~eqN_freq_onccX
eqN_vel2freq | extension float Hz | [-30000..30000] | =0 | >eqN_freq
eqN_gain | v1 float dB | [-96..24] | =0
eqN_gainccX | extension float dB | [-96..24] | =0 | >eqN_gain | ~eqN_gain_onccX
eqN_vel2gain | extension float dB | [-96..24] | =0 | >eqN_gain
eqN_dynamic | extension integer | [0..1] | =0
eqN_type | v2 string | =peak | {peak,lshelf,hshelf}
`,
  },
  {
    category: 'Performance Parameters/Filter',
    rows: `
cutoff | v1 float Hz | [0..] | =filter disabled | +cutoff2
cutoff_ccN | extension integer cents | [-9600..9600] | =0 | >cutoff | ~cutoff_onccN
cutoff_curveccN | v2 integer | [0..255] | =0 | >cutoff
cutoff_smoothccN | v2 float ms | [0..] | =0 | >cutoff
cutoff_stepccN | v2 integer | [0..] | =0 | >cutoff
cutoff_chanaft | extension integer cents | [-9600..9600] | =0 | >cutoff
cutoff_polyaft | extension integer cents | [-9600..9600] | =0 | >cutoff
fil_gain | extension float dB | =0 | +fil2_gain
fil_gain_onccN | extension | >fil_gain
fil_keycenter | v1 integer | [0..127] | =60 | +fil2_keycenter
fil_keytrack | v1 integer cents | [0..1200] | =0 | +fil2_keytrack
fil_random | v1 integer cents | [0..9600] | =0 | ~cutoff_random | +cutoff2_random
fil_type | v1 string | =lpf_2p | {lpf_1p,hpf_1p,lpf_2p,hpf_2p,bpf_2p,brf_2p,bpf_1p,brf_1p,apf_1p,lpf_2p_sv,hpf_2p_sv,bpf_2p_sv,brf_2p_sv,pkf_2p,lpf_4p,hpf_4p,lpf_6p,hpf_6p,comb,pink,lsh,hsh,peq} | ~filtype | +fil2_type
fil_veltrack | v1 integer cents | [-9600..9600] | =0 | +fil2_veltrack
resonance | v1 float dB | [0..40] | =0 | +resonance2
resonance_onccN | v2 float dB | [-40..40] | =0 | >resonance | ~resonance_ccN
resonance_curveccN | v2 integer | [0..255] | =0 | >resonance
resonance_smoothccN | v2 float ms | [0..] | =0 | >resonance
resonance_stepccN | v2 integer | [0..] | =0 | >resonance
resonance_random | extension float dB | [0..40] | =0
resonance2_random | extension float dB | [0..40] | =0
noise_filter | v2 string | {on,off,lpf_1p,hpf_1p,bpf_1p,brf_1p,apf_1p,lpf_2p,hpf_2p,bpf_2p,brf_2p,pkf_2p,lpf_4p,hpf_4p,lpf_6p,hpf_6p,comb,pink}
noise_stereo | v2 string | {on,off}
noise_level | v2 float dB | [-96..24]
noise_level_onccN | extension float dB | [-96..24] | >noise_level
noise_level_smoothccN | extension float ms | [0..] | =0 | >noise_level
noise_step | v2 integer | [0..100]
noise_step_onccN | extension integer | [0..100] | >noise_step
noise_tone | v2 integer | [0..100]
noise_tone_onccN | extension integer | [0..100] | >noise_tone
`,
  },
  {
    category: 'Performance Parameters/Pitch',
    rows: `
bend_up | v1 integer cents | [-9600..9600] | =200 | ~bendup
bend_down | v1 integer cents | [-9600..9600] | =-200 | ~benddown
bend_smooth | v2 float ms | [0..] | =0
bend_step | v1 integer cents | [1..1200] | =1 | ~bendstep
tune | v1 integer cents | [-100..100] | =0 | ~pitch
pitch_onccN | v2 - cents | [-9600..9600] | >tune | ~tune_ccN,tune_onccN
pitch_curveccN | v2 integer | [0..255] | =0 | >tune | ~tune_curveccN
pitch_smoothccN | v2 float ms | [0..] | =0 | >tune | ~tune_smoothccN
pitch_stepccN | v2 | [0..] | =0 | >tune | ~tune_stepccN
group_tune | extension integer cents | [-9600..9600] | =0
master_tune | extension integer cents | [-9600..9600] | =0
global_tune | extension integer cents | [-9600..9600] | =0
pitch_keycenter | v1 integer | [0..127] | =60
pitch_keytrack | v1 integer cents | [-1200..1200] | =100 | ~tune_keytrack
pitch_random | v1 integer cents | [0..9600] | =0 | ~tune_random
pitch_veltrack | v1 integer cents | [-9600..9600] | =0 | ~tune_veltrack
transpose | v1 integer | [-127..127] | =0
bend_stepup | v2 integer cents | [1..1200] | =1
bend_stepdown | v2 integer cents | [1..1200] | =1
`,
  },
];
