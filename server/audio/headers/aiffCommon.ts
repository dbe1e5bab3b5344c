import { aiffEncodingOf, isFixed } from './aiffEncodings';
import type { ByteWindow } from './byteWindow';
import { fourCharacters, isIdentifier } from './byteWindow';
import { readExtendedNumber } from './extendedNumber';

/** What the `COMM` chunk of an AIFF file says. */
export interface AiffCommon {
  encoding: string;
  channels: number;
  /** Frames a second, to the nearest whole number. */
  sampleRate: number;
  bitsPerSample: number;
  /** Blocks of the file: single frames in most encodings. */
  blocks: number;
  /** Bytes of a block; 0 where they differ or are not known. */
  blockBytes: number;
  framesPerBlock: number;
}

/** Bytes of a `COMM` chunk of plain AIFF. */
export const shortestCommon = 18;
/** Bytes of a `COMM` chunk of AIFF-C up to its compression type, behind which only the type's name follows. */
export const longestCommon = 22;

const uncompressed = fourCharacters('NONE');
const highestRate = 2 ** 32;

/**
 * Reads a `COMM` chunk of at least {@link shortestCommon} bytes, held in memory; `isCompressed` for that of AIFF-C.
 * Answers a reason where it makes no sense. Layout: Audio Interchange File Format 1.3, Apple, 1989; the compression
 * type: AIFF-C draft, Apple, 1991. The frames of `ima4` audio are counted in blocks of 64 (common practice).
 */
export function readAiffCommon(
  bytes: ByteWindow,
  at: number,
  length: number,
  isCompressed: boolean,
): AiffCommon | string {
  const channels = bytes.uint16(at);
  const blocks = bytes.uint32(at + 2);
  const sampleSize = bytes.uint16(at + 6);
  const sampleRate = Math.round(readExtendedNumber(bytes, at + 8));
  if (channels === 0) return 'It says that it has no channels.';
  if (!(sampleRate > 0 && sampleRate < highestRate)) {
    return 'Its sample rate makes no sense.';
  }
  const type = isCompressed && length >= longestCommon ? bytes.identifier(at + shortestCommon) : uncompressed;
  if (!isIdentifier(type)) return 'It does not say how its audio is encoded.';
  const kind = aiffEncodingOf(type);
  const bitsPerSample = kind.bits ?? sampleSize;
  if (isFixed(kind) && (bitsPerSample === 0 || bitsPerSample > 64)) {
    return `It says that a sample has ${bitsPerSample} bits.`;
  }
  const channelBytes = kind.block?.bytes ?? (isFixed(kind) ? Math.ceil(bitsPerSample / 8) : 0);
  return {
    encoding: kind.encoding,
    channels,
    sampleRate,
    bitsPerSample,
    blocks,
    blockBytes: channelBytes * channels,
    framesPerBlock: kind.block?.frames ?? 1,
  };
}
