/** A number as it stands in a text, and what stands behind it. */
export interface NumberText {
  number: number;
  /** The unit behind the number, without blanks around it; empty where none stands there. */
  unit: string;
}

const numberAndUnit =
  /^\s*([+\-\u2010-\u2014\u2212\uff0d]?)(\d+(?:[.,]\d*)?|[.,]\d+)(e[+-]?\d{1,3})?\s*(\D*?)\s*$/i;
const hexadecimal = /^\s*0x([0-9a-f]{1,8})\s*$/i;
/** Longer texts are no numbers that a person or a program writes. */
const longest = 100;

/**
 * Reads a number with a point or a comma for its fraction and anything but digits behind it, or a whole one in hexadecimal
 * such as `0x3C`; `undefined` for other text.
 */
export function readNumberText(text: string): NumberText | undefined {
  if (text.length > longest) return undefined;
  const hexadecimalDigits = hexadecimal.exec(text)?.[1];
  if (hexadecimalDigits !== undefined) return { number: Number.parseInt(hexadecimalDigits, 16), unit: '' };
  const found = numberAndUnit.exec(text);
  if (!found) return undefined;
  const [, sign, digits = '', exponent = '', unit = ''] = found;
  const number = Number(digits.replace(',', '.') + exponent);
  if (!Number.isFinite(number)) return undefined;
  return { number: sign === '' || sign === '+' ? number : -number, unit };
}

/**
 * A number rounded to six decimals: what is worked out by a logarithm is given to a millionth of a decibel or cent, so
 * that common values stay short. It is an error that nobody can hear.
 */
export function toMillionths(number: number): number {
  return Math.round(number * 1e6) / 1e6;
}

/** A number rounded to nine decimals, which takes away what binary arithmetic adds to a decimal product or quotient. */
export function toBillionths(number: number): number {
  return Math.abs(number) < 1e6 ? Math.round(number * 1e9) / 1e9 : number;
}
