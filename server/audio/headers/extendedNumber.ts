import type { ByteWindow } from './byteWindow';

const bias = 16383;

/**
 * An 80-bit extended number held in memory: a sign, 15 bits of exponent with a bias of 16383 and 64 bits of mantissa
 * whose first bit counts 1. Not finite where the exponent is out of range. As Audio Interchange File Format 1.3 (Apple,
 * 1989) uses it for the sample rate; layout: IEEE 754, double extended format.
 */
export function readExtendedNumber(bytes: ByteWindow, at: number): number {
  const first = bytes.uint16(at);
  const exponent = first & 0x7fff;
  if (exponent === 0x7fff) return Number.NaN;
  const mantissa = bytes.uint64(at + 2) / 2 ** 63;
  const value = mantissa * 2 ** (exponent - bias);
  return first & 0x8000 ? -value : value;
}
