import { RandomUse } from '../../playing/player/randomValues';
import { bandTypes, filterTypes } from '../modulation/filterValues';
import { flexibleHandlers } from './flexibleOpcodes';
import type { OpcodeHandler } from './opcodeHandler';
import { LoopType, MoveSource } from './recipe';
import type { RecipeDraft } from './recipeDraft';

const set =
  (name: string): OpcodeHandler =>
  (draft, value) =>
    draft.set(name, value);

const add =
  (name: string, factor = 1): OpcodeHandler =>
  (draft, value) =>
    draft.add(name, value * factor);

const setting =
  (name: string): OpcodeHandler =>
  (draft, value) => {
    draft.settings.set(name, value);
  };

const multiply: OpcodeHandler = (draft, value) =>
  draft.set('amplitude', (draft.base[draft.slot('amplitude')] * value) / 100);

/** Moves a value by the velocity, `v / 127`. */
const byVelocity =
  (target: string): OpcodeHandler =>
  (draft, value) => {
    draft.move(target, MoveSource.ownVelocity).depth = value;
  };

const byKey =
  (target: string): OpcodeHandler =>
  (draft, value) => {
    const move = draft.move(target, MoveSource.keyDistance);
    move.depth = value;
    move.centre ??= 60;
  };

const keyCentre =
  (target: string): OpcodeHandler =>
  (draft, value) => {
    draft.move(target, MoveSource.keyDistance).centre = value;
  };

const atRandom =
  (target: string, use: number, source: number = MoveSource.randomBoth): OpcodeHandler =>
  (draft, value) => {
    Object.assign(draft.move(target, source, use), { depth: value, curve: use });
  };

/** One of some words; others are not rendered. */
const oneOf =
  (words: readonly string[], take: (draft: RecipeDraft, word: string) => void): OpcodeHandler =>
  (draft, _value, _indexes, text) => {
    if (!words.includes(text)) return false;
    take(draft, text);
  };

const fade =
  (subject: number, isIn: boolean, end: 'low' | 'high'): OpcodeHandler =>
  (draft, value, indexes) => {
    const number = subject === 0 ? indexes[0] : subject;
    const key = `${number} ${isIn}`;
    draft.fades.set(key, { ...draft.fades.get(key), subject: number, isIn, [end]: value });
  };

const power = (of: 'key' | 'velocity' | 'controller'): OpcodeHandler =>
  oneOf(['gain', 'power'], (draft, word) => {
    draft.isPower[of] = word === 'power';
  });

const stageNames = ['delay', 'start', 'attack', 'hold', 'decay', 'sustain', 'release'] as const;

/** Opcodes of the three envelopes with fixed stages. */
function envelopeHandlers(): Record<string, OpcodeHandler> {
  const handlers: Record<string, OpcodeHandler> = {};
  for (const envelope of ['ampeg', 'fileg', 'pitcheg']) {
    for (const stage of stageNames) {
      handlers[`${envelope}_${stage}`] = set(`${envelope}_${stage}`);
      if (stage !== 'start') handlers[`${envelope}_vel2${stage}`] = byVelocity(`${envelope}_${stage}`);
    }
    for (const stage of ['attack', 'decay', 'release']) {
      handlers[`${envelope}_${stage}_shape`] = setting(`${envelope}_${stage}_shape`);
    }
    for (const name of ['decay_zero', 'release_zero', 'dynamic']) {
      handlers[`${envelope}_${name}`] = setting(`${envelope}_${name}`);
    }
  }
  for (const envelope of ['fileg', 'pitcheg']) {
    handlers[`${envelope}_depth`] = set(`${envelope}_depth`);
    handlers[`${envelope}_vel2depth`] = byVelocity(`${envelope}_depth`);
  }
  for (const lfo of ['amplfo', 'fillfo', 'pitchlfo']) {
    for (const name of ['delay', 'fade', 'freq', 'depth']) handlers[`${lfo}_${name}`] = set(`${lfo}_${name}`);
  }
  return handlers;
}

/** Opcodes of the first or second filter. */
function filterHandlers(second: boolean): Record<string, OpcodeHandler> {
  const cents = second ? 'cutoff2' : 'cutoff';
  const fil = second ? 'fil2' : 'fil';
  const resonance = second ? 'resonance2' : 'resonance';
  const use = second ? RandomUse.filter2 : RandomUse.filter;
  return {
    // A cutoff of 0 is no filter; see the list of choices.
    [cents]: (draft, value) => {
      draft.settings.set(cents, value);
      return value > 0;
    },
    [resonance]: set(resonance),
    [`${resonance}_random`]: atRandom(resonance, RandomUse.resonance, MoveSource.randomUp),
    [`${fil}_type`]: (draft, _value, _indexes, text) => {
      const type = filterTypes.find((one) => one === text);
      // A filter that is not known is left out: another in its place would be a lie.
      draft.filterTypes[second ? 1 : 0] = type;
      return type !== undefined;
    },
    [`${fil}_gain`]: set(`${fil}_gain`),
    [`${fil}_keytrack`]: byKey(cents),
    [`${fil}_keycenter`]: keyCentre(cents),
    [`${fil}_veltrack`]: byVelocity(cents),
    [second ? 'cutoff2_random' : 'fil_random']: atRandom(cents, use),
  };
}

