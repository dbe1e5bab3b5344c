/**
 * A mono WAV file of 16 bits (layout: Microsoft and IBM, Multimedia Programming Interface 1.0). `valueAt` gives the value of each
 * frame, −32768 to 32767.
 *
 * @param {number} rate
 * @param {number} frames
 * @param {(frame: number) => number} valueAt
 */
export function monoWave(rate, frames, valueAt) {
  const bytes = Buffer.alloc(44 + frames * 2);
  bytes.write('RIFF', 0);
  bytes.writeUInt32LE(36 + frames * 2, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(rate, 24);
  bytes.writeUInt32LE(rate * 2, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(frames * 2, 40);
  for (let at = 0; at < frames; at++) bytes.writeInt16LE(Math.round(valueAt(at)), 44 + at * 2);
  return bytes;
}

/** The sum of the first partials of a tone at a frame, each as strong as its number is small. */
export function partialsAt(hertz, rate, most, frame) {
  let value = 0;
  for (let partial = 1; partial <= most && hertz * partial < rate / 2.2; partial++)
    value += Math.sin((2 * Math.PI * hertz * partial * frame) / rate) / partial;
  return value;
}
