import { languages } from './languages/languages';
import { bareWord } from './languages/spelling';
import { wordsInText } from './languages/wordPattern';

/** Words for all and each in all languages, with their accents or without, as a part of a pattern that goes by `i` and `u`. */
export const everyWords: string = wordsInText(
  languages.flatMap(({ every }) => every.flatMap((word) => [word, bareWord(word)])),
);
