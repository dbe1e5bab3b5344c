import { languages } from '../languages/languages';
import type { ToldWords } from '../languages/languageWords';
import { bareWord } from '../languages/spelling';
import { isUnspaced } from '../languages/wordPattern';

/** Whether a text says one of the words of a kind, in any language and form. */
export function saysOf(text: string, kind: Exclude<keyof ToldWords, 'first' | 'last' | 'over'>): boolean {
  return patterns[kind].test(bareWord(text));
}

const patterns = {
  keys: stemsOf('keys'),
  root: stemsOf('root'),
  velocities: stemsOf('velocities'),
  quieter: stemsOf('quieter'),
  louder: stemsOf('louder'),
  up: stemsOf('up'),
  down: stemsOf('down'),
  sharp: stemsOf('sharp'),
  flat: stemsOf('flat'),
  behindFirst: stemsOf('behindFirst'),
  behindLast: stemsOf('behindLast'),
};

function stemsOf(kind: keyof ToldWords): RegExp {
  const stems = new Set(languages.flatMap(({ told }) => (told[kind] ?? []).map(bareWord)));
  const within = [...stems].filter(isUnspaced);
  const starting = [...stems].filter((stem) => !isUnspaced(stem));
  return new RegExp([`(?<!\\p{L})(?:${starting.join('|')})`, ...within].join('|'), 'u');
}

/** Words of sentences as they are written, as a part of a pattern that goes by `i` and `u`. */
export function writtenWords(kind: 'first' | 'last' | 'behindFirst' | 'behindLast'): string {
  const words = new Set(languages.flatMap(({ told }) => told[kind] ?? []));
  return `(?:${[...words].sort((a, b) => b.length - a.length).join('|')})`;
}

const overKeys = new Set(languages.flatMap(({ told }) => (told.over ?? []).map(bareWord)));

/** Whether a text is nothing but a word before the two ends of the keys that a sample is put on, in any language. */
export function leadsToKeys(text: string): boolean {
  return overKeys.has(bareWord(text));
}
