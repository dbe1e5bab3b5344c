import type { ByteWindow } from './byteWindow';

/** What the STREAMINFO block of a FLAC stream says. */
export interface FlacStreamInfo {
  /** Frames a second. */
  sampleRate: number;
  channels: number;
  bitsPerSample: number;
  /** 0 where the stream does not say. */
  frames: number;
  /** Most audio frames in one frame of the stream. */
  largestBlock: number;
  /** Fewest bytes of one frame of the stream; 0 where it is not known. */
  leastFrameBytes: number;
}

/** Bytes of a STREAMINFO block. */
export const streamInfoBytes = 34;

/**
 * Reads a STREAMINFO block held in memory: block sizes (16 bits, twice), frame sizes (24 bits, twice), sample rate (20
 * bits), channels less one (3), bits of a sample less one (5), frames (36), checksum. Answers a reason where it makes no
 * sense. Layout: RFC 9639, section 8.2.
 */
export function readStreamInfo(bytes: ByteWindow, at: number): FlacStreamInfo | string {
  bytes.littleEndian = false;
  const packed = bytes.uint32(at + 10);
  const sampleRate = packed >>> 12;
  const bitsPerSample = ((packed >>> 4) & 31) + 1;
  if (sampleRate === 0) return 'Its stream information says that its sample rate is 0.';
  if (bitsPerSample < 4) return `Its stream information says that a sample has ${bitsPerSample} bits.`;
  return {
    sampleRate,
    channels: ((packed >>> 9) & 7) + 1,
    bitsPerSample,
    frames: (packed & 15) * 2 ** 32 + bytes.uint32(at + 14),
    largestBlock: bytes.uint16(at + 2),
    leastFrameBytes: bytes.uint8(at + 4) * 65536 + bytes.uint16(at + 5),
  };
}
