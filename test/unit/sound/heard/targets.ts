import type { PlayOptions, Rendered } from '../playing';
import { centsAt, cutoffCentsAt, firstAbove, levelAt, panAt, peakingDb, rate, toneDb, valueAt } from './ears';

/** A value that opcodes set and move, and how it is heard. */
export interface Target {
  base: string;
  /** The opcode as the text names it, its numbers put in. */
  name: string;
  /** How far it is moved from what the base says. */
  amount: number;
  /** What is measured at a time, and what that has to be where the value was moved by an amount. */
  hear: (seconds: number) => (sound: Rendered) => number;
  value: (amount: number) => number;
  within: number;
  options?: PlayOptions;
  /** When it is heard; 0.1 s where not said. */
  at?: number;
  /** The opcode that sets it and what is heard then, where moves have another unit. */
  setting?: { opcode: string; is: number };
}

const flat = 'amp_veltrack=0';
const one = `sample=one.wav pan=-100 ${flat}`;
const panned = `sample=one.wav ${flat}`;
const tone = `sample=tone.wav pan=-100 ${flat}`;
const high = `sample=high.wav pan=-100 ${flat}`;
const same = (amount: number) => amount;

const pitched = { base: tone, hear: (seconds: number) => centsAt(seconds), value: same, within: 0.1 };
const levelled = { base: one, hear: levelAt, value: same, within: 0.01 };
const cut = {
  hear: (seconds: number) => cutoffCentsAt(seconds, 1000),
  value: same,
  within: 0.5,
};
/** At its cutoff frequency a low pass of second order has the gain resonance − 3.01 dB. */
const resonant = {
  hear: (seconds: number) => (sound: Rendered) => toneDb(seconds)(sound) + 3.0103,
  value: same,
  within: 0.01,
};

/** Envelopes and LFOs in the middle of their way to a target: they give 1. */
const steadyEnvelope = 'eg1_time0=0 eg1_level0=1';
const steadyLfo = 'lfo1_wave=3 lfo1_freq=0.001';

function plainTargets(prefix: string, before: string): Record<string, Target> {
  const at = (base: string) => `${base} ${before}`;
  const opcode = (name: string) => `${prefix}${name}`;
  const pattern = (name: string) => opcode(name).replace('eg1', 'egN').replace('lfo1', 'lfoN');
  const entries: [string, Omit<Target, 'name' | 'amount'>, number, string?][] = [
    ['volume', levelled, -8],
    ['pan', { base: panned, hear: panAt, value: same, within: 0.01 }, 40],
    ['width', { base: `sample=side.wav width=0 ${flat}`, hear: hearPercent, value: same, within: 0.01 }, 60],
    ['pitch', pitched, 300],
    ['cutoff', { base: `${tone} fil_type=lpf_1p cutoff=1000`, ...cut }, 700],
    ['cutoff2', { base: `${tone} fil2_type=lpf_1p cutoff2=1000`, ...cut }, 700],
    ['resonance', { base: `${tone} cutoff=1000`, ...resonant }, 8],
    ['resonance2', { base: `${tone} cutoff2=1000`, ...resonant }, 8],
    ['eqXfreq', bandFrequency, 500, 'eq1freq'],
    ['eqXbw', bandWidth, 1, 'eq1bw'],
    ['eqXgain', bandGain, 8, 'eq1gain'],
  ];
  return Object.fromEntries(
    entries.map(([name, target, amount, written = name]) => [
      pattern(name),
      { ...target, base: at(target.base), name: opcode(written), amount },
    ]),
  );
}

function hearPercent(seconds: number): (sound: Rendered) => number {
  return (sound) => 100 * valueAt(seconds)(sound);
}

const bandFrequency: Omit<Target, 'name' | 'amount'> = {
  base: `${tone} eq1_freq=1000 eq1_bw=1 eq1_gain=12`,
  hear: toneDb,
  value: (amount) => peakingDb(1000, 1000 + amount, 1, 12),
  within: 0.02,
};
const bandWidth: Omit<Target, 'name' | 'amount'> = {
  base: `${tone} eq1_freq=1500 eq1_bw=1 eq1_gain=12`,
  hear: toneDb,
  value: (amount) => peakingDb(1000, 1500, 1 + amount, 12),
  within: 0.02,
};
const bandGain: Omit<Target, 'name' | 'amount'> = {
  base: `${tone} eq1_freq=1000 eq1_gain=0`,
  hear: toneDb,
  value: same,
  within: 0.02,
};

