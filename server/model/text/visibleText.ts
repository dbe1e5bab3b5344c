/** Control functions (ECMA-48, C0 and C1), line separators, and the marks that turn the direction of text (Unicode UAX #9, table 3). */
const unseen = /[\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/;
const allUnseen = new RegExp(unseen, 'g');

/**
 * Text from a file as one line in which nothing acts on a terminal or on the order of what is read: each control sign
 * is shown as its picture (Unicode block Control Pictures) or by its number.
 */
export function visibleText(text: string): string {
  return unseen.test(text) ? text.replace(allUnseen, pictureOf) : text;
}

/** The same for text of several lines, whose ends are kept. */
export function visibleLines(text: string): string {
  return unseen.test(text) ? text.split('\n').map(visibleText).join('\n') : text;
}

function pictureOf(sign: string): string {
  const code = sign.charCodeAt(0);
  if (code < 0x20) return String.fromCharCode(0x2400 + code);
  if (code === 0x7f) return '\u2421';
  return `<U+${code.toString(16).toUpperCase().padStart(4, '0')}>`;
}

/** A value as JSON, indented, with a line end; unseen signs are written by their numbers, so that it can be shown anywhere. */
export function jsonText(value: unknown): string {
  const text = JSON.stringify(value, undefined, 2);
  const escaped = text.replace(allUnseen, (sign) =>
    sign === '\n' ? sign : `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
  return `${escaped}\n`;
}
