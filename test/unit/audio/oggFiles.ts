import { silence, text, u16, u32 } from './byteFiles';

/** The remainder that RFC 3533, section 6, asks for, worked out bit by bit: polynomial 0x104c11db7, no inversion. */
function checksum(bytes: readonly number[]): number {
  let rest = 0n;
  for (const byte of [...bytes, 0, 0, 0, 0]) {
    for (let bit = 7; bit >= 0; bit--) {
      rest = (rest << 1n) | BigInt((byte >> bit) & 1);
      if (rest >> 32n) rest ^= 0x104c11db7n;
    }
  }
  return Number(rest);
}

/**
 * An Ogg page (RFC 3533, section 6) of one packet that ends in it; flags: 2 starts a stream, 4 ends it. `sequence` counts
 * the pages of a stream.
 */
export function page(
  serial: number,
  flags: number,
  position: bigint,
  packet: number[],
  sequence = 0,
): number[] {
  const lacing = [...new Array<number>(Math.floor(packet.length / 255)).fill(255), packet.length % 255];
  const low = Number(BigInt.asUintN(32, position));
  const high = Number(BigInt.asUintN(32, position >> 32n));
  const before = [...text('OggS'), 0, flags, ...u32(low, high, serial, sequence)];
  const after = [lacing.length, ...lacing, ...packet];
  return [...before, ...u32(checksum([...before, ...silence(4), ...after])), ...after];
}

/** The first packet of a Vorbis stream (Vorbis I specification, section 4.2.2). */
export function vorbisHead(channels: number, rate: number, version = 0): number[] {
  return [...text('\x01vorbis'), ...u32(version), channels, ...u32(rate, 0, 0, 0), 0xb8, 1];
}

/** The first packet of an Opus stream (RFC 7845, section 5.1). */
export function opusHead(channels: number, preSkip: number, rate: number, version = 1): number[] {
  return [...text('OpusHead'), version, channels, ...u16(preSkip), ...u32(rate), ...u16(0), 0];
}

/** A Vorbis file of one audio page a position. */
export function vorbis(serial: number, ...positions: number[]): number[] {
  return [
    ...page(serial, 2, 0n, vorbisHead(2, 44100)),
    ...page(serial, 0, 0n, silence(300)),
    ...positions.flatMap((position, number) =>
      page(serial, number === positions.length - 1 ? 4 : 0, BigInt(position), silence(700)),
    ),
  ];
}