/** Envelopes with fixed stages: their level is heard where a stage has come half its way. */
function stageTargets(envelope: 'ampeg' | 'fileg' | 'pitcheg'): Record<string, Target> {
  const [base, hear] = stageEar(envelope);
  // The fall of the amplitude is 90 dB in its time; the others fall in a straight line.
  const falls = (share: number) => (envelope === 'ampeg' ? 10 ** (-4.5 * share) : Math.max(0, 1 - share));
  const common = { hear, within: envelope === 'ampeg' ? 2e-4 : 8e-3 };
  const target = (stage: string, text: string, amount: number, value: (amount: number) => number) => ({
    ...common,
    base: `${base} ${text}`,
    name: `${envelope}_${stage}`,
    amount,
    value,
  });
  // So slow that the sound hardly falls where the filter or the pitch is heard.
  const held = 'ampeg_release=100';
  const letGo = { options: { hold: 0.05 } };
  return {
    [`${envelope}_delay`]: target('delay', `${envelope}_attack=0.2`, 0.05, (amount) => (0.1 - amount) / 0.2),
    [`${envelope}_attack`]: target('attack', '', 0.3, (amount) =>
      amount >= 0.1 ? 0.1 / amount : envelope === 'ampeg' ? 1 : 0,
    ),
    [`${envelope}_hold`]: target('hold', `${envelope}_decay=0.2 ${envelope}_sustain=0`, 0.06, (amount) =>
      falls((0.1 - amount) / 0.2),
    ),
    [`${envelope}_decay`]: target('decay', `${envelope}_sustain=0`, 0.3, (amount) => falls(0.1 / amount)),
    [`${envelope}_sustain`]: target('sustain', `${envelope}_sustain=10`, 40, (amount) => (10 + amount) / 100),
    [`${envelope}_start`]: target(
      'start',
      `${envelope}_attack=0.2`,
      30,
      (amount) => amount / 100 + (1 - amount / 100) * 0.5,
    ),
    [`${envelope}_release`]: {
      ...target(
        'release',
        envelope === 'ampeg' ? 'ampeg_release=0' : `${held} ${envelope}_sustain=100`,
        0.4,
        (amount) => falls(0.05 / amount),
      ),
      ...letGo,
    },
  };
}

function stageEar(envelope: string): [base: string, hear: Target['hear']] {
  if (envelope === 'ampeg') return [one, valueAt];
  if (envelope === 'fileg') {
    return [
      `${high} fil_type=lpf_1p cutoff=1000 fileg_depth=1800`,
      (seconds) => (sound) => cutoffCentsAt(seconds, 4000)(sound) / 1800,
    ];
  }
  return [`${tone} pitcheg_depth=1200`, (seconds) => (sound) => centsAt(seconds)(sound) / 1200];
}

/** The three LFOs with a fixed target: a sine from 0 on. */
function firstLfoTargets(): Record<string, Target> {
  const ears: Record<string, [base: string, hear: Target['hear'], depth: number]> = {
    amplfo: [one, levelAt, 6],
    fillfo: [`${tone} fil_type=lpf_1p cutoff=1000`, (seconds) => cutoffCentsAt(seconds, 1000), 600],
    pitchlfo: [tone, (seconds) => centsAt(seconds), 400],
  };
  const targets: Record<string, Target> = {};
  for (const [lfo, [base, hear, depth]] of Object.entries(ears)) {
    const within = depth / 200;
    const swing = (hertz: number, seconds: number) => Math.sin(2 * Math.PI * hertz * seconds);
    const make = (name: string, text: string, amount: number, value: (amount: number) => number): Target => ({
      base: `${base} ${text}`,
      name: `${lfo}_${name}`,
      amount,
      hear,
      value,
      within,
    });
    targets[`${lfo}_depth`] = make('depth', `${lfo}_freq=2.5`, depth, (amount) => amount * swing(2.5, 0.1));
    targets[`${lfo}_freq`] = make('freq', `${lfo}_depth=${depth}`, 2, (amount) => depth * swing(amount, 0.1));
    const running = `${lfo}_depth=${depth} ${lfo}_freq=4`;
    targets[`${lfo}_delay`] = make('delay', running, 0.06, (amount) => depth * swing(4, 0.1 - amount));
    targets[`${lfo}_fade`] = make('fade', running, 0.4, (amount) => depth * swing(4, 0.1) * (0.1 / amount));
  }
  return targets;
}

