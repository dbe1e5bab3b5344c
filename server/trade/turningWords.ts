import { languages } from './languages/languages';
import type { TurningWords } from './languages/languageWords';
import { wordsInText } from './languages/wordPattern';

/**
 * The words of all languages that turn a sentence round or bound it, as a part of a pattern that goes by `i` and `u`. Who asks for some
 * kinds says which ones make its sentence say something else.
 */
export function turningWords(...kinds: readonly (keyof TurningWords)[]): string {
  const words = languages.flatMap(({ turning }) => kinds.flatMap((kind) => turning[kind]));
  // `No. 4` counts.
  return wordsInText(words.map((word) => (word === 'no' ? String.raw`no(?!\.?\s?\d)` : word)));
}
