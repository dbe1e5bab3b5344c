import type { Files } from './files';
import type { Instrument } from './instrument';
import type { ConversionNote } from './notes';

/** Bytes that are made in pieces when they are asked for, so that a large file never stands whole in memory. */
export interface ByteChunks {
  /** How many bytes all pieces hold together, where that is known before they are made. */
  readonly length?: number;
  /** The pieces in their order; each call starts anew. */
  chunks(): AsyncIterable<Uint8Array>;
}

/** What a file of an output holds. */
export type OutputContent = string | Uint8Array | ByteChunks;

/** An instrument to be written, with what was said on reading it. */
export interface OutputSource {
  /** What the instrument is called; files of an output that writes several are named after it. */
  name: string;
  instrument: Instrument;
  /** The absolute folder, with `/`, that its paths start from; `undefined` for a text that is no file. */
  folder: string | undefined;
  /** What was noted on reading beside the instrument itself. */
  notes?: readonly ConversionNote[];
}

export interface OutputOptions {
  /** The name of the file that a single instrument, or an output that holds all in one, is written to. */
  fileName?: string | undefined;
  /** The absolute folder, with `/`, that the files will stand in, so that sample paths lead to the files from there. */
  folder?: string | undefined;
  /** Whether variables and includes are kept as such where the target has them. */
  directives?: 'keep' | 'inline';
  /** Whether a text may be given as {@link ByteChunks}, for who writes it to a file. */
  inPieces?: boolean;
  /** Told as long work goes on. */
  progress?: ((done: number, all: number) => void) | undefined;
  /** Ends the work early; the promise is then rejected with the signal's reason. */
  signal?: AbortSignal | undefined;
}

/** What became of the values of one instrument. */
export interface OutputAccount {
  /** What was assumed, written in another way, left out or not used, in the order of the instrument's text. */
  notes: ConversionNote[];
  /** How many values were carried over exactly. */
  kept: number;
}

export interface OutputResult {
  /** Contents by the file's path relative to the folder of the output, with `/`; the first is the main file. */
  files: ReadonlyMap<string, OutputContent>;
  /** One for each source, in their order, because a note's place belongs to the text of its instrument. */
  accounts: readonly OutputAccount[];
}

/**
 * A target that instruments are written to: text in a notation, one binary file, a pack, a report. What converts knows
 * outputs and no formats. It writes nothing itself: whoever asked puts the files in place, each whole or not at all.
 */
export interface Output {
  /** The ending of its main file, with the dot. */
  readonly ending: string;
  /** Rejects with an {@link OutputError} where the target cannot hold what it is given. */
  write(sources: readonly OutputSource[], options: OutputOptions, files: Files): Promise<OutputResult>;
}

/** What is asked for cannot be written; the message tells a person why in one line. */
export class OutputError extends Error {}
