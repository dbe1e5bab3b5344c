import type { Act, Rendered } from '../playing';
import { db } from '../playing';
import type { Heard, HeardTable } from './ears';
import { centsAt, levelAt, panAt, rate, soundEnd, valueAt } from './ears';

const flat = 'amp_veltrack=0';
const one = `sample=one.wav pan=-100 ${flat}`;
const ramp = `sample=ramp.wav pan=-100 ${flat}`;
const tone = `sample=tone.wav pan=-100 ${flat}`;

/** The frame of the ramp that sounds at a frame of output. */
const frameAt =
  (at: number) =>
  ({ left }: Rendered): number =>
    Math.round(left[at] * rate);

const level = (base: string, opcode: string, is: number, more: Partial<Heard> = {}): Heard => ({
  base,
  opcode,
  hear: levelAt(0.1),
  is,
  within: 0.01,
  ...more,
});

const key = (number: number): Partial<Heard> => ({ options: { key: number } });
const velocity = (number: number): Partial<Heard> => ({ options: { velocity: number } });
const controller = (number: number): Partial<Heard> => ({ options: { controllers: { 20: number } } });
const wheel = (value: number): Partial<Heard> => ({
  options: { acts: [[-1, (engine) => engine.bend(value)]] },
});

const half = 20 * Math.log10(0.5);
/** Halfway, two layers of a power crossfade are 3.01 dB down each. */
const halfPower = 20 * Math.log10(Math.SQRT1_2);

const levels: HeardTable = {
  global_volume: level(one, 'global_volume=-5', -5),
  master_volume: level(one, 'master_volume=-5', -5),
  group_volume: level(`${one} volume=-3`, 'group_volume=-5', -8),
  amplitude: level(one, 'amplitude=50', half),
  global_amplitude: level(one, 'global_amplitude=50', half),
  master_amplitude: level(one, 'master_amplitude=50', half),
  group_amplitude: level(`${one} amplitude=50`, 'group_amplitude=50', 2 * half),
  amplitude_onccN: [
    level(one, 'amplitude_oncc20=100', half, { ...controller(63.5) }),
    // As a fader at 0 it is silent.
    { ...level(one, 'amplitude_oncc20=100', 0, { hear: valueAt(0.1) }), ...controller(0) },
  ],
  amplitude_curveccN: level(
    `${one} amplitude_oncc20=100`,
    'amplitude_curvecc20=4',
    2 * half,
    controller(63.5),
  ),
  amplitude_smoothccN: level(
    `${one} amplitude_oncc20=100`,
    'amplitude_smoothcc20=100',
    db(1 - Math.exp(-0.5)),
    {
      hear: levelAt(0.15),
      within: 0.1,
      options: { acts: [[0.1, (engine) => engine.controller(20, 127)]] },
    },
  ),
  // Added to 0 % instead of multiplied with it.
  '*_mod': level(`${one} amplitude=0 amplitude_oncc20=50`, 'amplitude_mod=add', half, controller(127)),
  amp_keytrack: level(one, 'amp_keytrack=-1.5', -3, key(62)),
  amp_keycenter: level(`${one} amp_keytrack=-1.5`, 'amp_keycenter=52', -15, key(62)),
  amp_velcurve_N: [
    level('sample=one.wav pan=-100', 'amp_velcurve_64=1', 0, velocity(64)),
    level('sample=one.wav pan=-100', 'amp_velcurve_64=1', half, velocity(32)),
  ],
  amp_random: level(one, 'amp_random=12', 11.5, { seeds: 24, within: 0.5 }),
  amp_veltrack_random: {
    ...level(
      'sample=one.wav pan=-100 amp_veltrack=50',
      'amp_veltrack_random=40',
      1 - 0.1 + 0.1 * (10 / 127) ** 2,
      {
        hear: valueAt(0.1),
        seeds: 24,
        within: 0.07,
      },
    ),
    ...velocity(10),
  },
  phase: { base: one, opcode: 'phase=invert', hear: valueAt(0.1), is: -1, within: 1e-9 },
  xfin_lokey: level(`${one} xfin_hikey=70`, 'xfin_lokey=50', halfPower),
  xfin_hikey: level(`${one} xfin_lokey=50`, 'xfin_hikey=70', halfPower),
  xfout_lokey: level(`${one} xfout_hikey=70`, 'xfout_lokey=50', halfPower),
  xfout_hikey: level(`${one} xfout_lokey=50`, 'xfout_hikey=70', halfPower),
  xfin_lovel: level(`${one} xfin_hivel=80`, 'xfin_lovel=40', halfPower, velocity(60)),
  xfin_hivel: level(`${one} xfin_lovel=40`, 'xfin_hivel=80', halfPower, velocity(60)),
  xfout_lovel: level(`${one} xfout_hivel=80`, 'xfout_lovel=40', halfPower, velocity(60)),
  xfout_hivel: level(`${one} xfout_lovel=40`, 'xfout_hivel=80', halfPower, velocity(60)),
  xfin_loccN: level(`${one} xfin_hicc20=80`, 'xfin_locc20=40', halfPower, controller(60)),
  xfin_hiccN: level(`${one} xfin_locc20=40`, 'xfin_hicc20=80', halfPower, controller(60)),
  xfout_loccN: level(`${one} xfout_hicc20=80`, 'xfout_locc20=40', halfPower, controller(60)),
  xfout_hiccN: level(`${one} xfout_locc20=40`, 'xfout_hicc20=80', halfPower, controller(60)),
  xf_keycurve: level(`${one} xfin_lokey=50 xfin_hikey=70`, 'xf_keycurve=gain', half),
  xf_velcurve: level(`${one} xfin_lovel=40 xfin_hivel=80`, 'xf_velcurve=gain', half, velocity(60)),
  xf_cccurve: level(`${one} xfin_locc20=40 xfin_hicc20=80`, 'xf_cccurve=gain', half, controller(60)),
};

