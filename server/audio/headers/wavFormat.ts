import type { ByteWindow } from './byteWindow';
import { encodingOfTag, formatTag, hasFixedFrames } from './wavEncodings';

/** What the `fmt ` chunk of a WAV file says. */
export interface WavFormat {
  encoding: string;
  channels: number;
  /** Frames a second. */
  sampleRate: number;
  bitsPerSample: number;
  /** Bytes of a frame, or of a block of frames in a compressed encoding. */
  blockBytes: number;
  /** Frames in a block; 1 where every frame stands for itself, 0 where the file does not say. */
  framesPerBlock: number;
}

/** Bytes of the part that every `fmt ` chunk has. */
export const shortestFormat = 16;
/** Bytes of the longest `fmt ` chunk that is looked into. */
export const longestFormat = 40;

/** The end of a sub-format identifier whose first two bytes are a format tag: 0000-0010-8000-00AA00389B71. */
const tagFollowed = [0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];

/**
 * Reads a `fmt ` chunk of at least {@link shortestFormat} bytes, held in memory. Answers a reason where it makes no
 * sense. Layout: Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft, 1991; that of the
 * extensible form (valid bits, channel mask, sub-format): EBU Tech 3306.
 */
export function readWavFormat(bytes: ByteWindow, at: number, length: number): WavFormat | string {
  let tag = bytes.uint16(at);
  const channels = bytes.uint16(at + 2);
  const sampleRate = bytes.uint32(at + 4);
  const bitsPerSample = bytes.uint16(at + 14);
  if (channels === 0) return 'Its format chunk says that it has no channels.';
  if (sampleRate === 0) return 'Its format chunk says that its sample rate is 0.';
  let encoding: string | undefined;
  if (tag === formatTag.extensible) {
    if (length < longestFormat) return 'Its format chunk ends before it says how the audio is encoded.';
    if (tagFollowed.every((byte, position) => bytes.uint8(at + 26 + position) === byte)) {
      tag = bytes.uint16(at + 24);
    } else {
      encoding = `extensible:${subFormatText(bytes, at + 24)}`;
    }
  }
  encoding ??= encodingOfTag(tag);
  const stated = bytes.uint16(at + 12);
  if (hasFixedFrames(encoding)) {
    if (bitsPerSample === 0 || bitsPerSample > 64) {
      return `Its format chunk says that a sample has ${bitsPerSample} bits.`;
    }
    const least = channels * Math.ceil(bitsPerSample / 8);
    // Some writers give a sample more bytes than its bits need, so a stated size counts if frames can have it.
    const possible = stated >= least && stated % channels === 0 && stated <= channels * 8;
    return {
      encoding,
      channels,
      sampleRate,
      bitsPerSample,
      blockBytes: possible ? stated : least,
      framesPerBlock: 1,
    };
  }
  // Both ADPCM encodings give the frames of a block in the first word of their extension (RFC 2361's documents).
  const saysFrames = (encoding === 'ms-adpcm' || encoding === 'ima-adpcm') && length >= 20;
  const looksFixed = bitsPerSample > 0 && stated === channels * (bitsPerSample / 8);
  const framesPerBlock = saysFrames ? bytes.uint16(at + 18) : looksFixed ? 1 : 0;
  return { encoding, channels, sampleRate, bitsPerSample, blockBytes: stated, framesPerBlock };
}

function subFormatText(bytes: ByteWindow, at: number): string {
  let text = '';
  for (let position = 0; position < 16; position++) {
    text += bytes
      .uint8(at + position)
      .toString(16)
      .padStart(2, '0');
  }
  return text;
}
