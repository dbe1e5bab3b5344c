import { text } from './byteFiles';

/** Numbers as big-endian bytes. */
export function b16(...values: number[]): number[] {
  return values.flatMap((value) => [(value >>> 8) & 255, value & 255]);
}

export function b32(...values: number[]): number[] {
  return values.flatMap((value) => [...b16(value >>> 16), ...b16(value)]);
}

/** A big-endian chunk with its pad byte; `size` says something else than the truth. */
export function bigChunk(name: string, body: number[], size = body.length): number[] {
  return [...text(name), ...b32(size), ...body, ...(body.length % 2 ? [0] : [])];
}

/** An AIFF or AIFF-C file of chunks. */
export function form(kind: 'AIFF' | 'AIFC', ...chunks: number[][]): Uint8Array {
  const body = chunks.flat();
  return new Uint8Array([...text('FORM'), ...b32(body.length + 4), ...text(kind), ...body]);
}

/** 44100 as an 80-bit extended number. */
const rate44100 = [0x40, 0x0e, 0xac, 0x44, 0, 0, 0, 0, 0, 0];

/** The body of a `COMM` chunk; `type` makes it that of AIFF-C, with an empty name. */
export function common(
  channels: number,
  frames: number,
  bits: number,
  type?: string,
  rate: readonly number[] = rate44100,
): number[] {
  const plain = [...b16(channels), ...b32(frames), ...b16(bits), ...rate];
  return type === undefined ? plain : [...plain, ...text(type), 0, 0];
}

/** The body of an `SSND` chunk. */
export function sound(audio: number[], offset = 0): number[] {
  return [...b32(offset, 0), ...new Array<number>(offset).fill(0), ...audio];
}

/** The body of a `MARK` chunk. */
export function marks(...markers: [id: number, position: number, name: string][]): number[] {
  return [
    ...b16(markers.length),
    ...markers.flatMap(([id, position, name]) => [
      ...b16(id),
      ...b32(position),
      name.length,
      ...text(name),
      ...(name.length % 2 ? [] : [0]),
    ]),
  ];
}

/** The body of an `INST` chunk for all keys and velocities. */
export function instrument(
  baseNote: number,
  detune: number,
  sustain: [playMode: number, begin: number, end: number] = [0, 0, 0],
  release: [playMode: number, begin: number, end: number] = [0, 0, 0],
): number[] {
  return [baseNote, detune & 255, 0, 127, 1, 127, ...b16(0), ...b16(...sustain), ...b16(...release)];
}
