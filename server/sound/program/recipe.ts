import type { StageShapes } from '../modulation/envelope';
import type { BandType, FilterType } from '../modulation/filterValues';

/**
 * Everything that a value of a voice can be moved by, besides envelopes and LFOs. Numbers below 512 are controllers as
 * `PlayState.controllers` counts them.
 */
export const MoveSource = {
  channelPressure: 129,
  polyPressure: 130,
  velocity: 131,
  key: 133,
  random: 135,
  /** From here on: v / 127 of the note itself, without a curve. */
  ownVelocity: 512,
  /** The key less the move's centre. */
  keyDistance: 513,
  /** A random value 0..1 or −1..1 drawn at the start, of the stream that `curve` numbers. */
  randomUp: 514,
  randomBoth: 515,
} as const;

/** A value of a voice is moved: `depth` times what the source gives, shaped by a curve, smoothed and stepped. */
export interface Move {
  /** The position of the value; see {@link VoiceRecipe.base}. */
  slot: number;
  source: number;
  depth: number;
  /** The number of a curve, −1 for a straight line; the stream of a random source. */
  curve: number;
  smoothMs: number;
  /** What is added goes in whole steps of this size, 0 for none. */
  step: number;
  /** For {@link MoveSource.keyDistance}. */
  centre: number;
  /** Percent that multiply instead of being added. */
  multiplies: boolean;
}

/** A gain that grows or falls between two values of a key, velocity or controller. */
export interface Fade {
  /** −1 for the key, −2 for the velocity, else a controller. */
  subject: number;
  low: number;
  high: number;
  isIn: boolean;
  isPower: boolean;
}

/** One of the filters in series; cutoff, resonance and gain by slot. */
export interface FilterRecipe {
  type: FilterType;
  hertz: number;
  /** Slot of the cents that are added to the cutoff. */
  cents: number;
  resonance: number;
  gain: number;
}

/** A band of the equaliser; frequency, bandwidth and gain by slot. */
export interface BandRecipe {
  type: BandType;
  hertz: number;
  bandwidth: number;
  gain: number;
}

/** One of the three envelopes with fixed stages. */
export interface EnvelopeRecipe {
  /** Slot of the delay; start, attack, hold, decay, sustain and release follow it. Levels are in percent. */
  firstSlot: number;
  shapes: StageShapes;
  /** Settings follow what moves them; else they are those of the start. */
  isDynamic: boolean;
}

/** One of the three LFOs with a fixed target: slots. */
export interface FirstLfoRecipe {
  delay: number;
  fade: number;
  frequency: number;
  depth: number;
}

export interface EnvelopePoint {
  /** Slots of the time in seconds and of the level. */
  time: number;
  level: number;
  shape: number;
  /** The number of a curve, or −1. */
  curve: number;
}

export interface FlexibleEnvelopeRecipe {
  points: EnvelopePoint[];
  /** Position of the point at which it waits, −1 for none. */
  sustain: number;
  /** Position of the point to which it goes back, −1 for none, and how often: −1 for ever. */
  loop: number;
  loopCount: number;
  isAmplitude: boolean;
  isDynamic: boolean;
}

/** What a numbered LFO swings in. */
export interface WaveRecipe {
  wave: number;
  offset: number;
  ratio: number;
  scale: number;
}

/** A numbered LFO; slots but for the counts. */
export interface LfoRecipe {
  frequency: number;
  delay: number;
  fade: number;
  phase: number;
  /** Waves before it stops, `Infinity` for no end. */
  count: number;
  waves: WaveRecipe[];
  /** Values −1..1 instead of waves; empty for none. */
  steps: number[];
}

/** What an envelope or an LFO does to its target. */
export const RouteKind = {
  /** Adds `depth · value` to a slot. */
  add: 0,
  /** Multiplies the amplitude: an envelope by `depth / 100 · value`, an LFO by `1 + depth / 100 · value`. */
  amplitude: 1,
  /** Multiplies the depth of an LFO in the same way. */
  lfoDepth: 2,
} as const;

/** A numbered envelope or LFO that moves something. */
export interface Route {
  isLfo: boolean;
  /** The position among the envelopes, or among the LFOs. */
  source: number;
  kind: number;
  /** A slot, or the position of an LFO. */
  target: number;
  /** Slot of the depth. */
  depth: number;
  /** The number of a curve that shapes the value, or −1. */
  curve: number;
}

/** How the pitch wheel moves the pitch, in cents. */
export interface BendRecipe {
  up: number;
  down: number;
  stepUp: number;
  stepDown: number;
  smoothMs: number;
}

/**
 * How a voice sounds, sample and a few values of the region aside: plain data, shared by all regions that say the same.
 * Every value that something can move has a slot; {@link base} holds what the text says and `moves` what is added.
 */
export interface VoiceRecipe {
  base: Float64Array;
  moves: Move[];
  fades: Fade[];
  /** Gain by velocity 0..127 where `amp_velcurve_N` sets one. */
  velocityCurve: Float64Array | null;
  filters: FilterRecipe[];
  bands: BandRecipe[];
  amplitudeEnvelope: EnvelopeRecipe;
  filterEnvelope: EnvelopeRecipe | null;
  pitchEnvelope: EnvelopeRecipe | null;
  amplitudeLfo: FirstLfoRecipe | null;
  filterLfo: FirstLfoRecipe | null;
  pitchLfo: FirstLfoRecipe | null;
  envelopes: FlexibleEnvelopeRecipe[];
  lfos: LfoRecipe[];
  routes: Route[];
  bend: BendRecipe;
  isInverted: boolean;
  isReverse: boolean;
  isBalanceLaw: boolean;
  isPercentOffset: boolean;
  /** `LoopType`, −1 where not set. */
  loopType: number;
  /** −1 where not set. */
  loopCount: number;
  loopCrossfadeSeconds: number;
  sampleCount: number;
  sampleFadeSeconds: number;
  /** Cents a key away from the root key. */
  pitchKeytrack: number;
  offShape: number;
}

/** `loop_type`. */
export const LoopType = { forward: 0, backward: 1, alternate: 2 } as const;
