import type { ValueSurroundings } from './valueForms';
import { readValue } from './valueForms';
import type { VocabularyParameter } from './vocabulary';

/** The two parts of a range as it stands, with what parts them. */
export interface RangeText {
  first: string;
  between: string;
  second: string;
}

const separator = /\s*(?:\.\.+|\bto\b|[-–—:;,/|~])\s*|\s+/g;

/** Splits a range text where both parts make sense; `undefined` where that is nowhere. */
export function splitRange(
  text: string,
  first: VocabularyParameter,
  second: VocabularyParameter,
  around: (parameter: string) => ValueSurroundings,
): RangeText | undefined {
  const reads = (part: string, { form, parameter }: VocabularyParameter) =>
    readValue(form, part.trim(), around(parameter)) !== undefined;
  const attempt = (start: number, end: number): RangeText | undefined => {
    const range = { first: text.slice(0, start), between: text.slice(start, end), second: text.slice(end) };
    return range.first.trim() !== '' && reads(range.first, first) && reads(range.second, second)
      ? range
      : undefined;
  };
  const given = first.between ?? second.between ?? '-';
  for (let at = text.indexOf(given, 1); at > 0 && given !== ''; at = text.indexOf(given, at + 1)) {
    const range = attempt(at, at + given.length);
    if (range) return range;
  }
  for (const found of text.matchAll(separator)) {
    const range = attempt(found.index, found.index + found[0].length);
    if (range) return range;
  }
  return undefined;
}
