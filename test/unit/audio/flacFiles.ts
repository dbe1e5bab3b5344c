import { b16, b32 } from './bigEndianFiles';
import { text } from './byteFiles';

/** A metadata block of a FLAC file. */
export function block(type: number, body: number[], isLast = false): number[] {
  const [, ...length] = b32(body.length);
  return [type | (isLast ? 128 : 0), ...length, ...body];
}

/** The body of a STREAMINFO block (RFC 9639, section 8.2), in which every stretch of the stream has `blockSize` frames. */
export function streamInfo(
  rate: number,
  channels: number,
  bits: number,
  frames: number,
  leastBytes = 0,
  blockSize = 4096,
): number[] {
  // 20 + 3 + 5 + 36 bits.
  const packed =
    (BigInt(rate) << 44n) | (BigInt(channels - 1) << 41n) | (BigInt(bits - 1) << 36n) | BigInt(frames);
  return [
    ...b16(blockSize, blockSize),
    ...b32(leastBytes).slice(1),
    ...b32(0).slice(1),
    ...b32(Number(packed >> 32n), Number(packed & 0xffffffffn)),
    ...new Array<number>(16).fill(0),
  ];
}

export function flac(...parts: number[][]): Uint8Array {
  return new Uint8Array([...text('fLaC'), ...parts.flat()]);
}

/** The remainder of a division by a polynomial, worked out bit by bit, as the checksums of frames are. */
function remainder(bytes: readonly number[], polynomial: bigint, width: bigint): number {
  let rest = 0n;
  for (const byte of [...bytes, ...new Array<number>(Number(width) / 8).fill(0)]) {
    for (let bit = 7; bit >= 0; bit--) {
      rest = (rest << 1n) | BigInt((byte >> bit) & 1);
      if (rest >> width) rest ^= polynomial;
    }
  }
  return Number(rest);
}

/**
 * A frame of a FLAC stream that holds the numbers of 16 bits of each channel as they are (RFC 9639, section 9); its
 * number is below 128, and its sample rate stands in the stream information alone.
 */
export function verbatimFrame(number: number, channels: readonly (readonly number[])[]): number[] {
  const size = channels[0]?.length ?? 0;
  const start = [0xff, 0xf8, 0x70, ((channels.length - 1) << 4) | 8, number, ...b16(size - 1)];
  const header = [...start, remainder(start, 0x107n, 8n)];
  const parts = channels.flatMap((values) => [2, ...values.flatMap((value) => b16(value & 0xffff))]);
  return [...header, ...parts, ...b16(remainder([...header, ...parts], 0x18005n, 16n))];
}

/** A frame of a FLAC stream in which every channel stays at 0 for so many frames: some ten bytes, whatever their number. */
export function silentFrame(number: number, channels: number, frames: number): number[] {
  const coded = number < 128 ? [number] : [0xc0 | (number >> 6), 0x80 | (number & 63)];
  const start = [0xff, 0xf8, 0x70, ((channels - 1) << 4) | 8, ...coded, ...b16(frames - 1)];
  const header = [...start, remainder(start, 0x107n, 8n)];
  const parts = new Array<number>(3 * channels).fill(0);
  return [...header, ...parts, ...b16(remainder([...header, ...parts], 0x18005n, 16n))];
}
