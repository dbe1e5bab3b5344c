import { db } from '../playing';
import type { Heard, HeardTable } from './ears';
import { cutoffCentsAt, peakingDb, rate, toneDb } from './ears';

const tone = 'sample=tone.wav pan=-100 amp_veltrack=0';
const lowPass = `${tone} fil_type=lpf_1p cutoff=1000`;
const key = (number: number): Partial<Heard> => ({ options: { key: number } });
const velocity = (number: number): Partial<Heard> => ({ options: { velocity: number } });

/** Opcodes of filters and equaliser bands that do not belong to a value that is moved, by pattern. */
export const filterTests: HeardTable = {
  fil_keytrack: {
    base: `${lowPass} pitch_keytrack=0`,
    opcode: 'fil_keytrack=100',
    hear: cutoffCentsAt(0.1, 1000),
    is: 300,
    within: 1,
    ...key(63),
  },
  fil_keycenter: {
    base: `${lowPass} fil_keytrack=100`,
    opcode: 'fil_keycenter=58',
    hear: cutoffCentsAt(0.1, 1000),
    is: 200,
    within: 1,
  },
  fil_veltrack: {
    base: lowPass,
    opcode: 'fil_veltrack=600',
    hear: cutoffCentsAt(0.1, 1000),
    is: (600 * 64) / 127,
    within: 1,
    ...velocity(64),
  },
  fil_random: {
    base: lowPass,
    opcode: 'fil_random=600',
    hear: cutoffCentsAt(0.1, 1000),
    is: 550,
    within: 50,
    seeds: 24,
  },
  fil2_keytrack: {
    base: `${lowPass2()} pitch_keytrack=0`,
    opcode: 'fil2_keytrack=100',
    hear: cutoffCentsAt(0.1, 1000),
    is: 300,
    within: 1,
    ...key(63),
  },
  fil2_keycenter: {
    base: `${lowPass2()} fil2_keytrack=100`,
    opcode: 'fil2_keycenter=58',
    hear: cutoffCentsAt(0.1, 1000),
    is: 200,
    within: 1,
  },
  fil2_veltrack: {
    base: lowPass2(),
    opcode: 'fil2_veltrack=600',
    hear: cutoffCentsAt(0.1, 1000),
    is: (600 * 64) / 127,
    within: 1,
    ...velocity(64),
  },
  cutoff2_random: {
    base: lowPass2(),
    opcode: 'cutoff2_random=600',
    hear: cutoffCentsAt(0.1, 1000),
    is: 550,
    within: 50,
    seeds: 24,
  },
  resonance_random: {
    base: `${tone} cutoff=1000`,
    opcode: 'resonance_random=12',
    hear: toneDb(0.1),
    is: 11.4 - 3.01,
    within: 0.6,
    seeds: 24,
  },
  resonance2_random: {
    base: `${tone} cutoff2=1000`,
    opcode: 'resonance2_random=12',
    hear: toneDb(0.1),
    is: 11.4 - 3.01,
    within: 0.6,
    seeds: 24,
  },
  fil_type: filterTypeTests('fil_type', 'cutoff'),
  fil2_type: filterTypeTests('fil2_type', 'cutoff2'),
  eqN_type: [
    // Shelves of 12 dB: 6 dB at their frequency (W3C Web Audio, lowshelf and highshelf).
    {
      base: `${tone} eq1_freq=1000 eq1_gain=12`,
      opcode: 'eq1_type=lshelf',
      hear: toneDb(0.1),
      is: 6,
      within: 0.01,
    },
    {
      base: `${tone} eq1_freq=1000 eq1_gain=12`,
      opcode: 'eq1_type=hshelf',
      hear: toneDb(0.1),
      is: 6,
      within: 0.01,
    },
  ],
  eqN_dynamic: {
    base: `${tone} eq1_freq=1000`,
    opcode: 'eq1_dynamic=1 eq1_gain_oncc20=8',
    hear: toneDb(0.2),
    is: peakingDb(1000, 1000, 1, 8),
    within: 0.02,
    options: { acts: [[0.1, (engine) => engine.controller(20, 127)]] },
  },
};

function lowPass2(): string {
  return `${tone} fil2_type=lpf_1p cutoff2=1000`;
}

/** The gain of each type at twice or half its cutoff, from the responses of the standard analogue filters, warped. */
function filterTypeTests(opcode: string, cutoff: string): Heard[] {
  const warp = (hertz: number) => Math.tan((Math.PI * hertz) / rate);
  // The tone of 1 kHz in units of the cutoff.
  const x = (hertz: number) => warp(1000) / warp(hertz);
  const butterworth = (order: number, place: number) => -10 * Math.log10(1 + place ** (2 * order));
  const band = (place: number) => -10 * Math.log10(1 + (place - 1 / place) ** 2);
  const notch = (place: number) => db(Math.abs(1 - place * place) / Math.hypot(1 - place * place, place));
  const of = (type: string, hertz: number, is: number): Heard => ({
    base: `${tone} ${cutoff}=${hertz}`,
    opcode: `${opcode}=${type}`,
    hear: toneDb(0.1),
    is,
    within: 0.01,
  });
  return [
    of('lpf_1p', 500, butterworth(1, x(500))),
    of('hpf_1p', 2000, butterworth(1, 1 / x(2000))),
    of('hpf_2p', 2000, butterworth(2, 1 / x(2000))),
    of('hpf_2p_sv', 2000, butterworth(2, 1 / x(2000))),
    of('bpf_2p', 2000, band(x(2000))),
    of('bpf_2p_sv', 2000, band(x(2000))),
    of('brf_2p', 1500, notch(x(1500))),
    of('brf_2p_sv', 1500, notch(x(1500))),
    of('lpf_4p', 700, butterworth(4, x(700))),
    of('hpf_4p', 1400, butterworth(4, 1 / x(1400))),
    of('lpf_6p', 800, butterworth(6, x(800))),
    of('hpf_6p', 1200, butterworth(6, 1 / x(1200))),
    { ...of(`lsh ${opcode.replace('_type', '_gain')}=12`, 1000, 6) },
    { ...of(`hsh ${opcode.replace('_type', '_gain')}=12`, 1000, 6) },
    { ...of(`peq ${opcode.replace('_type', '_gain')}=12`, 1000, 12) },
    // An all-pass of first order turns its frequency by a quarter and leaves its level.
    { ...of('apf_1p', 1000, 0), within: 0.01 },
  ];
}
