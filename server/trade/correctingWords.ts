import { languages } from './languages/languages';
import type { CorrectingWords } from './languages/languageWords';
import { wordsInText } from './languages/wordPattern';

/*
 * Three readers put values of a table right: `correctedCells` where one cell holds an old and a new value, `overrulingLines` where a
 * sentence around the table gives another value than a row, and `correctedEntries` where a later line of a list speaks of an earlier one.
 */
const words = (...kinds: readonly (keyof CorrectingWords)[]) =>
  wordsInText(languages.flatMap(({ correcting }) => kinds.flatMap((kind) => correcting[kind])));

/** A word that takes back the value before it has a sign behind it: `57 no, 58`, not `57, no 58`. */
const isWrong = String.raw`\s*${words('wrong', 'no')}\s*[,;:.!\u2013\u2014\u3001\uff0c]+\s*`;
const isRight = String.raw`\s*[,;:\u2013\u2014\u3001]?\s*${words('right', 'rather')}\s*[,;:\u3001]?\s*`;

/** What stands between a wrong value and the right one behind it in one cell: `57 no, 58`, `57, rather 58`, `57 nein, richtig 58`. */
export const spokenCorrection: RegExp = new RegExp(`(?:${isWrong})?${isRight}|${isWrong}`, 'iu');

/** Words that say which value is the right or the wrong one, as a part of a pattern that goes by `i` and `u`. */
export const correctingWord: string = words('right', 'wrong', 'instead');
const correct = new RegExp(correctingWord, 'iu');

const titled = new RegExp(String.raw`${words('title')}[\s\p{L}]{0,20}[:.!\u2013\u2014-]`, 'iu');

/** Whether a text is headed as a correction: `Correction: …`. */
export function isHeadedAsCorrection(text: string): boolean {
  return titled.test(text.replaceAll('\uff1a', ':'));
}

/** Whether a sentence says that a value in it is the right one, or another a wrong one. */
export function saysCorrect(sentence: string): boolean {
  return correct.test(sentence);
}
