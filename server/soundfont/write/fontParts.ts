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
  /** The position of the sample. */
  target: number;
}

/** An instrument as it is written. */
export interface WrittenInstrument {
  name: string;
  zones: readonly WrittenZone[];
}

/** A zone of a preset as it is written. */
export interface WrittenPresetZone
  extends Pick<WrittenZone, 'lowKey' | 'highKey' | 'lowVelocity' | 'highVelocity'> {
  /** What is added to the values of the instrument. */
  generators: ReadonlyMap<number, number>;
  /** The position of the instrument. */
  instrument: number;
}

/** A preset as it is written. */
export interface WrittenPreset {
  name: string;
  bank: number;
  program: number;
  zones: readonly WrittenPresetZone[];
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
