/**
 * A mono WAV file, 16 bits, 44,100 frames a second (layout: Microsoft and IBM, Multimedia Programming Interface 1.0): silence, or
 * what `valueAt` gives for each frame.
 */
export function waveBytes(frames: number, valueAt?: (frame: number) => number): Buffer {
  const bytes = Buffer.alloc(44 + frames * 2);
  bytes.write('RIFF', 0);
  bytes.writeUInt32LE(36 + frames * 2, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(44_100, 24);
  bytes.writeUInt32LE(88_200, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(frames * 2, 40);
  if (valueAt) for (let at = 0; at < frames; at++) bytes.writeInt16LE(Math.round(valueAt(at)), 44 + at * 2);
  return bytes;
}
