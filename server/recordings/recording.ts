import type { SampleLoop } from '../model/samples';

/** What is known of one audio file before it is part of an instrument. */
export interface Recording {
  /** The path from the folder, with `/`. */
  path: string;
  frames: number;
  /** What the file's own data says: the MIDI key at which it sounds as recorded, and its first loop. */
  rootKey: number | undefined;
  loop: SampleLoop | undefined;
  /** The pitch that was measured, as a MIDI key with a fraction, where it is clear; `undefined` for noise. */
  pitch: number | undefined;
  /** The greatest momentary loudness in LUFS (ITU-R BS.1770-5); `undefined` for silence. */
  loudness: number | undefined;
  /** The same text for files that hold the same bytes. */
  content: string;
}
