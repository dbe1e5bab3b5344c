/** The codes of the signs that SFZ text is parted by, and of those that numbers are made of. */
export const tab = 9;
export const lineFeed = 10;
export const carriageReturn = 13;
export const space = 32;
export const quote = 34;
export const hash = 35;
export const dollar = 36;
const star = 42;
export const plus = 43;
export const minus = 45;
export const point = 46;
export const slash = 47;
export const zero = 48;
export const nine = 57;
export const less = 60;
export const equals = 61;
export const greater = 62;

/** By character code: a letter, digit, `_`, or `$` for variables in names. */
export const isNamePart = new Uint8Array(256);
/** By character code: whether it can end a value or tells something about it. */
export const isMark = new Uint8Array(256);
/** By character code: white space within a line. A control character counts as a space. */
export const isBlankCode = new Uint8Array(256);
for (const character of 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_$') {
  isNamePart[character.charCodeAt(0)] = 1;
}
for (const character of '\n\r=$/<#') isMark[character.charCodeAt(0)] = 1;
for (let code = 0; code <= space; code++) {
  isBlankCode[code] = code === lineFeed || code === carriageReturn ? 0 : 1;
}

export function isCommentMark(code: number): boolean {
  return code === slash || code === star;
}

export function isLineEnd(code: number): boolean {
  return code === lineFeed || code === carriageReturn;
}
