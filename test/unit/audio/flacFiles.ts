import { b16, b32 } from './bigEndianFiles';
import { text } from './byteFiles';

/** A metadata block of a FLAC file. */
export function block(type: number, body: number[], isLast = false): number[] {
  const [, ...length] = b32(body.length);
  return [type | (isLast ? 128 : 0), ...length, ...body];
}

/** The body of a STREAMINFO block (RFC 9639, section 8.2), in which every stretch of the stream has 4096 frames. */
export function streamInfo(
  rate: number,
  channels: number,
  bits: number,
  frames: number,
  leastBytes = 0,
): number[] {
  // 20 + 3 + 5 + 36 bits.
  const packed =
    (BigInt(rate) << 44n) | (BigInt(channels - 1) << 41n) | (BigInt(bits - 1) << 36n) | BigInt(frames);
  return [
    ...b16(4096, 4096),
    ...b32(leastBytes).slice(1),
    ...b32(0).slice(1),
    ...b32(Number(packed >> 32n), Number(packed & 0xffffffffn)),
    ...new Array<number>(16).fill(0),
  ];
}

export function flac(...parts: number[][]): Uint8Array {
  return new Uint8Array([...text('fLaC'), ...parts.flat()]);
}
