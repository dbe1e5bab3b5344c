import type { FileReader } from '../../../server/model/files';

/** A reader of bytes in memory that keeps count of what was asked of it. */
export interface CountedReader extends FileReader {
  /** Start and length of every read. */
  readonly reads: { start: number; length: number }[];
}

export function readerOf(bytes: Uint8Array, size = bytes.length): CountedReader {
  const reads: { start: number; length: number }[] = [];
  return {
    size,
    reads,
    async read(start, length) {
      reads.push({ start, length });
      return bytes.slice(start, start + length);
    },
    async close() {},
  };
}

/** Numbers as little-endian bytes. */
export function u16(...values: number[]): number[] {
  return values.flatMap((value) => [value & 255, (value >>> 8) & 255]);
}

export function u32(...values: number[]): number[] {
  return values.flatMap((value) => [...u16(value), ...u16(value >>> 16)]);
}

export function text(characters: string): number[] {
  return [...characters].map((character) => character.charCodeAt(0));
}

/** A chunk with its pad byte; `size` says something else than the truth. */
export function chunk(name: string, body: number[], size = body.length): number[] {
  return [...text(name), ...u32(size), ...body, ...(body.length % 2 ? [0] : [])];
}

/** A RIFF/WAVE file of chunks. */
export function wave(...chunks: number[][]): Uint8Array {
  const body = chunks.flat();
  return new Uint8Array([...text('RIFF'), ...u32(body.length + 4), ...text('WAVE'), ...body]);
}

/** The 16 bytes of a `fmt ` chunk. */
export function format(tag: number, channels: number, rate: number, bits: number): number[] {
  const block = channels * Math.ceil(bits / 8);
  return [...u16(tag, channels), ...u32(rate, rate * block), ...u16(block, bits)];
}

/** The body of a `smpl` chunk. */
export function sampler(
  unityNote: number,
  fraction: number,
  loops: [type: number, start: number, end: number][],
  count = loops.length,
): number[] {
  return [
    ...u32(0, 0, 22676, unityNote, fraction, 0, 0, count, 0),
    ...loops.flatMap(([type, start, end], number) => u32(number, type, start, end, 0, 0)),
  ];
}

export function silence(bytes: number): number[] {
  return new Array<number>(bytes).fill(0);
}