const saw = `${one} lfo1_wave=6 lfo1_volume=12`;

/** Numbered LFOs: a saw upwards on the volume, 12·(2·place − 1) dB. */
const lfoTargets: Record<string, Target> = {
  lfoN_freq: {
    base: saw,
    name: 'lfo1_freq',
    amount: 2,
    // The slope tells the frequency of this moment.
    hear: (seconds) => (sound) =>
      (levelAt(seconds + 0.002)(sound) - levelAt(seconds - 0.002)(sound)) / (24 * 0.004),
    value: same,
    within: 0.01,
  },
  lfoN_delay: {
    base: `${saw} lfo1_freq=2`,
    name: 'lfo1_delay',
    amount: 0.05,
    hear: levelAt,
    value: (amount) => 12 * (4 * (0.1 - amount) - 1),
    within: 0.05,
  },
  lfoN_fade: {
    base: `${saw} lfo1_freq=2`,
    name: 'lfo1_fade',
    amount: 0.4,
    hear: levelAt,
    value: (amount) => 12 * (4 * 0.1 - 1) * (0.1 / amount),
    within: 0.05,
  },
  lfoN_phase: {
    base: `${saw} lfo1_freq=2`,
    name: 'lfo1_phase',
    amount: 0.4,
    hear: levelAt,
    value: (amount) => 12 * (2 * (0.2 + amount) - 1),
    within: 0.05,
  },
  lfoN_freq_lfoX: {
    base: `${saw} lfo1_freq=1 lfo2_wave=3 lfo2_freq=0.001`,
    name: 'lfo2_freq_lfo1',
    amount: 2,
    hear: levelAt,
    value: (amount) => 12 * (2 * 0.1 * (1 + amount) - 1),
    within: 0.1,
  },
};

/** Points of numbered envelopes, heard on the volume. */
const pointTargets: Record<string, Target> = {
  egN_timeX: {
    base: `${one} eg1_volume=10 eg1_time0=0 eg1_level0=0 eg1_level1=1`,
    name: 'eg1_time1',
    amount: 0.4,
    hear: levelAt,
    value: (amount) => 10 * (0.1 / amount),
    within: 0.05,
  },
  egN_levelX: {
    base: `${one} eg1_volume=10 eg1_time0=0`,
    name: 'eg1_level0',
    amount: 0.6,
    hear: levelAt,
    value: (amount) => 10 * amount,
    within: 0.02,
  },
};

