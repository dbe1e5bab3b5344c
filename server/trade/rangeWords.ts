import { languages } from './languages/languages';
import type { RangeEndWords } from './languages/languageWords';
import { bareWord } from './languages/spelling';
import { oneOfWords } from './languages/wordPattern';

/** Arrows and arrowheads between the two ends of a range, as `36 » 47`, as a part of a pattern. */
export const rangeArrows = String.raw`(?:[-=\u2013\u2014]{1,2}>|>{1,2}|[\u2192\u21d2\u21e8\u2794\u2799-\u279c\u27a1\u27f6\u00bb\u203a\u25b6\u25b8\u25ba]|[\u2194\u21d4\u27f7])`;

/** The words of all languages between the two ends of a range, as a part of a pattern that goes by `i` and `u`. */
export const rangeWords: string = oneOfWords(languages.flatMap(({ between }) => between));

/** Those that are known with no blank around them too, as in `C2toB2`; a single letter is not. */
export const gluedRangeWords: string = oneOfWords(
  languages.flatMap(({ between }) => between.filter(({ length }) => length > 1)),
);

/** The words of all languages between a position and how many there are, as a part of such a pattern. */
export const outOfWords: string = oneOfWords(languages.flatMap(({ outOf }) => outOf));

/** The words of all languages that stand before a number at one end of a range, as a part of such a pattern. */
export function rangeEndWords(...kinds: readonly (keyof RangeEndWords)[]): string {
  return oneOfWords(languages.flatMap(({ ends }) => kinds.flatMap((kind) => ends[kind] ?? [])));
}

/** Words of a heading for the two ends of a range that say something only beside one another, bare, from one language each. */
export const pairedEnds: readonly (readonly [low: string, high: string])[] = languages.flatMap(({ ends }) =>
  (ends.low ?? []).flatMap((low) =>
    (ends.high ?? []).map((high) => [bareWord(low), bareWord(high)] as const),
  ),
);

/** Words for the two ends of a range in names of places, which say something only as such a pair, bare, from one language each. */
export const pairsInNames: readonly (readonly [low: string, high: string])[] = [
  ...pairedEnds,
  ...languages.flatMap(({ pairs = [] }) =>
    pairs.map(([low, high]) => [bareWord(low), bareWord(high)] as const),
  ),
];