const pan = (base: string, opcode: string, is: number, more: Partial<Heard> = {}): Heard => ({
  base: `sample=one.wav ${flat} ${base}`,
  opcode,
  hear: panAt(0.1),
  is,
  within: 0.01,
  ...more,
});
/** The position of `both.wav` to the right, from what the left side keeps. */
const position = (base: string, opcode: string, is: number, more: Partial<Heard> = {}): Heard => ({
  base: `sample=both.wav ${flat} ${base}`,
  opcode,
  hear: (sound) => (Math.acos(Math.min(1, valueAt(0.1)(sound))) / (Math.PI / 2)) * 100,
  is,
  within: 0.01,
  ...more,
});

const places: HeardTable = {
  pan_random: pan('', 'pan_random=60', 55, { seeds: 24, within: 5 }),
  pan_keytrack: pan('', 'pan_keytrack=10', 30, key(63)),
  pan_keycenter: pan('pan_keytrack=10', 'pan_keycenter=58', 50, key(63)),
  pan_veltrack: pan('', 'pan_veltrack=50', 50),
  pan_law: { ...level(`sample=one.wav ${flat}`, 'pan_law=balance', 0) },
  position_random: position('', 'position_random=60', 55, { seeds: 24, within: 5 }),
  position_keytrack: position('', 'position_keytrack=10', 30, key(63)),
  position_keycenter: position('position_keytrack=10', 'position_keycenter=58', 50, key(63)),
  position_veltrack: position('', 'position_veltrack=50', 50),
};

const pitch = (base: string, opcode: string, is: number, more: Partial<Heard> = {}): Heard => ({
  base: `${tone} ${base}`,
  opcode,
  hear: centsAt(0.1),
  is,
  within: 0.1,
  ...more,
});

const pitches: HeardTable = {
  transpose: pitch('', 'transpose=-3', -300),
  group_tune: pitch('', 'group_tune=40', 40),
  master_tune: pitch('', 'master_tune=40', 40),
  global_tune: pitch('tune=10', 'global_tune=40', 50),
  pitch_keycenter: pitch('', 'pitch_keycenter=57', 300),
  pitch_keytrack: pitch('', 'pitch_keytrack=50', 150, key(63)),
  pitch_veltrack: pitch('', 'pitch_veltrack=200', (200 * 64) / 127, velocity(64)),
  pitch_random: pitch('', 'pitch_random=300', 275, { seeds: 24, within: 25 }),
  bend_up: pitch('', 'bend_up=700', 700, wheel(8191)),
  bend_down: pitch('', 'bend_down=-700', -700, wheel(-8192)),
  bend_step: pitch('bend_up=700', 'bend_step=100', 300, wheel(4300)),
  bend_stepup: pitch('bend_up=700 bend_step=1', 'bend_stepup=100', 300, wheel(4300)),
  bend_stepdown: pitch('bend_down=-700 bend_step=1', 'bend_stepdown=100', -300, wheel(-4300)),
  bend_smooth: pitch('bend_up=700', 'bend_smooth=100', 700 * (1 - Math.exp(-0.5)), {
    hear: centsAt(0.15),
    within: 5,
    options: { acts: [[0.1, (engine) => engine.bend(8191)]] },
  }),
};

