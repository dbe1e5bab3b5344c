import { isLfoWave } from '../modulation/lfo';
import type { OpcodeHandler } from './opcodeHandler';
import type { NumberedDraft, RecipeDraft } from './recipeDraft';

type Of = (draft: RecipeDraft, number: number) => NumberedDraft;

const envelopeOf: Of = (draft, number) => draft.envelope(number);
const lfoOf: Of = (draft, number) => draft.lfo(number);

const keep =
  (of: Of, name: string): OpcodeHandler =>
  (draft, value, [number]) => {
    of(draft, number).settings.set(name, value);
  };

const keepPart =
  (of: Of, name: string): OpcodeHandler =>
  (draft, value, [number, part]) => {
    const { settings, parts } = of(draft, number);
    parts.add(part);
    settings.set(`${name}${part}`, value);
  };

/** A value of a point or of an LFO that can be moved. */
const slot =
  (of: Of, nameOf: (number: number, part: number) => string): OpcodeHandler =>
  (draft, value, [number, part]) => {
    const numbered = of(draft, number);
    if (part !== undefined) numbered.parts.add(part);
    draft.set(nameOf(number, part ?? 0), value);
  };

/** What envelopes and LFOs can be sent to, by the end of the opcode, and the value that each moves. */
const routeTargets: Readonly<Record<string, string>> = {
  volume: 'volume',
  amplitude: 'amplitude',
  pan: 'pan',
  width: 'width',
  pitch: 'tune',
  cutoff: 'cutoff',
  cutoff2: 'cutoff2',
  resonance: 'resonance',
  resonance2: 'resonance2',
  eqXfreq: 'eqX_freq',
  eqXbw: 'eqX_bw',
  eqXgain: 'eqX_gain',
  freq_lfoX: 'lfoX_freq',
  depth_lfoX: 'lfoX depth',
};

function routes(isLfo: boolean): Record<string, OpcodeHandler> {
  const prefix = isLfo ? 'lfo' : 'eg';
  const handlers: Record<string, OpcodeHandler> = {};
  for (const [end, target] of Object.entries(routeTargets)) {
    handlers[`${prefix}N_${end}`] = (draft, value, [number, other = 0]) => {
      (isLfo ? lfoOf : envelopeOf)(draft, number);
      if (target.startsWith('eqX')) draft.band(other);
      const opcode = `${prefix}${number}_${end.replace('X', String(other))}`;
      draft.set(opcode, value);
      draft.routes.set(opcode, { isLfo, number, target: target.replace('X', String(other)), other });
    };
  }
  return handlers;
}

const wave: OpcodeHandler = (draft, value, [number, part]) => {
  const { settings, parts } = draft.lfo(number);
  parts.add(part ?? 1);
  // One that is not known does not swing: another in its place would be a lie.
  if (!isLfoWave(value)) settings.set(`scale${part ?? 1}`, 0);
  settings.set(`wave${part ?? 1}`, value);
  return isLfoWave(value);
};

/** A setting of a wave of an LFO: the first, or a further one by its number. */
const ofWave =
  (name: string): OpcodeHandler =>
  (draft, value, [number, part]) => {
    const { settings, parts } = draft.lfo(number);
    parts.add(part ?? 1);
    settings.set(`${name}${part ?? 1}`, value);
  };

/** Opcodes of numbered envelopes and LFOs. */
export const flexibleHandlers: Readonly<Record<string, OpcodeHandler>> = {
  egN_points: keep(envelopeOf, 'points'),
  egN_timeX: slot(envelopeOf, (number, point) => `eg${number}_time${point}`),
  egN_levelX: slot(envelopeOf, (number, point) => `eg${number}_level${point}`),
  egN_shapeX: keepPart(envelopeOf, 'shape'),
  egN_curveX: keepPart(envelopeOf, 'curve'),
  egN_sustain: keep(envelopeOf, 'sustain'),
  egN_loop: keep(envelopeOf, 'loop'),
  egN_loop_count: keep(envelopeOf, 'loop_count'),
  egN_ampeg: keep(envelopeOf, 'ampeg'),
  egN_dynamic: keep(envelopeOf, 'dynamic'),
  egN_pan_curve: keep(envelopeOf, 'pan_curve'),
  ...routes(false),
  lfoN_freq: slot(lfoOf, (number) => `lfo${number}_freq`),
  lfoN_delay: slot(lfoOf, (number) => `lfo${number}_delay`),
  lfoN_fade: slot(lfoOf, (number) => `lfo${number}_fade`),
  lfoN_phase: slot(lfoOf, (number) => `lfo${number}_phase`),
  lfoN_count: keep(lfoOf, 'count'),
  lfoN_wave: wave,
  lfoN_waveX: wave,
  lfoN_offset: ofWave('offset'),
  lfoN_offsetX: ofWave('offset'),
  lfoN_ratio: ofWave('ratio'),
  lfoN_ratioX: ofWave('ratio'),
  lfoN_scale: ofWave('scale'),
  lfoN_scaleX: ofWave('scale'),
  lfoN_steps: keep(lfoOf, 'steps'),
  lfoN_stepX: (draft, value, [number, step]) => {
    draft.lfo(number).settings.set(`step${step}`, value);
  },
  ...routes(true),
};
