import { RequestType } from 'vscode-languageserver-protocol';
import type { LineNote } from '../../model/writing/lineNotes';
import type { PresetNumbers } from '../../soundfont/font';

/** Names a SoundFont by the URI of its file. */
export interface FontParams {
  uri: string;
}

/** One preset of a SoundFont. */
export interface FontPreset {
  bank: number;
  program: number;
  name: string;
  regions: number;
  /** Lowest and highest key and velocity that something answers; absent where nothing does. */
  keys?: [low: number, high: number];
  velocities?: [low: number, high: number];
}

/** What is in a SoundFont, without its audio. */
export interface FontFacts {
  /** What it is called inside, and the version of the format, `2.04`. */
  name: string;
  version: string;
  /** Texts that it brings, in the order that they are of interest: copyright, comment, author, … */
  texts: { kind: 'copyright' | 'comment' | 'author' | 'product' | 'date' | 'tools'; text: string }[];
  bytes: number;
  /** Bits of a frame. */
  bits: 16 | 24;
  samples: number;
  presets: FontPreset[];
  /** What is odd in the file, as sentences. */
  problems: string[];
}

/** Why nothing can be said or made, as a sentence. */
export interface FontRefusal {
  problem: string;
}

/** Asks what is in a SoundFont. */
export const FontRequest = {
  type: new RequestType<FontParams, FontFacts | FontRefusal, void>('zonewright/font'),
} as const;

export interface FontTextParams extends FontParams {
  /** The preset; where none is named, all of them. */
  preset?: PresetNumbers;
  /** The folder of the samples, relative to that of the texts; where nothing is said, they stay in the font. */
  samples?: string;
}

/** A preset as SFZ text. */
export interface FontText {
  /** A name for its file. */
  file: string;
  text: string;
  notes: LineNote[];
}

export interface FontTextResult {
  texts: FontText[];
  /** The samples that the texts name, as files of so many bytes. */
  samples: { name: string; bytes: number }[];
  /** The notes of all texts as a page of Markdown. */
  page: string;
}

/** Asks for presets as text, and which samples these need. */
export const FontTextRequest = {
  type: new RequestType<FontTextParams, FontTextResult | FontRefusal, void>('zonewright/fontText'),
} as const;

export interface FontSampleParams extends FontParams {
  /** The name of the sample's file. */
  name: string;
  /** The first byte, and how many at the most. */
  start: number;
  length: number;
}

/** Bytes of a sample as a file, in base 64; absent where it cannot be read. */
export interface FontSampleResult {
  data?: string;
}

/** Asks for a stretch of a sample as a WAV file. */
export const FontSampleRequest = {
  type: new RequestType<FontSampleParams, FontSampleResult, void>('zonewright/fontSample'),
} as const;

/** Names a document whose instrument is to be written as a SoundFont. */
export interface WriteFontParams {
  uri: string;
  /** What the font is called. */
  name: string;
}

export interface WriteFontResult {
  /** Names the bytes, which {@link FontPartRequest} gives. */
  font: number;
  bytes: number;
  kept: number;
  notes: LineNote[];
  page: string;
}

/** Writes a document's instrument as a SoundFont, whose bytes are then asked for one part after the other. */
export const WriteFontRequest = {
  type: new RequestType<WriteFontParams, WriteFontResult | FontRefusal, void>('zonewright/writeFont'),
} as const;

export interface FontPartParams {
  font: number;
}

/** The next bytes in base 64, absent at the end; or why there are none. */
export interface FontPartResult {
  data?: string;
  problem?: string;
}

/** Asks for the next part of a SoundFont that is written; the last one ends it, and so does writing another. */
export const FontPartRequest = {
  type: new RequestType<FontPartParams, FontPartResult, void>('zonewright/fontPart'),
} as const;