const release: Act = [0.02, (engine) => engine.noteOff(60)];

const sampleReading: HeardTable = {
  sample: { base: `pan=-100 ${flat}`, opcode: 'sample=one.wav', hear: levelAt(0.1), is: 0, within: 0.001 },
  count: { base: `sample=short.wav pan=-100 ${flat}`, opcode: 'count=2', hear: soundEnd, is: 0.2, within: 0 },
  end: { base: ramp, opcode: 'end=999', hear: soundEnd, is: 1000 / rate, within: 0 },
  offset_random: {
    base: ramp,
    opcode: 'offset_random=4000',
    hear: frameAt(0),
    is: 3700,
    within: 300,
    seeds: 24,
  },
  offset_mode: {
    base: `${ramp} offset=25`,
    opcode: 'offset_mode=percent',
    hear: frameAt(0),
    is: rate / 4,
    within: 0,
  },
  direction: {
    base: `${ramp} end=20000`,
    opcode: 'direction=reverse',
    hear: frameAt(0),
    is: 20000,
    within: 0,
  },
  loop_mode: [
    {
      base: `${ramp} loop_start=100 loop_end=199`,
      opcode: 'loop_mode=loop_continuous',
      hear: frameAt(250),
      is: 150,
      within: 0,
    },
    {
      base: `${ramp} loop_start=100 loop_end=999 ampeg_release=9`,
      opcode: 'loop_mode=loop_sustain',
      options: { acts: [[0.1, (engine) => engine.noteOff(60)]] },
      // Let go at frame 4800, in the middle of a pass: that is played to its end at 5499 and the sample goes on with frame 1000.
      hear: ({ left }) => Math.round((left[5600] / 10 ** ((-4.5 * 800) / (9 * rate))) * rate),
      is: 1100,
      within: 0,
    },
    {
      base: ramp,
      opcode: 'loop_mode=one_shot',
      options: { acts: [release] },
      hear: frameAt(5000),
      is: 5000,
      within: 0,
    },
  ],
  loop_count: {
    base: `${ramp} loop_mode=loop_continuous loop_start=100 loop_end=199`,
    opcode: 'loop_count=2',
    // The loop sounds three times, then what is behind it.
    hear: frameAt(400),
    is: 200,
    within: 0,
  },
  loop_type: [
    {
      base: `${ramp} loop_mode=loop_continuous loop_start=100 loop_end=199`,
      opcode: 'loop_type=alternate',
      hear: frameAt(210),
      is: 188,
      within: 0,
    },
    {
      base: `${ramp} loop_mode=loop_continuous loop_start=100 loop_end=199`,
      opcode: 'loop_type=backward',
      hear: frameAt(310),
      is: 188,
      within: 0,
    },
  ],
  loop_crossfade: {
    base: `${ramp} loop_mode=loop_continuous loop_start=1000 loop_end=1999`,
    opcode: 'loop_crossfade=0.01',
    // Halfway through the last 480 frames both shares are a half: 1759 and 759.
    hear: frameAt(1759),
    is: 1259,
    within: 0,
  },
  sample_fadeout: {
    base: `sample=short.wav pan=-100 ${flat}`,
    opcode: 'sample_fadeout=0.04',
    hear: valueAt(0.08),
    is: 0.5,
    within: 1e-9,
  },
  off_shape: {
    base: `${one} group=1 off_by=1 off_mode=time off_time=0.1 key=60`,
    opcode: 'off_shape=0',
    options: { acts: [[0.1, (engine) => engine.noteOn(60, 1)]] },
    hear: (sound) => valueAt(0.15)(sound) - 1,
    is: 0.5,
    within: 1e-3,
  },
};

/** Opcodes that do not belong to a value that is moved, by pattern. */
export const singleTests: HeardTable = {
  ...levels,
  ...places,
  ...pitches,
  ...sampleReading,
};
