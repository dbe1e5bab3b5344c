import { numberIn } from '../../model/opcodes/values';
import type { ValueForm } from '../vocabulary';

type Words = Extract<ValueForm, { kind: 'words' }>;

const lowerCase = new WeakMap<Words, ReadonlyMap<string, string>>();

/** The value that a word stands for, in its own letter case or else in any; `undefined` for other words. */
export function readWord(form: Words, text: string): string | undefined {
  const word = text.trim();
  if (Object.hasOwn(form.words, word)) return form.words[word];
  let folded = lowerCase.get(form);
  if (!folded) {
    // The first of several words that differ in letter case alone counts.
    const entries = Object.entries(form.words).map(([one, value]) => [one.toLowerCase(), value] as const);
    folded = new Map(entries.reverse());
    lowerCase.set(form, folded);
  }
  return folded.get(word.toLowerCase());
}

/** The first word that stands for a value; `undefined` where none does. */
export function writeWord({ words }: Words, value: string): string | undefined {
  const exact = Object.keys(words).find((word) => words[word] === value.trim());
  if (exact !== undefined) return exact;
  const wanted = value.trim().toLowerCase();
  const number = numberIn(wanted);
  for (const [word, meaning] of Object.entries(words)) {
    if (meaning.toLowerCase() === wanted || (number !== undefined && numberIn(meaning) === number))
      return word;
  }
  return undefined;
}
