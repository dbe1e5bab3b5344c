/** Whether two pieces of plain data, typed arrays and maps among it, hold the same. */
export function sameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (ArrayBuffer.isView(a)) {
    const one = a as Float64Array;
    const other = b as Float64Array;
    return one.length === other.length && one.every((value, at) => Object.is(value, other[at]));
  }
  if (a instanceof Map)
    return (
      b instanceof Map && a.size === b.size && [...a].every(([key, value]) => sameData(value, b.get(key)))
    );
  const names = Object.keys(a);
  return (
    Array.isArray(a) === Array.isArray(b) &&
    names.length === Object.keys(b).length &&
    names.every((name) => sameData(a[name as keyof typeof a], b[name as keyof typeof b]))
  );
}
