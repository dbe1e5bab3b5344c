import type { Vocabulary } from '../vocabulary';
import { placesOf } from '../write/writePlaces';

/** One step of indentation in a text: the least by which a line with a tag is indented; two blanks where none is. */
export function indentUnitOf(text: string): string {
  let unit: string | undefined;
  for (const [, indentation = ''] of text.slice(0, 20_000).matchAll(/[\r\n]([ \t]+)<[^/!?]/g)) {
    if (unit === undefined || indentation.length < unit.length) unit = indentation;
  }
  return unit ?? '  ';
}

/** In a value or text: a number with a comma before its decimals, alone or as one end of a range. */
const commaNumber = /["'>]\s*(?:[-+]?\d+[^"'<,.\d]+)?[-+]?\d+,\d+(?:[^"'<,\d]+\d+(?:,\d+)?)?[^"'<,\d]*["'<]/;
const pointNumber =
  /["'>]\s*(?:[-+]?\d+[^"'<,.\d]+)?[-+]?\d*\.\d+(?:[^"'<.\d]+(?:\d+(?:\.\d+)?|\.\d+))?[^"'<.\d]*["'<]/;
/** Longer stretches are not looked through. */
const longest = 5000;

/** Whether numbers in a stretch of XML in a vocabulary have a comma before their decimals, and none a point. */
export function hasDecimalCommas(vocabulary: Vocabulary, stretch: string): boolean {
  // Where commas part the ends of ranges, another one would be read as that.
  const partsRanges = placesOf(vocabulary).some(({ halves }) =>
    [...halves.keys()].some(({ between }) => between.includes(',')),
  );
  const part = stretch.slice(0, longest);
  return !partsRanges && commaNumber.test(part) && !pointNumber.test(part);
}

/** A number, which may have a unit behind it, with a comma before its decimals; other text as it is. */
export function withDecimalComma(text: string): string {
  return /^[-+]?\d*\.\d+\D*$/.test(text) ? text.replace('.', ',') : text;
}
