/** Characters that are made at one time; a call takes only so many arguments. */
const atOnce = 0x8000;

/** Bytes in base 64 (RFC 4648, section 4). */
export function base64Of(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += atOnce)
    text += String.fromCharCode(...bytes.subarray(at, at + atOnce));
  return btoa(text);
}
