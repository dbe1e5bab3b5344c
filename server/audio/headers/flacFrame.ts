/** The header of one frame of a FLAC stream. */
export interface FlacFrameHeader {
  /** Bytes of the header. */
  length: number;
  /** Audio frames in this frame of the stream. */
  blockSize: number;
  channels: number;
  /** The number of the frame of the stream, or that of its first audio frame where blocks differ in size. */
  number: number;
  isVariable: boolean;
}

/** Bytes of the longest frame header. */
export const longestFrameHeader = 16;

/**
 * Reads a frame header whose checksum fits; `undefined` where none stands at the offset, or where the bytes end inside
 * it. Layout: RFC 9639, section 9.1.
 */
export function readFlacFrameHeader(bytes: Uint8Array, start: number): FlacFrameHeader | undefined {
  const byte = (at: number) => bytes[start + at] ?? 0;
  if (byte(0) !== 0xff || (byte(1) & 0xfe) !== 0xf8) return undefined;
  const sizeCode = byte(2) >> 4;
  const rateCode = byte(2) & 15;
  const channelCode = byte(3) >> 4;
  if (sizeCode === 0 || rateCode === 15 || channelCode > 10) return undefined;
  if ((byte(3) & 1) !== 0 || ((byte(3) >> 1) & 7) === 3) return undefined;
  const coded = readCodedNumber(bytes, start + 4);
  if (!coded) return undefined;
  let length = 4 + coded.length;
  let blockSize = sizeCode === 1 ? 192 : sizeCode <= 5 ? 144 << sizeCode : 1 << sizeCode;
  if (sizeCode === 6) blockSize = byte(length++) + 1;
  else if (sizeCode === 7) {
    blockSize = byte(length) * 256 + byte(length + 1) + 1;
    length += 2;
  }
  if (rateCode === 12) length += 1;
  else if (rateCode === 13 || rateCode === 14) length += 2;
  length += 1;
  if (start + length > bytes.length || checksum8(bytes, start, start + length) !== 0) return undefined;
  return {
    length,
    blockSize,
    channels: channelCode < 8 ? channelCode + 1 : 2,
    number: coded.value,
    isVariable: (byte(1) & 1) === 1,
  };
}

/** A number of up to 36 bits in one to seven bytes, coded as UTF-8 codes characters (RFC 9639, section 9.1.5). */
function readCodedNumber(bytes: Uint8Array, at: number): { value: number; length: number } | undefined {
  const first = bytes[at] ?? 0xff;
  if (first < 0x80) return { value: first, length: 1 };
  const length = Math.clz32(~(first << 24));
  if (length < 2 || length > 7) return undefined;
  let value = first & (0x7f >> length);
  for (let position = 1; position < length; position++) {
    const next = bytes[at + position] ?? 0;
    if ((next & 0xc0) !== 0x80) return undefined;
    value = value * 64 + (next & 0x3f);
  }
  return { value, length };
}

/** Steps of a checksum for each value of a byte, highest bit first. */
function stepsOf(polynomial: number, bits: number): Uint16Array {
  const top = 1 << (bits - 1);
  const mask = top * 2 - 1;
  return Uint16Array.from({ length: 256 }, (_, value) => {
    let rest = value << (bits - 8);
    for (let bit = 0; bit < 8; bit++) rest = (rest & top ? (rest << 1) ^ polynomial : rest << 1) & mask;
    return rest;
  });
}

/** x^8 + x^2 + x + 1 (RFC 9639, section 9.1.8). */
const steps8 = stepsOf(0x07, 8);
/** x^16 + x^15 + x^2 + 1 (RFC 9639, section 9.3). */
const steps16 = stepsOf(0x8005, 16);

/** The checksum of a frame header up to an offset; 0 behind a header with the checksum at its end. */
export function checksum8(bytes: Uint8Array, from: number, to: number): number {
  let sum = 0;
  for (let at = from; at < to; at++) sum = steps8[sum ^ bytes[at]];
  return sum;
}

/** The checksum of a frame carried on over more bytes, from 0; 0 behind a frame with the checksum at its end. */
export function checksum16(bytes: Uint8Array, from: number, to: number, before = 0): number {
  let sum = before;
  for (let at = from; at < to; at++) {
    sum = ((sum << 8) & 0xffff) ^ steps16[(sum >> 8) ^ bytes[at]];
  }
  return sum;
}
