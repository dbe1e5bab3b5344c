/** The bytes of a text in base 64 (RFC 4648, section 4). */
export function bytesOfBase64(text: string): Uint8Array {
  const characters = atob(text);
  const bytes = new Uint8Array(characters.length);
  for (let at = 0; at < characters.length; at++) bytes[at] = characters.charCodeAt(at);
  return bytes;
}

/** Stretches of bytes one behind the other. */
export function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
