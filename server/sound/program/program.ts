import type { VoiceRecipe } from './recipe';

/** An opcode that is in force in a region, or in an effect, and that this voice does not render. */
export interface NotRendered {
  /** The opcode as the format names it. */
  opcode: string;
  /** The value, where other values of the opcode are rendered. */
  value?: string;
  /** In how many places of the text it stands. */
  count: number;
  /** The first of them: the file by its position among the instrument's sources, and the offset there. */
  source: number;
  offset: number;
}

/** Samples below 0 are generators, from −1 down in this order. */
export const generators = ['sine', 'saw', 'square', 'triangle', 'noise', 'silence'] as const;

export type ToneGenerator = (typeof generators)[number];

/** No sample, or none that can be played. */
export const noSample = -100;

/**
 * How an instrument sounds: plain data that a worker or an audio thread can be sent as it is. Lists with an entry a region are
 * in the order of `Instrument.regions`, as those of `PlayableInstrument`.
 */
export interface SoundProgram {
  regionCount: number;
  /** Positions in {@link recipes}. */
  recipe: Int32Array;
  recipes: VoiceRecipe[];
  /** Positions in {@link samples}, a generator, or {@link noSample}. */
  sample: Int32Array;
  /** Paths as `Instrument.samplePath` answers them. */
  samples: string[];
  /** With the fraction that a sample file may give. */
  rootKey: Float64Array;
  tuneCents: Float64Array;
  volumeDb: Float64Array;
  panPercent: Float64Array;
  /** First frame, or percent where the recipe says so. */
  offset: Float64Array;
  /** Last frames, −1 where the sample decides. */
  end: Float64Array;
  loopStart: Float64Array;
  loopEnd: Float64Array;
  /** `LoopMode` of the room `playing`, never unset. */
  loopMode: Uint8Array;
  /** `LoopType`. */
  loopType: Uint8Array;
  /** Curves by number, values at 0..127. */
  curves: Map<number, Float64Array>;
  /** The most values that a voice has. */
  slotCount: number;
  notRendered: NotRendered[];
}
