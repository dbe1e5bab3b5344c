/** Stands for a character that needs a closer look: half of a surrogate pair, or one that XML cannot hold. */
export const doubtful = 0xff;
/** Stands for any other character outside ASCII. */
export const beyondAscii = 0x80;

const encoder = new TextEncoder();
/** Bytes of a text that is done with, kept for the next: touching fresh memory takes longer than filling it. */
let spare = new Uint8Array(0);
const mostSpare = 16 * 1024 * 1024;
/** Those of a long text, for who reads it again before their memory is wanted for something else. */
let longSpare: WeakRef<Uint8Array<ArrayBuffer>> | undefined;

/**
 * Calls `read` with a text as one byte for each UTF-16 unit, and `last` behind them: ASCII as it is, anything else as
 * {@link beyondAscii} or {@link doubtful}. Reading bytes costs a fraction of what reading characters of a string does,
 * and turning ASCII into bytes costs next to nothing. The bytes are good until `read` returns.
 */
export function withTextBytes(text: string, last: number, read: (bytes: Uint8Array) => void): void {
  const bytes = lendTextBytes(text, last);
  read(bytes);
  takeBack(bytes);
}

/** As {@link withTextBytes}, for work in steps: the bytes are the caller's until they are given to {@link takeBack}, if ever. */
export function lendTextBytes(text: string, last: number): Uint8Array<ArrayBuffer> {
  let bytes = spare;
  if (bytes.length <= text.length) {
    bytes = longSpare?.deref() ?? bytes;
    longSpare = undefined;
  } else spare = new Uint8Array(0);
  if (bytes.length <= text.length) bytes = new Uint8Array(text.length + (text.length >> 3) + 1);
  fill(bytes, text);
  bytes[text.length] = last;
  return bytes;
}

/** Takes bytes that were lent for the next text. */
export function takeBack(bytes: Uint8Array<ArrayBuffer>): void {
  if (bytes.length <= mostSpare) spare = bytes;
  else longSpare = new WeakRef(bytes);
}

/** A text as bytes like those of {@link withTextBytes}, for a reader that keeps them. */
export function keptTextBytes(text: string, last: number): Uint8Array {
  const bytes = new Uint8Array(text.length + 1);
  fill(bytes, text);
  bytes[text.length] = last;
  return bytes;
}

function fill(bytes: Uint8Array, text: string): void {
  const { length } = text;
  // UTF-8 that is no longer than the text is ASCII.
  const { read, written } = encoder.encodeInto(text, bytes);
  if (read !== length || written !== length) {
    for (let at = 0; at < length; at++) {
      const code = text.charCodeAt(at);
      const ordinary = code < 0xd800 || (code > 0xdfff && code < 0xfffe);
      bytes[at] = code < 0x80 ? code : ordinary ? beyondAscii : doubtful;
    }
  }
}
