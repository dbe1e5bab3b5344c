/** A modulator as it stands in a file (SoundFont Technical Specification 2.04, sections 7.4 and 8.2). */
export interface Modulator {
  source: number;
  destination: number;
  amount: number;
  amountSource: number;
  transform: number;
}

/** A zone of a preset or an instrument. */
export interface Zone {
  lowKey: number;
  highKey: number;
  lowVelocity: number;
  highVelocity: number;
  /** Values by the number of their generator; see `Generator`. */
  generators: ReadonlyMap<number, number>;
  modulators: readonly Modulator[];
  /** The instrument of a preset's zone, the sample of an instrument's zone, by position. */
  target: number;
}

/** The global zone of a preset or instrument: what its other zones take where they say nothing. */
export type GlobalZone = Omit<Zone, 'target'>;

/** An instrument of a font: zones of samples that presets use. */
export interface FontInstrument {
  name: string;
  global: GlobalZone | undefined;
  zones: readonly Zone[];
}

/** The numbers that choose a preset. */
export interface PresetNumbers {
  bank: number;
  program: number;
}

/** A preset of a font: what a player can choose. */
export interface Preset extends FontInstrument, PresetNumbers {}

/** A sample of a font; places are frames of the pool that all samples share. */
export interface SampleHeader {
  name: string;
  start: number;
  /** One past the last frame. */
  end: number;
  loopStart: number;
  /** One past the last frame of the loop. */
  loopEnd: number;
  /** Frames a second. */
  rate: number;
  rootKey: number;
  correctionCents: number;
  link: number;
  type: number;
}

/** Kinds of samples, as they stand in {@link SampleHeader.type}. */
export const SampleType = { mono: 1, right: 2, left: 4, rom: 0x8000 } as const;

/** A whole font without its audio. */
export interface SoundFont {
  major: number;
  minor: number;
  /** Texts about the font by their four-letter names: `INAM`, `ICOP`, … */
  info: ReadonlyMap<string, string>;
  presets: readonly Preset[];
  instruments: readonly FontInstrument[];
  samples: readonly SampleHeader[];
  /** Where the audio starts in the file, and how many frames of 16 bits there are. */
  pool: { startByte: number; frames: number };
  /** Where the low bytes of 24-bit audio start, where there are any. */
  lowBytesStart: number | undefined;
  /** What is odd in the file without keeping it from being read, as sentences. */
  problems: readonly string[];
}