/** Every value that opcodes move, by the pattern of the opcode that sets it. */
export const targets: Readonly<Record<string, Target>> = {
  volume: { ...levelled, name: 'volume', amount: -8 },
  pan: { base: panned, name: 'pan', amount: 40, hear: panAt, value: same, within: 0.01 },
  width: {
    base: `sample=side.wav width=20 ${flat}`,
    name: 'width',
    amount: 60,
    hear: hearPercent,
    value: (amount) => 20 + amount,
    within: 0.01,
  },
  position: {
    base: `sample=both.wav ${flat}`,
    name: 'position',
    amount: 40,
    // The right side keeps itself and takes in the sine of what is moved (W3C Web Audio, StereoPannerNode).
    hear: (seconds) => (sound) => (Math.acos(valueAt(seconds)(sound)) / (Math.PI / 2)) * 100,
    value: same,
    within: 0.01,
  },
  amp_veltrack: {
    base: 'sample=one.wav pan=-100 amp_veltrack=20',
    name: 'amp_veltrack',
    amount: 60,
    hear: valueAt,
    value: (amount) => 1 - (20 + amount) / 100 + ((20 + amount) / 100) * (64 / 127) ** 2,
    within: 1e-4,
    options: { velocity: 64 },
  },
  tune: { ...pitched, name: 'tune', amount: 300 },
  loop_tune: { ...pitched, base: `${tone} loop_mode=loop_continuous`, name: 'loop_tune', amount: 300 },
  cutoff: {
    base: `${tone} fil_type=lpf_1p cutoff=1000`,
    name: 'cutoff',
    amount: 700,
    ...cut,
    setting: { opcode: 'cutoff=1700', is: 1200 * Math.log2(1.7) },
  },
  cutoff2: {
    base: `${tone} fil2_type=lpf_1p cutoff2=1000`,
    name: 'cutoff2',
    amount: 700,
    ...cut,
    setting: { opcode: 'cutoff2=1700', is: 1200 * Math.log2(1.7) },
  },
  resonance: { base: `${tone} cutoff=1000`, name: 'resonance', amount: 8, ...resonant },
  resonance2: { base: `${tone} cutoff2=1000`, name: 'resonance2', amount: 8, ...resonant },
  fil_gain: {
    base: `${tone} fil_type=peq cutoff=1000`,
    name: 'fil_gain',
    amount: 8,
    hear: toneDb,
    value: same,
    within: 0.01,
  },
  fil2_gain: {
    base: `${tone} fil2_type=peq cutoff2=1000`,
    name: 'fil2_gain',
    amount: 8,
    hear: toneDb,
    value: same,
    within: 0.01,
  },
  offset: {
    base: `sample=ramp.wav pan=-100 ${flat}`,
    name: 'offset',
    amount: 4000,
    hear: () => (sound) => Math.round(valueAt(0)(sound) * rate),
    value: Math.floor,
    within: 0,
  },
  delay_samples: {
    base: one,
    name: 'delay_samples',
    amount: 900,
    hear: () => (sound) => Math.round(firstAbove(0.5)(sound) * rate),
    value: Math.round,
    within: 0,
  },
  loop_start: {
    base: `sample=ramp.wav pan=-100 ${flat} loop_mode=loop_continuous loop_end=3000`,
    name: 'loop_start',
    amount: 800,
    hear:
      () =>
      ({ left }) =>
        Math.round(Math.min(...left.subarray(3000, 9000)) * rate),
    value: Math.floor,
    within: 0,
  },
  loop_end: {
    base: `sample=ramp.wav pan=-100 ${flat} loop_mode=loop_continuous loop_start=100 loop_end=1000`,
    name: 'loop_end',
    amount: 800,
    hear:
      () =>
      ({ left }) =>
        Math.round(Math.max(...left.subarray(0, 9000)) * rate),
    value: (amount) => Math.floor(1000 + amount),
    within: 0,
  },
  ...stageTargets('ampeg'),
  ...stageTargets('fileg'),
  ...stageTargets('pitcheg'),
  fileg_depth: {
    base: `${tone} fil_type=lpf_1p cutoff=1000 fileg_sustain=100`,
    name: 'fileg_depth',
    amount: 700,
    ...cut,
  },
  pitcheg_depth: { ...pitched, base: `${tone} pitcheg_sustain=100`, name: 'pitcheg_depth', amount: 300 },
  ...firstLfoTargets(),
  eqN_freq: { ...bandFrequency, name: 'eq1_freq', amount: 500 },
  eqN_bw: { ...bandWidth, name: 'eq1_bw', amount: 1 },
  eqN_gain: { ...bandGain, name: 'eq1_gain', amount: 8 },
  ...lfoTargets,
  ...pointTargets,
  ...plainTargets('eg1_', steadyEnvelope),
  ...plainTargets('lfo1_', steadyLfo),
  lfoN_amplitude: {
    base: `${one} ${steadyLfo}`,
    name: 'lfo1_amplitude',
    amount: 50,
    hear: (seconds) => (sound) => 100 * valueAt(seconds)(sound) - 100,
    value: same,
    within: 0.01,
  },
  egN_amplitude: {
    base: `${one} ${steadyEnvelope}`,
    name: 'eg1_amplitude',
    amount: 50,
    hear: hearPercent,
    value: same,
    within: 0.01,
  },
};
