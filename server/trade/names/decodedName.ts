const anyEncoded = /%[0-9a-f]{2}/i;
/** What no name of a file has. */
const unnamed = /[\u0000-\u001f\u007f]/;

/** A name written as in an address of the web, `Bell%20%28soft%29.wav`, as it reads; `undefined` for other names. */
export function decodedName(name: string): string | undefined {
  if (!anyEncoded.test(name)) return undefined;
  try {
    const decoded = decodeURIComponent(name);
    return unnamed.test(decoded) ? undefined : decoded;
  } catch {
    return undefined;
  }
}
