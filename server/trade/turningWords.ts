import { languages } from './languages/languages';
import type { TurningWords } from './languages/languageWords';
import { bareWord } from './languages/spelling';
import { isUnspaced, wordsInText } from './languages/wordPattern';

/**
 * The words of all languages that turn a sentence round or bound it, as a part of a pattern that goes by `i` and `u`. Who asks for some
 * kinds says which ones make its sentence say something else.
 */
export function turningWords(...kinds: readonly (keyof TurningWords)[]): string {
  const words = languages.flatMap(({ turning }) => kinds.flatMap((kind) => turning[kind] ?? []));
  // Accents may be left out where the word stays one of its own: `já` is not `ja`.
  const bare = words.map(bareWord).filter((word) => word.length > 3 && !isUnspaced(word));
  // `No. 4` counts.
  return wordsInText([...words, ...bare].map((word) => (word === 'no' ? String.raw`no(?!\.?\s?\d)` : word)));
}
