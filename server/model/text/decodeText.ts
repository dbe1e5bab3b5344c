/** Text read from bytes, or the reason why the bytes are no text. */
export type DecodedText =
  | { kind: 'text'; text: string; encoding: 'utf-8' | 'latin-1' | 'utf-16le' | 'utf-16be' }
  | { kind: 'binary' };

/** How many bytes are looked at to tell binary data from text. */
const looked = 64 * 1024;

/**
 * Decodes the bytes of a text file: UTF-16 by its byte order mark, else UTF-8, else Latin-1 (as Windows-1252), which
 * old instruments are written in. A NUL near the start says that the file is no text. The mark is taken off.
 */
export function decodeText(bytes: Uint8Array): DecodedText {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return utf16(bytes, 'utf-16le');
  if (first === 0xfe && second === 0xff) return utf16(bytes, 'utf-16be');
  if (bytes.subarray(0, looked).includes(0)) return { kind: 'binary' };
  try {
    return { kind: 'text', text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'utf-8' };
  } catch {
    return { kind: 'text', text: windows1252(bytes), encoding: 'latin-1' };
  }
}

/** What Windows-1252 has in the places 80 to 9F (Unicode Consortium, CP1252.TXT); an empty place stays as it is. */
const added = '€\x81‚ƒ„…†‡ˆ‰Š‹Œ\x8dŽ\x8f\x90‘’“”•–—˜™š›œ\x9džŸ';

function windows1252(bytes: Uint8Array): string {
  // Some hosts decode this range as Latin-1 has it, as control characters.
  return new TextDecoder('windows-1252')
    .decode(bytes)
    .replace(/[\x80-\x9f]/g, (character) => added[character.charCodeAt(0) - 0x80]);
}

function utf16(bytes: Uint8Array, encoding: 'utf-16le' | 'utf-16be'): DecodedText {
  return { kind: 'text', text: new TextDecoder(encoding).decode(bytes), encoding };
}
