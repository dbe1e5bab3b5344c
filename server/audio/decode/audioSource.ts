/** The audio of an open sample file as numbers, full scale from −1 to 1, one array for each channel. */
export interface AudioSource {
  /** Frames a second. */
  readonly sampleRate: number;
  readonly channels: number;
  /** Bits of a sample; 0 where the encoding has no fixed depth. */
  readonly bitsPerSample: number;
  /**
   * Frames that the file says it holds; damaged files can give fewer. `Number.MAX_SAFE_INTEGER` where it does not say.
   */
  readonly frames: number;
  /** Whether frames can be had only by decoding all that stand before them. */
  readonly isDecodedInOrder: boolean;
  /**
   * Frames from `startFrame` on. Those outside the file are left out, so the arrays can be shorter than `count`; they
   * never take more than 64 MB of the file or of memory. In a compressed file, reading on from where the last call
   * ended is quick, and going back means decoding from the start.
   */
  read(startFrame: number, count: number): Promise<Float32Array[]>;
  /**
   * All frames from the first to the last in blocks of any length, none of them empty, so that the memory stays small
   * whatever the length of the file. Ends early where a damaged file cannot be read further.
   */
  blocks(): AsyncGenerator<Float32Array[]>;
  /** Frees what decoding holds. The file itself stays open: it is its opener's. */
  close(): Promise<void>;
}

/** Values that one read gives at the most, over all channels: 64 MB. */
export const mostValues = 1 << 24;

/** Empty arrays, one for each channel. */
export function emptyChannels(channels: number): Float32Array[] {
  return Array.from({ length: channels }, () => new Float32Array(0));
}
