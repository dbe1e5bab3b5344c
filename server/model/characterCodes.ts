/** Stands for every character outside ASCII. */
export const otherCode = 128;

const lineFeed = 10;
const encoder = new TextEncoder();

/**
 * The characters of a text as bytes, one for each UTF-16 unit, with a line feed behind the last.
 * Reading bytes is quicker than asking the string for each character.
 */
export function characterCodes(text: string): Uint8Array {
  const codes = new Uint8Array(text.length + 1);
  // A text that fits one byte for each character as UTF-8 is ASCII.
  if (encoder.encodeInto(text, codes.subarray(0, text.length)).read !== text.length) {
    for (let at = 0; at < text.length; at++) codes[at] = Math.min(text.charCodeAt(at), otherCode);
  }
  codes[text.length] = lineFeed;
  return codes;
}
