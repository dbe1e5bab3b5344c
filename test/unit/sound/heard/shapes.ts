import type { Heard, HeardTable } from './ears';
import { centsAt, cutoffCentsAt, levelAt, valueAt } from './ears';

const flat = 'amp_veltrack=0';
const one = `sample=one.wav pan=-100 ${flat}`;
const tone = `sample=tone.wav pan=-100 ${flat}`;
const high = `sample=high.wav pan=-100 ${flat} fil_type=lpf_1p cutoff=1000`;

/** (e^(k·x) − 1) / (e^k − 1): how far a stage of shape k has come at x. */
function shaped(k: number, x: number): number {
  return (Math.exp(k * x) - 1) / (Math.exp(k) - 1);
}

/** How the level of each envelope, 0..1, is heard. */
const ears: Readonly<
  Record<string, readonly [base: string, hear: (seconds: number) => Heard['hear'], within: number]>
> = {
  ampeg: [one, valueAt, 2e-4],
  fileg: [
    `${high} fileg_depth=1800 ampeg_release=100`,
    (at) => (sound) => cutoffCentsAt(at, 4000)(sound) / 1800,
    8e-3,
  ],
  pitcheg: [
    `${tone} pitcheg_depth=1200 ampeg_release=100`,
    (at) => (sound) => centsAt(at)(sound) / 1200,
    6e-3,
  ],
};

function shapeTests(): HeardTable {
  const table: Record<string, Heard> = {};
  for (const [envelope, [base, hear, within]] of Object.entries(ears)) {
    const make = (opcode: string, more: string, is: number, rest: Partial<Heard> = {}): Heard => ({
      base: `${base} ${more}`,
      opcode: `${envelope}_${opcode}`,
      hear: hear(0.1),
      is,
      within,
      ...rest,
    });
    const text = (settings: string) => settings.replaceAll('EG', envelope);
    const hold = { options: { hold: 0.05 } };
    const amplitude = envelope === 'ampeg';
    table[`${envelope}_attack_shape`] = make('attack_shape=4', text('EG_attack=0.2'), shaped(4, 0.5));
    table[`${envelope}_decay_shape`] = make(
      'decay_shape=-4',
      text('EG_decay=0.2 EG_sustain=0'),
      1 - shaped(-4, 0.5),
    );
    table[`${envelope}_release_shape`] = make(
      'release_shape=-4',
      text(amplitude ? 'EG_release=0.2' : 'EG_release=0.2 EG_sustain=100'),
      1 - shaped(-4, 0.25),
      hold,
    );
    // Halfway through its time a decay to 50 % is at 75 %, where the time is that to the sustain level.
    table[`${envelope}_decay_zero`] = make(
      'decay_zero=0',
      text('EG_decay=0.2 EG_sustain=50 EG_decay_shape=0'),
      0.75,
    );
    if (amplitude)
      Object.assign(table.ampeg_decay_zero, {
        base: `${base} ampeg_decay=0.2 ampeg_sustain=20 ampeg_decay_shape=0`,
        is: 0.6,
      });
    else {
      const other = text('EG_decay=0.2 EG_sustain=50');
      table[`${envelope}_decay_zero`] = make('decay_zero=0', other, 0.75, { hear: hear(0.1) });
      // As a rate it would be at 50 % by then, so that the two differ.
    }
    // From 40 % at the rate of a whole fall in 0.4 s.
    table[`${envelope}_release_zero`] = make(
      'release_zero=1',
      text('EG_release=0.4 EG_sustain=40 EG_release_shape=0'),
      0.4 - 0.05 / 0.4,
      hold,
    );
    table[`${envelope}_dynamic`] = make('dynamic=1', text('EG_sustain=20 EG_sustain_oncc20=50'), 0.7, {
      options: { acts: [[0.05, (engine) => engine.controller(20, 127)]] },
    });
  }
  return table;
}

const envelope = (settings: string, opcode: string, is: number, more: Partial<Heard> = {}): Heard => ({
  base: `${one} eg1_volume=10 ${settings}`,
  opcode,
  hear: levelAt(0.1),
  is,
  within: 0.02,
  ...more,
});

const points = 'eg1_time0=0 eg1_level0=0 eg1_time1=0.05 eg1_level1=1 eg1_time2=0.05 eg1_level2=-1';