const bandHandlers: Record<string, OpcodeHandler> = {
  eqN_freq: (draft, value, [band]) => {
    draft.band(band);
    if (value > 0) draft.set(`eq${band}_freq`, value);
  },
  eqN_bw: (draft, value, [band]) => {
    draft.band(band);
    draft.set(`eq${band}_bw`, value);
  },
  eqN_gain: (draft, value, [band]) => {
    draft.band(band);
    draft.set(`eq${band}_gain`, value);
  },
  eqN_type: (draft, _value, [band], text) => {
    const type = bandTypes.find((one) => one === text);
    draft.band(band).type = type;
    return type !== undefined;
  },
  // Bands follow what moves them in any case; see the list of choices.
  eqN_dynamic: (draft, _value, [band]) => draft.band(band),
  eqN_vel2freq: (draft, value, [band]) => {
    draft.band(band);
    draft.move(`eq${band}_freq`, MoveSource.ownVelocity).depth = value;
  },
  eqN_vel2gain: (draft, value, [band]) => {
    draft.band(band);
    draft.move(`eq${band}_gain`, MoveSource.ownVelocity).depth = value;
  },
};

const levelHandlers: Record<string, OpcodeHandler> = {
  global_volume: add('volume'),
  master_volume: add('volume'),
  group_volume: add('volume'),
  amplitude: multiply,
  global_amplitude: multiply,
  master_amplitude: multiply,
  group_amplitude: multiply,
  amp_keytrack: byKey('volume'),
  amp_keycenter: keyCentre('volume'),
  amp_veltrack: set('amp_veltrack'),
  amp_veltrack_random: atRandom('amp_veltrack', RandomUse.amplitude + 100),
  amp_velcurve_N: (draft, value, [velocity]) => {
    if (velocity <= 127) draft.velocityPoints.set(velocity, value);
  },
  amp_random: atRandom('volume', RandomUse.amplitude, MoveSource.randomUp),
  phase: oneOf(['normal', 'invert'], (draft, word) => {
    draft.flags.isInverted = word === 'invert';
  }),
  pan_law: oneOf(['mma', 'balance'], (draft, word) => {
    draft.flags.isBalanceLaw = word === 'balance';
  }),
  pan_random: atRandom('pan', RandomUse.pan),
  pan_keytrack: byKey('pan'),
  pan_keycenter: keyCentre('pan'),
  pan_veltrack: byVelocity('pan'),
  width: set('width'),
  position: set('position'),
  position_random: atRandom('position', RandomUse.position),
  position_keytrack: byKey('position'),
  position_keycenter: keyCentre('position'),
  position_veltrack: byVelocity('position'),
  xf_keycurve: power('key'),
  xf_velcurve: power('velocity'),
  xf_cccurve: power('controller'),
  xfin_lokey: fade(-1, true, 'low'),
  xfin_hikey: fade(-1, true, 'high'),
  xfout_lokey: fade(-1, false, 'low'),
  xfout_hikey: fade(-1, false, 'high'),
  xfin_lovel: fade(-2, true, 'low'),
  xfin_hivel: fade(-2, true, 'high'),
  xfout_lovel: fade(-2, false, 'low'),
  xfout_hivel: fade(-2, false, 'high'),
  xfin_loccN: fade(0, true, 'low'),
  xfin_hiccN: fade(0, true, 'high'),
  xfout_loccN: fade(0, false, 'low'),
  xfout_hiccN: fade(0, false, 'high'),
};

const pitchHandlers: Record<string, OpcodeHandler> = {
  transpose: add('tune', 100),
  group_tune: add('tune'),
  master_tune: add('tune'),
  global_tune: add('tune'),
  pitch_keytrack: setting('pitch_keytrack'),
  pitch_veltrack: byVelocity('tune'),
  pitch_random: atRandom('tune', RandomUse.pitch),
  bend_up: setting('bend_up'),
  bend_down: setting('bend_down'),
  bend_step: setting('bend_step'),
  bend_stepup: setting('bend_stepup'),
  bend_stepdown: setting('bend_stepdown'),
  bend_smooth: setting('bend_smooth'),
};

const sampleHandlers: Record<string, OpcodeHandler> = {
  count: setting('count'),
  delay_samples: set('delay_samples'),
  loop_count: setting('loop_count'),
  loop_crossfade: setting('loop_crossfade'),
  loop_tune: set('loop_tune'),
  sample_fadeout: setting('sample_fadeout'),
  loop_type: oneOf(['forward', 'backward', 'alternate'], (draft, word) => {
    draft.loopType = LoopType[word as keyof typeof LoopType];
  }),
  offset_random: atRandom('offset', RandomUse.offset, MoveSource.randomUp),
  offset_mode: oneOf(['samples', 'percent'], (draft, word) => {
    draft.flags.isPercentOffset = word === 'percent';
  }),
  direction: oneOf(['forward', 'reverse'], (draft, word) => {
    draft.flags.isReverse = word === 'reverse';
  }),
  off_shape: setting('off_shape'),
};

/** What each opcode does, by the pattern of the catalogue; moves by controllers and pressure are found from what they move. */
export const opcodeHandlers: Readonly<Record<string, OpcodeHandler>> = {
  ...levelHandlers,
  ...pitchHandlers,
  ...sampleHandlers,
  ...envelopeHandlers(),
  ...filterHandlers(false),
  ...filterHandlers(true),
  ...bandHandlers,
  ...flexibleHandlers,
};

/** Opcodes whose values each region has for itself; see `SoundProgram`. */
export const columnOpcodes: ReadonlySet<string> = new Set([
  'sample',
  'volume',
  'tune',
  'pan',
  'pitch_keycenter',
  'offset',
  'end',
  'loop_start',
  'loop_end',
  'loop_mode',
]);
