import { base64Bytes, base64Of } from './base64';

/** Kinds of arrays that are packed, by the names that they are sent under. */
const arrayKinds = {
  Int8Array,
  Uint8Array,
  Int16Array,
  Uint16Array,
  Int32Array,
  Uint32Array,
  Float32Array,
  Float64Array,
} as const;

type ArrayKind = keyof typeof arrayKinds;

/** Plain data that can be sent as JSON: typed arrays as base 64 (RFC 4648, section 4; little-endian), maps as lists of pairs. */
export type Packed =
  | null
  | boolean
  | number
  | string
  | Packed[]
  | { array: ArrayKind; bytes: string }
  | { map: [Packed, Packed][] }
  | { number: string }
  | { fields: { [name: string]: Packed } };

/** Packs plain data for JSON: no functions, and no `undefined` but as a field that is then left out. */
export function packed(value: unknown): Packed {
  // JSON has no word for these.
  if (typeof value === 'number' && !Number.isFinite(value)) return { number: String(value) };
  if (value === null || typeof value !== 'object') return value as Packed;
  if (Array.isArray(value)) return value.map(packed);
  if (ArrayBuffer.isView(value)) {
    const bytes = new Uint8Array(value.buffer, value.byteOffset, value.byteLength);
    return { array: value.constructor.name as ArrayKind, bytes: base64Of(bytes) };
  }
  if (value instanceof Map) return { map: [...value].map(([key, one]) => [packed(key), packed(one)]) };
  const fields: { [name: string]: Packed } = {};
  for (const [name, one] of Object.entries(value)) {
    if (one !== undefined) fields[name] = packed(one);
  }
  return { fields };
}

/** The data that was packed. */
export function unpacked(value: Packed): unknown {
  if (value === null || typeof value !== 'object') return value;
  if (Array.isArray(value)) return value.map(unpacked);
  if ('array' in value) return new arrayKinds[value.array](base64Bytes(value.bytes).buffer as ArrayBuffer);
  if ('number' in value) return Number(value.number);
  if ('map' in value) return new Map(value.map.map(([key, one]) => [unpacked(key), unpacked(one)]));
  return Object.fromEntries(Object.entries(value.fields).map(([name, one]) => [name, unpacked(one)]));
}