const flexible: HeardTable = {
  egN_points: envelope(points, 'eg1_points=2', 10),
  egN_shapeX: envelope(
    'eg1_time0=0 eg1_level0=0 eg1_time1=0.2 eg1_level1=1',
    'eg1_shape1=4',
    10 * shaped(4, 0.5),
  ),
  egN_curveX: envelope('eg1_time0=0 eg1_level0=0 eg1_time1=0.2 eg1_level1=1', 'eg1_curve1=4', 2.5),
  egN_sustain: envelope(points, 'eg1_sustain=1', 10),
  // From its sustain point at 0.1 s it goes back to point 1, which takes 0.05 s again.
  egN_loop: envelope(`${points} eg1_sustain=2`, 'eg1_loop=1', 0, { hear: levelAt(0.125) }),
  egN_loop_count: envelope(`${points} eg1_sustain=2 eg1_loop=1`, 'eg1_loop_count=1', -10, {
    hear: levelAt(0.24),
  }),
  egN_ampeg: {
    base: `${one} eg1_time0=0 eg1_level0=0 eg1_time1=0.2 eg1_level1=1`,
    opcode: 'eg1_ampeg=1',
    hear: valueAt(0.1),
    is: 0.5,
    within: 1e-3,
  },
  egN_dynamic: envelope(
    'eg1_time0=0.05 eg1_level0=0 eg1_time1=0 eg1_level1=0.2 eg1_level1_oncc20=0.5',
    'eg1_dynamic=1',
    7,
    {
      options: { acts: [[0.02, (engine) => engine.controller(20, 127)]] },
    },
  ),
  egN_pan_curve: {
    base: `sample=one.wav ${flat} eg1_time0=0 eg1_level0=0.5 eg1_pan=80`,
    opcode: 'eg1_pan_curve=4',
    hear: ({ left, right }) => (Math.atan2(right[4800], left[4800]) / (Math.PI / 2)) * 200 - 100,
    is: 20,
    within: 0.5,
  },
  egN_freq_lfoX: {
    base: `${one} lfo1_wave=6 lfo1_volume=12 lfo1_freq=1 eg1_time0=0 eg1_level0=1`,
    opcode: 'eg1_freq_lfo1=2',
    hear: levelAt(0.1),
    is: 12 * (2 * 0.3 - 1),
    within: 0.1,
  },
  egN_depth_lfoX: {
    base: `${one} lfo1_wave=3 lfo1_freq=0.001 lfo1_volume=10 eg1_time0=0 eg1_level0=0.5`,
    opcode: 'eg1_depth_lfo1=100',
    hear: levelAt(0.1),
    is: 5,
    within: 0.01,
  },
};

const lfo = (settings: string, opcode: string, is: number, more: Partial<Heard> = {}): Heard => ({
  base: `${one} lfo1_volume=10 ${settings}`,
  opcode,
  hear: levelAt(0.1),
  is,
  within: 0.05,
  ...more,
});

const waves: HeardTable = {
  lfoN_wave: [
    // At a tenth of their time: triangle 4·0.1, saws ±0.8, and pulses of their widths at 0.15 and 0.3.
    lfo('lfo1_freq=1', 'lfo1_wave=0', 4),
    lfo('lfo1_freq=1', 'lfo1_wave=6', -8),
    lfo('lfo1_freq=1', 'lfo1_wave=7', 8),
    lfo('lfo1_freq=6', 'lfo1_wave=2', 10),
    lfo('lfo1_freq=6', 'lfo1_wave=3', -10),
    lfo('lfo1_freq=3', 'lfo1_wave=4', -10),
    lfo('lfo1_freq=1.5', 'lfo1_wave=5', -10),
    lfo('lfo1_freq=1', 'lfo1_wave=12', 9, { seeds: 24, within: 1 }),
  ],
  lfoN_waveX: lfo('lfo1_freq=1', 'lfo1_wave2=7', 10 * (Math.sin(0.2 * Math.PI) + 0.8)),
  lfoN_offset: lfo('lfo1_freq=1', 'lfo1_offset=0.3', 10 * (Math.sin(0.2 * Math.PI) + 0.3)),
  lfoN_offsetX: lfo('lfo1_freq=1 lfo1_wave2=7', 'lfo1_offset2=-0.3', 10 * (Math.sin(0.2 * Math.PI) + 0.5)),
  lfoN_ratio: lfo('lfo1_freq=1', 'lfo1_ratio=2', 10 * Math.sin(0.4 * Math.PI)),
  lfoN_ratioX: lfo('lfo1_freq=1 lfo1_wave2=7', 'lfo1_ratio2=2', 10 * (Math.sin(0.2 * Math.PI) + 0.6)),
  lfoN_scale: lfo('lfo1_freq=1', 'lfo1_scale=0.5', 5 * Math.sin(0.2 * Math.PI)),
  lfoN_scaleX: lfo('lfo1_freq=1 lfo1_wave2=7', 'lfo1_scale2=0.5', 10 * (Math.sin(0.2 * Math.PI) + 0.4)),
  lfoN_count: lfo('lfo1_freq=12', 'lfo1_count=1', 0),
  lfoN_steps: lfo('lfo1_freq=5 lfo1_step1=20 lfo1_step2=70 lfo1_step3=40 lfo1_step4=10', 'lfo1_steps=4', 4),
  lfoN_stepX: lfo('lfo1_freq=5 lfo1_steps=4', 'lfo1_step3=40', 4),
  lfoN_depth_lfoX: lfo('lfo1_wave=3 lfo1_freq=0.001 lfo2_wave=3 lfo2_freq=0.001', 'lfo2_depth_lfo1=-40', 6),
};

/** Opcodes of shapes, of numbered envelopes and of waves. */
export const shapeTable: HeardTable = { ...shapeTests(), ...flexible, ...waves };
