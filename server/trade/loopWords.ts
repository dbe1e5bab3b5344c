import { loopWord } from './languages/cellWords';
import { languages } from './languages/languages';
import { bareWord } from './languages/spelling';
import { wordsInText } from './languages/wordPattern';

/** Words for a loop in all languages, with their accents or without, as a part of a pattern that goes by `i` and `u`. */
export const loopWords: string = wordsInText(
  languages.flatMap(({ loops }) => loops.flatMap((word) => [word, bareWord(word)])),
);

const pattern = new RegExp(loopWords, 'iu');

/** Whether a word, or one of a text, is one for a loop in some form. */
export function namesLoop(text: string): boolean {
  return pattern.test(bareWord(text));
}

/** Whether a word says how a sample plays, and nothing that may be said of other things: `one-shot`, `forward loop`, not `on` or `held`. */
export function namesPlayMode(text: string): boolean {
  const word = loopWord(text);
  return word === 'one_shot' || (word !== undefined && word !== 'no_loop' && namesLoop(text));
}
