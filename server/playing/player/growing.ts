/** A longer copy of a flat buffer. */
export function grownTo<T extends Int32Array | Int16Array | Uint8Array | Float64Array>(
  size: number,
  old: T,
  kind: new (size: number) => T,
): T {
  const grown = new kind(size);
  grown.set(old);
  return grown;
}
