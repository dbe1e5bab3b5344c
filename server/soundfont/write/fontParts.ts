import type { Modulator } from '../font';

/** A zone as it is written. */
export interface WrittenZone {
  lowKey: number;
  highKey: number;
  lowVelocity: number;
  highVelocity: number;
  /** Values of generators; those that are missing are the default. */
  generators: ReadonlyMap<number, number>;
  modulators: readonly Modulator[];
  /** The position of the sample, or of the instrument in a preset. */
  target: number;
}

/** An instrument as it is written. */
export interface WrittenInstrument {
  name: string;
  zones: readonly WrittenZone[];
}

/** A preset as it is written: one zone that names an instrument. */
export interface WrittenPreset {
  name: string;
  bank: number;
  program: number;
  instrument: number;
}

/** A sample as it is written; places are frames in the sample. */
export interface WrittenSample {
  name: string;
  frames: number;
  loop: { start: number; end: number } | undefined;
  rate: number;
  rootKey: number;
  /** The position of the other side, where there is one. */
  link: number;
  type: number;
}

/** All that a SoundFont consists of but for its audio. */
export interface FontParts {
  presets: readonly WrittenPreset[];
  instruments: readonly WrittenInstrument[];
  samples: readonly WrittenSample[];
}
