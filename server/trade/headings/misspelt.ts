import { wordsLike } from '../languages/spelling';
import type { ColumnMeaning } from '../meaning';
import type { Dictionary } from './dictionary';
import { joined } from './dictionary';

/** Letters of a word that is looked for among those of other languages, or as a whole heading, with slips in it (our choice). */
const leastForeign = 6;

/** The meanings of a heading whose words are known but for slips of the fingers. */
export function misspelt(
  words: readonly string[],
  { meanings, fillers, words: known }: Dictionary,
): ColumnMeaning[] {
  if (words.length === 0 || words.length > 4) return [];
  const choices = words.map((word) =>
    known.has(word) || fillers.has(word) ? [word] : wordsLike(word, known),
  );
  if (choices.some(({ length }) => length === 0)) return [];
  const found = new Set<ColumnMeaning>();
  const join = (at: number, chosen: readonly string[]) => {
    if (at < choices.length) for (const word of choices[at]) join(at + 1, [...chosen, word]);
    else {
      const meaning = meanings.get(joined(chosen, fillers));
      if (meaning) found.add(meaning);
    }
  };
  join(0, []);
  return [...found];
}

/** Whether a word is unknown and short, and so is easily like one of another language. */
export function isShortUnknown(word: string, { words }: Dictionary): boolean {
  return word.length < leastForeign && !words.has(word);
}

/** The meanings of a heading that is like a known one but for one slip if all its words are written as one: `Lowkye`, `High kee`. */
export function misspeltWhole(words: readonly string[], { meanings, fillers }: Dictionary): ColumnMeaning[] {
  const whole = joined(words, fillers);
  if (whole.length < leastForeign || words.length > 4) return [];
  const alike = wordsLike(whole, new Set(meanings.keys()), 1);
  return [...new Set(alike.flatMap((one) => meanings.get(one) ?? []))];
}
