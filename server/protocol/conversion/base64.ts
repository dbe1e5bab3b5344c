/** Characters of a base 64 text are made of so many bytes at a time. */
const bytesAtOnce = 0x6000;

/** Bytes in base 64 (RFC 4648, section 4). */
export function base64Of(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let start = 0; start < bytes.length; start += bytesAtOnce) {
    parts.push(btoa(String.fromCharCode(...bytes.subarray(start, start + bytesAtOnce))));
  }
  return parts.join('');
}

/** The bytes of a base 64 text. */
export function base64Bytes(text: string): Uint8Array {
  const characters = atob(text);
  const bytes = new Uint8Array(characters.length);
  for (let at = 0; at < characters.length; at++) bytes[at] = characters.charCodeAt(at);
  return bytes;
}
