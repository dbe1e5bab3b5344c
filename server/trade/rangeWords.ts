import { languages } from './languages/languages';

/** The words of all languages between the two ends of a range, as a part of a pattern that goes by `i` and `u`. */
export const rangeWords: string = oneOf(languages.flatMap(({ between }) => between));

/** Those that are known with no blank around them too, as in `C2toB2`; a single letter is not. */
export const gluedRangeWords: string = oneOf(
  languages.flatMap(({ between }) => between.filter(({ length }) => length > 1)),
);

/** The words of all languages between a position and how many there are, as a part of such a pattern. */
export const outOfWords: string = oneOf(languages.flatMap(({ outOf }) => outOf));

function oneOf(words: readonly string[]): string {
  const longestFirst = [...new Set(words)].sort((a, b) => b.length - a.length);
  return `(?:${longestFirst.join('|')})`;
}
