import type { ColumnMeaning } from '../meaning';
import type { Dictionary, Phrase } from './dictionary';
import { phraseStart } from './dictionary';

/**
 * The one meaning of all headings that these words are the beginnings of, word by word: `Veloc. min`; those that only go on where another
 * one ends do not count.
 */
export function abbreviated(
  words: readonly string[],
  { byStart, fillers }: Dictionary,
): ColumnMeaning | undefined {
  const short = words.filter((word) => !fillers.has(word));
  // Without a sign behind it, the word for none is no beginning: `no key`.
  if (short.length > 1 && short[0] === 'no') return undefined;
  if (!short.some((word) => word.length >= 3) || short.some((word) => word.length < 2)) return undefined;
  const begun = (byStart.get(phraseStart(short)) ?? []).filter(({ words: full }) =>
    full.every((word, at) => word.startsWith(short[at])),
  );
  const found = new Set(begun.filter((one) => !begun.some((other) => goesOn(one, other))).map(meaningIn));
  return found.size === 1 ? [...found][0] : undefined;
}

function meaningIn({ meaning }: Phrase): ColumnMeaning {
  return meaning;
}

/** Whether a phrase is another one with more letters, as a compound is of its first word: nobody who shortens the word means it. */
function goesOn({ words }: Phrase, other: Phrase): boolean {
  const isLonger = words.join('').length > other.words.join('').length;
  return isLonger && words.every((word, at) => word.startsWith(other.words[at]));
}
