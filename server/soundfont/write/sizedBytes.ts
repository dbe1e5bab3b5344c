/** Bytes that are made while they are taken, and how many there will be. */
export interface SizedBytes {
  size: number;
  /** The bytes in order, made anew each time. */
  chunks(): AsyncIterable<Uint8Array>;
}
