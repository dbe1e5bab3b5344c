/**
 * Where each channel of a WAV file stands among those of a Vorbis or Opus stream, by the number of channels: these streams
 * put the centre second and the low-frequency channel last. Vorbis I specification, section 4.3.9; RFC 7845, section
 * 5.1.1.2; the order of WAV files: EBU Tech 3306. Speaker layouts of fewer than 3 channels, and of 4, are the same in both.
 */
const orders: ReadonlyMap<number, readonly number[]> = new Map([
  [3, [0, 2, 1]],
  [5, [0, 2, 1, 3, 4]],
  [6, [0, 2, 1, 5, 3, 4]],
  [7, [0, 2, 1, 6, 5, 3, 4]],
  [8, [0, 2, 1, 7, 5, 6, 3, 4]],
]);

/** Puts the channels of a Vorbis or Opus stream into the order of WAV files. */
export function inWavOrder(channels: readonly Float32Array[]): Float32Array[] {
  const order = orders.get(channels.length);
  return order ? order.map((channel) => channels[channel] ?? new Float32Array(0)) : [...channels];
}
