/** A letter of a script that writes words without blanks between them, as a part of a pattern that goes by `u`. */
export const unspacedLetter: string = String.raw`[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}]`;
const unspaced = new RegExp(unspacedLetter, 'u');

/** Whether a word is of a script that has no blanks between words. */
export function isUnspaced(word: string): boolean {
  return unspaced.test(word);
}

/** One of some words, as a part of a pattern that goes by `i` and `u`; an apostrophe may be of another kind, a blank or left out. */
export function oneOfWords(words: readonly string[]): string {
  const longestFirst = [...new Set(words)].sort((a, b) => b.length - a.length);
  return `(?:${longestFirst.join('|').replaceAll("'", "['\\u2019 ]?")})`;
}

/** The same for words of a sentence, which stand apart from letters where their script has blanks; `*` behind one is any ending. */
export function wordsInText(words: readonly string[]): string {
  const spaced = oneOfWords(words.filter((word) => !isUnspaced(word))).replaceAll('*', '\\p{L}*');
  const within = words.filter(isUnspaced);
  const either = within.length > 0 ? `|${oneOfWords(within)}` : '';
  return `(?:(?<!\\p{L})${spaced}(?!\\p{L})${either})`;
}
