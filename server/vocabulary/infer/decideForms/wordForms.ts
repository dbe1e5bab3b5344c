import { bareWord } from '../../../trade/languages/spelling';
import type { ValueForm } from '../../vocabulary';
import type { Assigned } from '../assign';
import { oppositeOf, switchWord } from '../words/words';

type WordsForm = Extract<ValueForm, { kind: 'words' }>;

/** The words of a place with the value of each; those that mean nothing are left out. */
export function wordsForm({ facts }: Assigned, meaning: (word: string) => string | undefined): WordsForm {
  const words: Record<string, string> = {};
  for (const word of facts.tally.keys()) {
    const value = meaning(word);
    if (value !== undefined && word !== '__proto__') words[word] = value;
  }
  return { kind: 'words', words };
}

/** Words with the value of each, and those of a switch with the word that says the opposite. */
export function switchForm(one: Assigned, on: string, off: string): WordsForm {
  const meaning = (word: string) => (switchWord(word) ? on : off);
  return { kind: 'words', words: withOpposites(wordsForm(one, meaning).words, meaning) };
}

/** With the opposite of the only word, where that is known. */
export function withOpposites(
  words: Record<string, string>,
  meaning: (word: string) => string | undefined,
): Record<string, string> {
  const entries = Object.entries(words);
  const [only] = entries;
  if (entries.length !== 1 || !only) return words;
  const other = oppositeOf(only[0]);
  const value = other === undefined ? undefined : meaning(other);
  return other === undefined || value === undefined ? words : { ...words, [other]: value };
}

/** The words of a place as the document explains them, what it leaves open by `otherwise`; one that says no is the default. */
export function explainedForm(
  { facts }: Assigned,
  explained: ReadonlyMap<string, string>,
  otherwise: (word: string) => string | undefined,
): WordsForm {
  const words: Record<string, string> = {};
  const isTrigger = [...explained.values()].includes('release');
  for (const word of [...facts.tally.keys()]) {
    const usual = switchWord(word) === false && isTrigger ? 'attack' : otherwise(word);
    const value = explained.get(bareWord(word)) ?? usual;
    if (value !== undefined && word !== '__proto__') words[word] = value;
  }
  const [only] = Object.keys(words).length === 1 ? Object.keys(words) : [];
  const other = only === undefined ? undefined : oppositeOf(only);
  if (isTrigger && other !== undefined) words[other] = words[only] === 'release' ? 'attack' : 'release';
  return { kind: 'words', words };
}
