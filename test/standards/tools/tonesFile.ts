/** A tone of one channel. */
export interface ChannelTone {
  hertz: number;
  /** Full scale is 1. */
  peak: number;
}

/** The speakers of so many channels (Multichannel Audio Data and WAVE Files, Microsoft 2001), 5 of them without low frequencies. */
const speakers = [0x4, 0x3, 0x7, 0x33, 0x37, 0x3f, 0x70f, 0x63f];
/** The kind of whole numbers, KSDATAFORMAT_SUBTYPE_PCM (the same). */
const wholeNumbers = [1, 0, 0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];

/**
 * A WAV file whose channels each have a tone of their own, with its speakers named. Made here: a tool that makes it from a formula
 * takes a tenth of a second to start and as long again for its eight channels.
 */
export function tonesFile(
  tones: readonly ChannelTone[],
  seconds: number,
  rate: number,
  bits: 8 | 16 | 24,
): Uint8Array {
  const frames = Math.round(seconds * rate);
  const bytesInFrame = tones.length * (bits / 8);
  const file = Buffer.alloc(68 + frames * bytesInFrame);
  file.write('RIFF', 0, 'latin1');
  file.writeUInt32LE(file.length - 8, 4);
  file.write('WAVEfmt ', 8, 'latin1');
  file.writeUInt32LE(40, 16);
  file.writeUInt16LE(0xfffe, 20);
  file.writeUInt16LE(tones.length, 22);
  file.writeUInt32LE(rate, 24);
  file.writeUInt32LE(rate * bytesInFrame, 28);
  file.writeUInt16LE(bytesInFrame, 32);
  file.writeUInt16LE(bits, 34);
  file.writeUInt16LE(22, 36);
  file.writeUInt16LE(bits, 38);
  file.writeUInt32LE(speakers[tones.length - 1], 40);
  file.set(wholeNumbers, 44);
  file.write('data', 60, 'latin1');
  file.writeUInt32LE(frames * bytesInFrame, 64);
  const full = 2 ** (bits - 1) - 1;
  tones.forEach(({ hertz, peak }, channel) => {
    for (let frame = 0; frame < frames; frame++) {
      const value = Math.round(full * peak * Math.sin((2 * Math.PI * hertz * frame) / rate));
      const at = 68 + frame * bytesInFrame + channel * (bits / 8);
      // Eight bits have no sign.
      if (bits === 8) file.writeUInt8(value + 128, at);
      else file.writeIntLE(value, at, bits / 8);
    }
  });
  return file;
}
