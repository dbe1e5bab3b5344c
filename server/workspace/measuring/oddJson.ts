/** JSON has no numbers that are not finite. */
const oddNumber = '$number';

/** A value as JSON; numbers that are not finite are kept. */
export function oddJson(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    typeof inner === 'number' && !Number.isFinite(inner) ? { [oddNumber]: String(inner) } : inner,
  );
}

/** The value that {@link oddJson} wrote; `undefined` for text that is none. */
export function parseOddJson(json: string): unknown {
  try {
    const value: unknown = JSON.parse(json);
    return json.includes(oddNumber) ? withOddNumbers(value) : value;
  } catch {
    return undefined;
  }
}

/** A value with its odd numbers put in place; quicker than to have `JSON.parse` ask about each value. */
function withOddNumbers(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (oddNumber in value) return Number(value[oddNumber]);
  const fields = value as Record<string, unknown>;
  for (const [key, field] of Object.entries(fields)) {
    if (typeof field === 'object') fields[key] = withOddNumbers(field);
  }
  return value;
}
